/**
 * Work onto people, machines and time: every job at a slot with its cooks, inside its lags, before
 * its hour, as fresh as allowed. Refuses: to know what a job cooks, what o'clock a slot is, and to
 * move what has begun.
 */
@NullMarked
package halfgram.prep.schedule;

import org.jspecify.annotations.NullMarked;
