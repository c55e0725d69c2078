/**
 * What people see: one package for each page, with what it shows put into words and the handlers on
 * top. Refuses: to decide anything.
 */
@NullMarked
package halfgram.pages;

import org.jspecify.annotations.NullMarked;
