/** What the kit carries, and washing it. Refuses: to call anything clean that nobody washed. */
@NullMarked
package halfgram.pages.kit;

import org.jspecify.annotations.NullMarked;
