/**
 * Stock: the tubs in the house, first expired first, what became of each, and putting one in by
 * hand. Refuses: to throw a tub away without a reason.
 */
@NullMarked
package halfgram.pages.stock;

import org.jspecify.annotations.NullMarked;
