package halfgram.pages.formulas;

import halfgram.pages.Effect;
import halfgram.pages.form.Cells.Cell;
import halfgram.pages.form.Cells.Suggestions;
import halfgram.pages.form.WrongFields;
import java.util.List;
import java.util.Optional;

/**
 * The form of a version: its fields as typed, each problem at its field.
 *
 * @param wrong how many fields need another look
 * @param behind what stands above what differs from a version saved meanwhile; empty without one
 * @param effects what saving would do to the sheets; empty until looked at
 */
record EditView(
    String action,
    boolean fresh,
    String code,
    String codeFault,
    String title,
    String save,
    String based,
    String start,
    String note,
    String noteFault,
    String before,
    List<String> faults,
    Optional<WrongFields> wrong,
    Cell name,
    List<Cell> cells,
    List<Suggestions> lists,
    String behind,
    List<Changes.Change> differs,
    List<Effect> effects) {}
