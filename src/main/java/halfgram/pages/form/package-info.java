/**
 * Things of the book as forms: fields by the book's own keys, rows, and each fault at its field.
 */
@NullMarked
package halfgram.pages.form;

import org.jspecify.annotations.NullMarked;
