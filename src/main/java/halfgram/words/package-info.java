/** The message files and how they are said. Refuses: to decide what is said. */
@NullMarked
package halfgram.words;

import org.jspecify.annotations.NullMarked;
