/** Tests of pars by HTTP. */
@NullMarked
package halfgram.pages.pars;

import org.jspecify.annotations.NullMarked;
