/** Tests of the pages of this name by HTTP. */
@NullMarked
package halfgram.pages.door;

import org.jspecify.annotations.NullMarked;
