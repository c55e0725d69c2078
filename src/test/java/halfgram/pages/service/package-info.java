/** The service at the pass, through the doors that people use. */
@NullMarked
package halfgram.pages.service;

import org.jspecify.annotations.NullMarked;
