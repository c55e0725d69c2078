/**
 * A prep sheet's tasks given to the people and machines that are there, from the slots of
 * `prep.schedule` and back to hours and names. Refuses: to change what is made, and to store.
 */
@NullMarked
package halfgram.prep.crew;

import org.jspecify.annotations.NullMarked;
