/** Who changed what, when and from where, for the owner. Refuses: to change any of it. */
@NullMarked
package halfgram.pages.audit;

import org.jspecify.annotations.NullMarked;
