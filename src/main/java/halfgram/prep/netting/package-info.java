/**
 * Needs against what is in the house, and what is left of them made in batches: netting, joint
 * outputs, lot sizing. Refuses: to know what anything is called.
 */
@NullMarked
package halfgram.prep.netting;

import org.jspecify.annotations.NullMarked;
