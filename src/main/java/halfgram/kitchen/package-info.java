/**
 * The kitchen itself: its name, clock, house rules for rounding and tolerance, its water. Refuses:
 * to know what is cooked in it.
 */
@NullMarked
package halfgram.kitchen;

import org.jspecify.annotations.NullMarked;
