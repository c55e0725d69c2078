/**
 * The kitchen's book, thing by thing: what there is, what is still missing, and a form for each.
 */
@NullMarked
package halfgram.pages.book;

import org.jspecify.annotations.NullMarked;
