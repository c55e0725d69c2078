package halfgram.pages.form;

import halfgram.pages.form.Cells.Cell;
import java.util.List;
import java.util.Optional;

/**
 * How many fields of a form are wrong.
 *
 * @param to the first of them, where its name stands on the page
 * @param label what it is called
 */
public record WrongFields(int count, String to, String label) {

  /** Empty when none is. */
  public static Optional<WrongFields> of(List<Cell> cells) {
    List<Cell> wrong = cells.stream().flatMap(Cell::wrong).toList();
    return wrong.stream()
        .findFirst()
        .map(first -> new WrongFields(wrong.size(), first.name(), first.label()));
  }
}
