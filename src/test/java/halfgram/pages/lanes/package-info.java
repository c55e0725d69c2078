/** Tests of the lanes by HTTP. */
@NullMarked
package halfgram.pages.lanes;

import org.jspecify.annotations.NullMarked;
