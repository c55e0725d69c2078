/**
 * Airs: foams of lecithin blended at the surface. Refuses: to promise how long one stands longer
 * than its sources do.
 */
@NullMarked
package halfgram.technique.foam;

import org.jspecify.annotations.NullMarked;
