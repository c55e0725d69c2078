package halfgram.desk;

import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookReader;
import halfgram.book.table.BookTable;
import halfgram.book.table.Misread;
import halfgram.book.table.Placed;
import halfgram.book.table.Row;
import halfgram.db.Tx;
import halfgram.kitchen.KitchenStore;
import java.util.List;

/**
 * Brings the rows of a table into a kitchen's book as it is at that moment. Every problem is told
 * by row and column, and nothing changes unless there is none.
 */
public final class ImportTable {

  /** What came of it: how many rows of the database were written, or what is wrong. */
  public record Outcome(int rows, List<Misread> problems) {}

  private final Desk desk;
  private final ImportBook books;
  private final KitchenStore kitchens = new KitchenStore();
  private final ExportBook export = new ExportBook();

  public ImportTable(Desk desk) {
    this.desk = desk;
    this.books = new ImportBook(desk);
  }

  public Outcome importTable(House house, BookTable table, List<Row> rows, String who) {
    return desk.write(house, tx -> write(tx, house, new Change(table, rows, who)));
  }

  private record Change(BookTable table, List<Row> rows, String who) {}

  private Outcome write(Tx tx, House house, Change change) {
    House now = desk.open(tx, kitchens.lock(tx, house.id()));
    ObjectNode before = export.export(tx, now);
    ObjectNode tree = before.deepCopy();
    Placed placed = change.table().put(tree, change.rows());
    if (!placed.misreads().isEmpty()) {
      return new Outcome(0, placed.misreads());
    }
    if (tree.equals(before)) {
      return new Outcome(0, List.of());
    }
    BookReader.Outcome read = desk.check(tree);
    if (read.book().isEmpty()) {
      return new Outcome(0, read.problems().stream().map(placed::at).toList());
    }
    ImportBook.Outcome written = books.write(tx, now.code(), tree, read.book().get(), change.who());
    return new Outcome(written.rows(), written.problems().stream().map(placed::at).toList());
  }
}
