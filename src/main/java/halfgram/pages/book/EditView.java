package halfgram.pages.book;

import halfgram.pages.Effect;
import halfgram.pages.form.Cells.Cell;
import halfgram.pages.form.Cells.Suggestions;
import java.util.List;

/**
 * A thing of the book as a form.
 *
 * @param action where the form goes
 * @param stays whether it cannot be taken out
 * @param how what the kind is for
 * @param base what it was when the form was made, sent along
 * @param faults those that belong to no field
 * @param effects what saving would do to the sheets; empty until looked at
 */
record EditView(
    String action,
    boolean fresh,
    boolean stays,
    String title,
    String how,
    String base,
    List<String> faults,
    List<Cell> cells,
    List<Suggestions> lists,
    List<Effect> effects) {}
