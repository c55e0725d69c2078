package halfgram.book.table;

import java.util.Map;

/**
 * A row of a table.
 *
 * @param number as a spreadsheet counts: the header is row 1
 * @param cells by column
 */
public record Row(int number, Map<String, String> cells) {
  public Row {
    cells = Map.copyOf(cells);
  }

  /** A cell without the space around it; empty when the table has no such column. */
  String cell(String column) {
    return cells.getOrDefault(column, "").strip();
  }
}
