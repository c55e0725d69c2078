/** What a regular service uses on a weekday. Refuses: to plan for anybody by name. */
@NullMarked
package halfgram.par;

import org.jspecify.annotations.NullMarked;
