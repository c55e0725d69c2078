package halfgram.book.table;

import halfgram.measure.Message;

/**
 * Something wrong with a cell of a table.
 *
 * @param row as a spreadsheet counts; 1 is the header
 * @param column its name; empty for the whole row
 */
public record Misread(int row, String column, String value, Message message) {

  /** Where it is: "row 3, column left"; the place in the book for what is of no row. */
  public Message at() {
    if (row == 0) {
      return Message.of("import.at-path", column);
    }
    return column.isEmpty()
        ? Message.of("import.at-row", row)
        : Message.of("import.at-cell", row, column);
  }
}
