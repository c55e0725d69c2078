/** The commands. Refuses: to compute. */
@NullMarked
package halfgram.cli;

import org.jspecify.annotations.NullMarked;
