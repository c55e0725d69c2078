@NullMarked
package halfgram.pages.tablets;

import org.jspecify.annotations.NullMarked;
