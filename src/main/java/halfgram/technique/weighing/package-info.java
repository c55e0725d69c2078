/**
 * What a scale can weigh and how far it is off, and what to do with a load too light for it.
 * Refuses: to let an error computed from a displayed step look like one that somebody measured.
 */
@NullMarked
package halfgram.technique.weighing;

import org.jspecify.annotations.NullMarked;
