package halfgram.book.table;

import halfgram.input.Problem;
import halfgram.measure.Message;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Where the cells of a table went in the book, and what could not be read of them. */
public final class Placed {
  /** A cell. */
  private record Cell(Row row, String column) {}

  private final Map<String, Cell> cells = new LinkedHashMap<>();
  private final List<Misread> misreads = new ArrayList<>();

  void put(String path, Row row, String column) {
    // Of columns that write to one place, the first stands for it.
    cells.merge(path, new Cell(row, column), (one, next) -> one.row == row ? one : next);
  }

  void misread(Row row, String column, Message message) {
    misreads.add(new Misread(row.number(), column, row.cell(column), message));
  }

  /** What could not be read, before the book was asked. */
  public List<Misread> misreads() {
    return List.copyOf(misreads);
  }

  /** A problem of the changed book at the cell it came from; at no row, if it is elsewhere. */
  public Misread at(Problem problem) {
    String found = "";
    for (String path : cells.keySet()) {
      if (isBelow(problem.path(), path) && path.length() > found.length()) {
        found = path;
      }
    }
    Cell cell = cells.get(found);
    return cell == null
        ? new Misread(0, problem.path(), problem.value(), problem.message())
        : new Misread(cell.row.number(), cell.column, problem.value(), problem.message());
  }

  private static boolean isBelow(String path, String above) {
    return path.startsWith(above)
        && (path.length() == above.length() || ".[".indexOf(path.charAt(above.length())) >= 0);
  }
}
