/**
 * Formula algebra: preparations in ratios, versioned and nested; scaling, yields, residue, machine
 * fills; allergens and cost carried through. Refuses: to know who ordered it or when.
 */
@NullMarked
package halfgram.formula;

import org.jspecify.annotations.NullMarked;
