/** Tests of the pages of this name by HTTP. */
@NullMarked
package halfgram.pages.audit;

import org.jspecify.annotations.NullMarked;
