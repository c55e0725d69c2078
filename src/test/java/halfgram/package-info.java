/** Tests of the program as a whole: its architecture, its tidiness, its packed jar. */
@NullMarked
package halfgram;

import org.jspecify.annotations.NullMarked;
