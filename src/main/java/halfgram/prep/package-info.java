/**
 * From the kitchen book to the prep sheet: demand, makes, times, weigh lists, what does not fit,
 * and why. Refuses: clocks, files and chance.
 */
@NullMarked
package halfgram.prep;

import org.jspecify.annotations.NullMarked;
