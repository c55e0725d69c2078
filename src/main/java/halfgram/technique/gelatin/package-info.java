/**
 * Gelatin of one strength in place of another, by both rules there are. Refuses: to choose between
 * them in silence.
 */
@NullMarked
package halfgram.technique.gelatin;

import org.jspecify.annotations.NullMarked;
