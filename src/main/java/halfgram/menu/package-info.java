/**
 * What a guest gets: dishes, what lies on a plate, variants for diets, the last steps at the pass.
 * Refuses: to count guests.
 */
@NullMarked
package halfgram.menu;

import org.jspecify.annotations.NullMarked;
