/**
 * Why: how one number of a plan came to be, down to what was entered. Refuses: to explain a number
 * by anything but the computation that made it.
 */
@NullMarked
package halfgram.pages.why;

import org.jspecify.annotations.NullMarked;
