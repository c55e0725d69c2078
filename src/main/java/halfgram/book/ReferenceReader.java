package halfgram.book;

import halfgram.measure.Message;
import halfgram.measure.Standing;
import halfgram.technique.Tables;
import java.math.BigDecimal;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** Reads what a kitchen has put in the place of reference rows. */
final class ReferenceReader {
  /** Columns of legal limits. */
  private static final Set<String> LIMITS = Set.of("ppm", "maximum_mg_per_kg");

  /** Columns that count something. */
  private static final Set<String> WHOLE = Set.of("calcium_atoms");

  private final Reference shipped;

  ReferenceReader(Reference shipped) {
    this.shipped = shipped;
  }

  /** A row as the kitchen has it. */
  private record Own(
      String table, String row, Map<String, String> fields, Standing standing, String source) {}

  /** The reference rows with those of the book. */
  Reference own(Node root) {
    Set<String> codes = new HashSet<>();
    List<Optional<Own>> rows = root.list("reference", node -> row(node, codes));
    Tables tables = shipped.tables();
    for (Optional<Own> row : rows) {
      if (row.isPresent()) {
        Own own = row.get();
        tables = tables.with(own.table(), own.row(), own.fields(), own.standing(), own.source());
      }
    }
    return rows.isEmpty() ? shipped : Reference.of(tables);
  }

  private Optional<Own> row(Node node, Set<String> codes) {
    int before = node.problems().list().size();
    node.code("code");
    String table = node.code("table");
    String row = node.word("row");
    if (!codes.add(table + "/" + row)) {
      node.problem("row", row, "problem.duplicate", "row");
    }
    String source = node.word("source");
    Standing standing =
        node.find("standing", Standing::find, "accept.standing").orElse(Standing.MEASURED_HERE);
    Optional<Tables.Row> known = shipped.tables().find(table, row);
    Map<String, String> fields =
        node.need("fields", "accept.object")
            .map(of -> known.map(any -> fields(of, table, any)).orElseGet(Map::of))
            .orElse(Map.of());
    if (!table.isEmpty() && !Reference.TABLES.contains(table)) {
      node.problem("table", table, "problem.no-such", "table", String.join(", ", Reference.TABLES));
    } else if (known.isEmpty() && !row.isEmpty()) {
      Set<String> rows = new TreeSet<>(shipped.tables().table(table).keySet());
      node.problem("row", row, "problem.no-such", "row", Reading.near(rows, row));
    }
    // A row with a problem counts as shipped, so that techniques look nothing wrong up.
    return known.isEmpty() || node.problems().list().size() > before
        ? Optional.empty()
        : Optional.of(new Own(table, row, fields, standing, source));
  }

  /** Numbers stay numbers; a column that the table does not have is none. */
  private Map<String, String> fields(Node node, String table, Tables.Row known) {
    Map<String, String> fields = new TreeMap<>();
    Tables tables = shipped.tables();
    for (String column : tables.columns(table)) {
      Optional<String> text = TypedText.find(node, column, "1");
      if (text.isPresent() && tables.isNumeric(table, column)) {
        check(node, column, known.text(column), text.get());
      }
      text.ifPresent(value -> fields.put(column, value));
    }
    node.done();
    return fields;
  }

  /**
   * A number stays one, and one that can be: percents and pH within theirs, above zero what is
   * shipped above zero, whole what is counted. A legal limit is brought down here, never up: only a
   * rule set raises it.
   */
  private static void check(Node node, String column, String was, String text) {
    if (!isNumber(text)) {
      node.problem(column, text, "problem.accepted", Message.of("accept.any-number"));
      return;
    }
    BigDecimal number = new BigDecimal(text);
    boolean known = isNumber(was);
    Optional<BigDecimal> most = most(column);
    if (most.isPresent() && (number.signum() < 0 || number.compareTo(most.get()) > 0)) {
      node.problem(column, text, "problem.accepted", Message.of("accept.number", "0", most.get()));
    } else if (known && new BigDecimal(was).signum() > 0 && number.signum() <= 0) {
      node.problem(column, text, "problem.accepted", Message.of("accept.above-zero"));
    } else if (WHOLE.contains(column) && number.stripTrailingZeros().scale() > 0) {
      node.problem(column, text, "problem.accepted", Message.of("accept.whole"));
    } else if (LIMITS.contains(column) && known && number.compareTo(new BigDecimal(was)) > 0) {
      node.problem(column, text, "problem.limit-raised", was);
    }
  }

  private static Optional<BigDecimal> most(String column) {
    if (column.endsWith("_percent")) {
      return Optional.of(BigDecimal.valueOf(100));
    }
    return column.startsWith("ph_") && !column.equals("ph_decides")
        ? Optional.of(BigDecimal.valueOf(14))
        : Optional.empty();
  }

  private static boolean isNumber(String text) {
    try {
      return new BigDecimal(text).precision() <= 20;
    } catch (NumberFormatException e) {
      return false;
    }
  }
}
