/** Who is in today and which machines work. Refuses: to say who does what. */
@NullMarked
package halfgram.pages.crew;

import org.jspecify.annotations.NullMarked;
