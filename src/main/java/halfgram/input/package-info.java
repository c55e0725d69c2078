/**
 * What is wrong with what somebody entered: every problem at once, each with its place. Refuses: to
 * stop at the first, and to guess.
 */
@NullMarked
package halfgram.input;

import org.jspecify.annotations.NullMarked;
