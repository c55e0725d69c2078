package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookReader;
import halfgram.book.table.BookTable;
import halfgram.book.table.CsvText;
import halfgram.book.table.Misread;
import halfgram.book.table.Placed;
import halfgram.book.table.Row;
import halfgram.db.Tx;
import halfgram.input.Problem;
import halfgram.kitchen.KitchenStore;
import halfgram.prep.KitchenBook;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Brings the rows of a table into a kitchen's book as it is at that moment. Every problem is told
 * by row and column, and nothing changes unless there is none.
 */
public final class ImportTable {

  /**
   * What came of it: how many rows of the database were written, or what is wrong.
   *
   * @param told what was written and is more often a slip than meant
   */
  public record Outcome(int rows, List<Misread> problems, List<Misread> told) {
    private static Outcome refused(List<Misread> problems) {
      return new Outcome(0, problems, List.of());
    }
  }

  private final Desk desk;
  private final ImportBook books;
  private final KitchenStore kitchens = new KitchenStore();
  private final ExportBook export = new ExportBook();

  public ImportTable(Desk desk) {
    this.desk = desk;
    this.books = new ImportBook(desk);
  }

  /**
   * Brings in a table as it was read. Of one with rows that cannot be read nothing is written, but
   * what is wrong with its other rows is told too.
   */
  public Outcome importTable(House house, BookTable table, CsvText.Outcome read, String who) {
    if (read.misreads().isEmpty()) {
      return desk.write(house, tx -> write(tx, house, new Change(table, read.rows(), who)));
    }
    List<Misread> wrong = new ArrayList<>(read.misreads());
    desk.read(tx -> looked(tx, house, table, read.rows())).stream()
        .filter(one -> one.row() > 0)
        .forEach(wrong::add);
    wrong.sort(Comparator.comparing(Misread::row));
    return Outcome.refused(wrong);
  }

  private List<Misread> looked(Tx tx, House house, BookTable table, List<Row> rows) {
    ObjectNode before = export.export(tx, house);
    ObjectNode tree = before.deepCopy();
    Placed placed = table.put(tree, rows);
    countAlone(before, tree);
    return placed.all(desk.check(before, tree).problems());
  }

  private record Change(BookTable table, List<Row> rows, String who) {}

  private Outcome write(Tx tx, House house, Change change) {
    House now = desk.open(tx, kitchens.lock(tx, house.id()));
    ObjectNode before = export.export(tx, now);
    ObjectNode tree = before.deepCopy();
    Placed placed = change.table().put(tree, change.rows());
    countAlone(before, tree);
    if (placed.misreads().isEmpty() && tree.equals(before)) {
      return Outcome.refused(List.of());
    }
    BookReader.Outcome read = desk.check(before, tree);
    List<Misread> wrong = placed.all(read.problems());
    if (!wrong.isEmpty() || read.book().isEmpty()) {
      wrong.sort(Comparator.comparing(Misread::row));
      return Outcome.refused(wrong);
    }
    List<Problem> early = early(read.book().get(), before);
    if (!early.isEmpty()) {
      return Outcome.refused(early.stream().map(placed::at).toList());
    }
    ImportBook.Outcome written = books.write(tx, now.code(), tree, read.book().get(), change.who());
    return new Outcome(
        written.rows(),
        written.problems().stream().map(placed::at).toList(),
        written.told().stream().map(placed::at).toList());
  }

  /**
   * Of a tub that is there its count alone comes in, so that less than it keeps for events is no
   * contradiction: the ledger says whose was taken.
   */
  private static void countAlone(ObjectNode before, ObjectNode tree) {
    Map<String, JsonNode> left = new HashMap<>();
    before.path("tubs").forEach(tub -> left.put(tub.path("code").asText(), tub.path("left")));
    for (JsonNode tub : tree.path("tubs")) {
      JsonNode was = left.get(tub.path("code").asText());
      if (was != null && !was.equals(tub.path("left"))) {
        ((ObjectNode) tub).remove("reserved");
      }
    }
  }

  /** New tubs that somebody says were made in the future. */
  private List<Problem> early(KitchenBook book, ObjectNode before) {
    Set<String> known = new HashSet<>();
    before.path("tubs").forEach(tub -> known.add(tub.path("code").asText()));
    List<Problem> problems = new ArrayList<>();
    for (int i = 0; i < book.lots().size(); i++) {
      String path = "$.tubs[" + i + "].made";
      Optional.of(book.lots().get(i))
          .filter(lot -> !known.contains(lot.code()))
          .flatMap(lot -> new TubDates(book, desk.now()).early(lot))
          .ifPresent(why -> problems.add(new Problem(path, "", why)));
    }
    return problems;
  }
}
