/**
 * Spheres set in an alginate bath: how many fit a drop, how long a run takes, what they take from
 * the bath, and when it has to be renewed. Refuses: to call a computed skin a measured one.
 */
@NullMarked
package halfgram.technique.bath;

import org.jspecify.annotations.NullMarked;
