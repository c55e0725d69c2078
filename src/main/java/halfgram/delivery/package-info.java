/**
 * What suppliers bring: what is expected when, and what came of it. Refuses: to choose a supplier,
 * and to change what was entered.
 */
@NullMarked
package halfgram.delivery;

import org.jspecify.annotations.NullMarked;
