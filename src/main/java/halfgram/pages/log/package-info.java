/** The log: what happened, newest first, in words. Refuses: to change any of it. */
@NullMarked
package halfgram.pages.log;

import org.jspecify.annotations.NullMarked;
