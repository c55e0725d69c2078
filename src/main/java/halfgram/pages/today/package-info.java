/** Today: whether the day fits, what is next, the sheet. */
@NullMarked
package halfgram.pages.today;

import org.jspecify.annotations.NullMarked;
