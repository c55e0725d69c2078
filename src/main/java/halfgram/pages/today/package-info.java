/**
 * Today: whether the day fits, what is next, what has changed, the day to scale, the sheet, each
 * task on its own. Refuses: to put a changed plan in force before somebody has seen what it
 * changes.
 */
@NullMarked
package halfgram.pages.today;

import org.jspecify.annotations.NullMarked;
