/** Times that follow from ticks: what stands, what rests, what may not wait any longer. */
@NullMarked
package halfgram.prep.timer;

import org.jspecify.annotations.NullMarked;
