/** The life of every bath of a day: what went through it, and why it was changed. */
@NullMarked
package halfgram.pages.baths;

import org.jspecify.annotations.NullMarked;
