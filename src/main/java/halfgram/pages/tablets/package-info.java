/** The tablets of a kitchen: pairing, their stations, PINs, and what revoked ones sent. */
@NullMarked
package halfgram.pages.tablets;

import org.jspecify.annotations.NullMarked;
