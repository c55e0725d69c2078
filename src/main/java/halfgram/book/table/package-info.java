/**
 * The book's lists as tables for a spreadsheet, and back: a table is written from the book, and its
 * rows change the book's items by their codes. Refuses a table with any cell it cannot read, and
 * knows no database.
 */
@NullMarked
package halfgram.book.table;

import org.jspecify.annotations.NullMarked;
