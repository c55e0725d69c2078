/** The JSON API through HTTP, every call held against its document. */
@NullMarked
package halfgram.api;

import org.jspecify.annotations.NullMarked;
