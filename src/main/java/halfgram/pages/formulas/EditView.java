package halfgram.pages.formulas;

import halfgram.pages.Effect;
import halfgram.pages.form.Cells.Cell;
import halfgram.pages.form.Cells.Suggestions;
import java.util.List;

/**
 * The form of a version: its fields as typed, each problem at its field.
 *
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
    Cell name,
    List<Cell> cells,
    List<Suggestions> lists,
    List<Effect> effects) {}
