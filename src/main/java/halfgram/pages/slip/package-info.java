/** A service that slips, or gets more guests or fewer: asked, looked at, done. */
@NullMarked
package halfgram.pages.slip;

import org.jspecify.annotations.NullMarked;
