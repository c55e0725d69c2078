/** The page on which a chef sets how the kitchen reads. */
@NullMarked
package halfgram.pages.settings;

import org.jspecify.annotations.NullMarked;
