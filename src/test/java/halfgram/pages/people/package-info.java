/** Tests of the pages of this name by HTTP. */
@NullMarked
package halfgram.pages.people;

import org.jspecify.annotations.NullMarked;
