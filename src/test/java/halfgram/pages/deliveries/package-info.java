/** Tests of the deliveries by HTTP. */
@NullMarked
package halfgram.pages.deliveries;

import org.jspecify.annotations.NullMarked;
