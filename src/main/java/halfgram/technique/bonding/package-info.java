/**
 * Pieces bonded with transglutaminase: dose, slurry, and how long they lie. Refuses: to bond warmer
 * than the cold that food safety asks for.
 */
@NullMarked
package halfgram.technique.bonding;

import org.jspecify.annotations.NullMarked;
