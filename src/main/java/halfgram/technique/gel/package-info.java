/**
 * Gels and thickeners: whether the dose, the acid, the ions, the sugar and the plate let an agent
 * do its work, and between which temperatures it is poured, sets and holds. Refuses: to judge a pH
 * that nobody read, and to promise a firmness.
 */
@NullMarked
package halfgram.technique.gel;

import org.jspecify.annotations.NullMarked;
