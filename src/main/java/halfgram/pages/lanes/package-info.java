/** The day by person and by machine, drawn to scale; its load; what if. */
@NullMarked
package halfgram.pages.lanes;

import org.jspecify.annotations.NullMarked;
