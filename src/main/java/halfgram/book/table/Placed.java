package halfgram.book.table;

import halfgram.input.Problem;
import halfgram.measure.Message;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Where the cells of a table went in the book, and what could not be read of them. */
public final class Placed {
  /**
   * A cell.
   *
   * @param whole whether it stands for its row
   */
  private record Cell(Row row, String column, boolean whole) {}

  /** What a book accepts in its own words, and what a table does. */
  private static final Map<String, String> IN_TABLES =
      Map.of("accept.covers", "accept.table-covers");

  private final Map<String, Cell> cells = new HashMap<>();
  private final Map<String, Cell> inside = new HashMap<>();
  private final List<Misread> misreads = new ArrayList<>();

  /** A row went here; what is wrong with all of it is told at this column. */
  void row(String path, Row row, String column) {
    cells.put(path, new Cell(row, column, true));
  }

  void put(String path, Row row, String column) {
    Cell cell = new Cell(row, column, false);
    // Of columns that write to one place, the first stands for it.
    cells.merge(path, cell, (one, next) -> one.row.number() == row.number() ? one : next);
    inside.putIfAbsent(above(path), cell);
  }

  void misread(Row row, String column, Message message) {
    misreads.add(new Misread(row.number(), column, row.cell(column), message));
  }

  /** What could not be read, before the book was asked. */
  public List<Misread> misreads() {
    return List.copyOf(misreads);
  }

  /**
   * Everything that is wrong: what could not be read, and what the book says of all else. Of a cell
   * that could not be read nothing more is said, and nothing of what it may have caused elsewhere.
   */
  public List<Misread> all(List<Problem> problems) {
    List<Misread> all = new ArrayList<>(misreads);
    Set<String> told = new HashSet<>();
    misreads.forEach(one -> told.add(one.row() + "/" + one.column()));
    for (Problem problem : problems) {
      Misread at = at(problem);
      boolean known = told.contains(at.row() + "/" + at.column());
      if (misreads.isEmpty() || (at.row() > 0 && !known)) {
        all.add(at);
      }
    }
    return all;
  }

  /**
   * A problem of the changed book at the cell it came from, or at the first cell that went inside
   * of what it is about; at no row, if it is elsewhere.
   */
  public Misread at(Problem problem) {
    String path = problem.path();
    Message said = inTables(problem.message());
    Cell cell = cells.getOrDefault(path, inside.get(path));
    while (cell == null && path.length() > 1) {
      path = above(path);
      cell = cells.get(path);
    }
    if (cell == null) {
      return new Misread(0, problem.path(), problem.value(), said);
    }
    String rest = problem.path().substring(path.length());
    boolean named = cell.whole && rest.startsWith(".");
    return new Misread(
        cell.row.number(),
        cell.column,
        problem.value(),
        named ? Message.of("table.inside", rest.substring(1), said) : said);
  }

  private static Message inTables(Message said) {
    Object[] args =
        said.args().stream()
            .map(
                arg ->
                    arg instanceof Message inner && IN_TABLES.containsKey(inner.key())
                        ? Message.of(IN_TABLES.getOrDefault(inner.key(), inner.key()))
                        : arg)
            .toArray();
    return Message.of(said.key(), args);
  }

  private static String above(String path) {
    return path.substring(0, Math.max(0, Math.max(path.lastIndexOf('.'), path.lastIndexOf('['))));
  }
}
