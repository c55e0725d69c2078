/**
 * Two liquids blended to a Brix between theirs. Refuses: a target outside of both, and shares by
 * volume.
 */
@NullMarked
package halfgram.technique.brixblend;

import org.jspecify.annotations.NullMarked;
