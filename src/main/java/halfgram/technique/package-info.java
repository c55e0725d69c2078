/**
 * What a technique asks for and how far its numbers can be believed; each technique is a pure
 * package below. Refuses: to know formulas, events or clocks.
 */
@NullMarked
package halfgram.technique;

import org.jspecify.annotations.NullMarked;
