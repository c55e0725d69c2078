/** Why, as a browser without scripts sees it. */
@NullMarked
package halfgram.pages.why;

import org.jspecify.annotations.NullMarked;
