/** The services of today at the pass: what is to go, ready, called, sent and out. */
@NullMarked
package halfgram.pages.service;

import org.jspecify.annotations.NullMarked;
