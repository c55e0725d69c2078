package halfgram.pages.book;

import halfgram.pages.Effect;
import halfgram.pages.form.Cells.Cell;
import halfgram.pages.form.Cells.Suggestions;
import halfgram.pages.form.WrongFields;
import java.util.List;
import java.util.Optional;

/**
 * A thing of the book as a form.
 *
 * @param action where the form goes
 * @param stays whether it cannot be taken out
 * @param asksOut whether it is asked once more before it is taken out
 * @param uses what goes on with it today
 * @param how what the kind is for
 * @param base what it was when the form was made, sent along
 * @param faults those that belong to no field
 * @param wrong how many fields need another look
 * @param effects what saving would do to the sheets; empty until looked at
 */
record EditView(
    String action,
    boolean fresh,
    boolean stays,
    boolean asksOut,
    List<String> uses,
    String title,
    String how,
    String base,
    List<String> faults,
    Optional<WrongFields> wrong,
    List<Cell> cells,
    List<Suggestions> lists,
    List<Effect> effects) {}
