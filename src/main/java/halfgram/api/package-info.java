/**
 * The JSON API: what the pages do, for scripts and tablets. Refuses: to know more than the pages.
 */
@NullMarked
package halfgram.api;

import org.jspecify.annotations.NullMarked;
