package halfgram.book.table;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;

/**
 * A part of the book as a table. An empty cell says nothing: what the book has there stays.
 *
 * <p>Writing a table, reading it into the same book and writing it again gives the same table.
 */
public interface BookTable {
  /** Its name on the command line: "event-services". */
  String name();

  /** The names of its columns. */
  List<String> header();

  /** Its rows, in the order of the book. */
  List<List<String>> rows(ObjectNode book);

  /** Changes the book by these rows, as far as they can be read; says where each row went. */
  Placed put(ObjectNode book, List<Row> rows);

  /** The tables there are, that can be read as well as written. */
  static List<BookTable> all() {
    return List.of(
        ListTable.pars(),
        ListTable.events(),
        new EventServices(),
        ListTable.stock(),
        ListTable.ingredients());
  }

  static Optional<BookTable> find(String name) {
    return all().stream().filter(table -> table.name().equals(name)).findFirst();
  }
}
