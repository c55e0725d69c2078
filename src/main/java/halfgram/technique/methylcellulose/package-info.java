/**
 * Methylcellulose, which dissolves cold and sets hot: how the liquid is parted and how cold it has
 * to end. Refuses: to call it set on a cold plate.
 */
@NullMarked
package halfgram.technique.methylcellulose;

import org.jspecify.annotations.NullMarked;
