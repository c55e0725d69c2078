/** How a kitchen reads: units, clock, language of its walls. It refuses what a book would. */
@NullMarked
package halfgram.pages.settings;

import org.jspecify.annotations.NullMarked;
