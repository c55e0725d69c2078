/** Tests of the kit by HTTP. */
@NullMarked
package halfgram.pages.kit;

import org.jspecify.annotations.NullMarked;
