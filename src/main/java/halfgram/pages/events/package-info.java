/** Events: who comes, and what that asks of the kitchen. Refuses: to accept a plan. */
@NullMarked
package halfgram.pages.events;

import org.jspecify.annotations.NullMarked;
