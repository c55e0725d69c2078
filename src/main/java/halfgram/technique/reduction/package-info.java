/**
 * A liquid boiled down from one Brix to another: what is left, what goes off, the heat for it.
 * Refuses: a specific gravity outside the range of its formula.
 */
@NullMarked
package halfgram.technique.reduction;

import org.jspecify.annotations.NullMarked;
