/** Tests of the wall by HTTP. */
@NullMarked
package halfgram.pages.wall;

import org.jspecify.annotations.NullMarked;
