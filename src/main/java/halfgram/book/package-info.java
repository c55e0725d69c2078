/**
 * The kitchen book as a file: read with every problem at once, upgraded step by step. Refuses: to
 * guess what somebody meant.
 */
@NullMarked
package halfgram.book;

import org.jspecify.annotations.NullMarked;
