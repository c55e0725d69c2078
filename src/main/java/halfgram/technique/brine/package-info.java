/**
 * Salt for brines by every convention in use, and nitrite against the limit of a rule set. Refuses:
 * to guess which limit counts, what a tub holds, or that a percent out of reason was meant.
 */
@NullMarked
package halfgram.technique.brine;

import org.jspecify.annotations.NullMarked;
