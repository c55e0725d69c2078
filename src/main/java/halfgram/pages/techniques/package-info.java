/** Techniques worked out on a page, and the reference rows they look things up in. */
@NullMarked
package halfgram.pages.techniques;

import org.jspecify.annotations.NullMarked;
