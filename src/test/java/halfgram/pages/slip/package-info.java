/** Tests of services that slip by HTTP. */
@NullMarked
package halfgram.pages.slip;

import org.jspecify.annotations.NullMarked;
