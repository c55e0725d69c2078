/**
 * Who belongs to the kitchen, what each may do, and one's own account. Refuses: to show a password.
 */
@NullMarked
package halfgram.pages.people;

import org.jspecify.annotations.NullMarked;
