/** What suppliers bring: the list, one delivery with what it holds up, what comes of it. */
@NullMarked
package halfgram.pages.deliveries;

import org.jspecify.annotations.NullMarked;
