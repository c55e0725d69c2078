/** Tests of the stock by HTTP. */
@NullMarked
package halfgram.pages.stock;

import org.jspecify.annotations.NullMarked;
