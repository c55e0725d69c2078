/**
 * What is in the house: tubs with what is left, until when, and for whom. Refuses: to change the
 * past.
 */
@NullMarked
package halfgram.lot;

import org.jspecify.annotations.NullMarked;
