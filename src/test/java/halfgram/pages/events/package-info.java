/** Tests of events by HTTP. */
@NullMarked
package halfgram.pages.events;

import org.jspecify.annotations.NullMarked;
