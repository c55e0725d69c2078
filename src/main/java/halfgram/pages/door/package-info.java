/**
 * The door: signing in and out, the first kitchen, choosing a password, pairing a tablet. Refuses:
 * to tell a stranger whether a name or a kitchen exists.
 */
@NullMarked
package halfgram.pages.door;

import org.jspecify.annotations.NullMarked;
