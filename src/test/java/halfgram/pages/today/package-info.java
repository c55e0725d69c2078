/** The day as a browser without scripts sees it. */
@NullMarked
package halfgram.pages.today;

import org.jspecify.annotations.NullMarked;
