/**
 * What is called, sent and run out of while a service runs, and how many plates there is food for.
 * Refuses: to move stock; a plate sent is a fact of its own until somebody counts or closes.
 */
@NullMarked
package halfgram.pass;

import org.jspecify.annotations.NullMarked;
