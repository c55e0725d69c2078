/** Tests of the log by HTTP. */
@NullMarked
package halfgram.pages.log;

import org.jspecify.annotations.NullMarked;
