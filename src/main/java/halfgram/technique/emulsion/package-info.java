/** Oil in water, held by gum arabic or lecithin. Refuses: to say how long it holds. */
@NullMarked
package halfgram.technique.emulsion;

import org.jspecify.annotations.NullMarked;
