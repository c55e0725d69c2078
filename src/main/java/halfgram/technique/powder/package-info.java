/**
 * Fat turned to powder with a light maltodextrin, by mass. Refuses: a volume without a bulk density
 * measured here, and a fat with water in it.
 */
@NullMarked
package halfgram.technique.powder;

import org.jspecify.annotations.NullMarked;
