/** Starts the program and hands over to its commands; refuses to hold any rule of the kitchen. */
@NullMarked
package halfgram;

import org.jspecify.annotations.NullMarked;
