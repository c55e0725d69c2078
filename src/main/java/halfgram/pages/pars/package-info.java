/** Pars: the week of every regular service as one form. Refuses: to read an amount itself. */
@NullMarked
package halfgram.pages.pars;

import org.jspecify.annotations.NullMarked;
