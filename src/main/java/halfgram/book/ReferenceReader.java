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

  private final Reading reading;

  ReferenceReader(Reading reading) {
    this.reading = reading;
  }

  /** A row as the kitchen has it. */
  private record Own(
      String table, String row, Map<String, String> fields, Standing standing, String source) {}

  /** The reference rows with those of the book. */
  Reference own(Node root) {
    Set<String> codes = new HashSet<>();
    List<Optional<Own>> rows = root.list("reference", node -> row(node, codes));
    Tables tables = reading.reference.tables();
    for (Optional<Own> row : rows) {
      if (row.isPresent()) {
        Own own = row.get();
        tables = tables.with(own.table(), own.row(), own.fields(), own.standing(), own.source());
      }
    }
    return rows.isEmpty() ? reading.reference : Reference.of(tables);
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
    Optional<Tables.Row> known = reading.reference.tables().find(table, row);
    Map<String, String> fields =
        node.need("fields", "accept.object")
            .map(of -> known.map(any -> fields(of, table, any)).orElseGet(Map::of))
            .orElse(Map.of());
    if (!table.isEmpty() && !Reference.TABLES.contains(table)) {
      node.problem("table", table, "problem.no-such", "table", String.join(", ", Reference.TABLES));
    } else if (known.isEmpty() && !row.isEmpty()) {
      Set<String> rows = new TreeSet<>(reading.reference.tables().table(table).keySet());
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
    Tables tables = reading.reference.tables();
    for (String column : tables.columns(table)) {
      Optional<String> text = TypedText.find(node, column, "1");
      if (text.isPresent() && tables.isNumeric(table, column) && !isNumber(text.get())) {
        node.problem(column, text.get(), "problem.accepted", Message.of("accept.any-number"));
      }
      if (text.isPresent() && isRaised(column, known.text(column), text.get())) {
        node.problem(column, text.get(), "problem.limit-raised", known.text(column));
      }
      text.ifPresent(value -> fields.put(column, value));
    }
    node.done();
    return fields;
  }

  /** A legal limit is brought down here, never up: only a rule set raises it. */
  private static boolean isRaised(String column, String shipped, String text) {
    return LIMITS.contains(column)
        && isNumber(shipped)
        && isNumber(text)
        && new BigDecimal(text).compareTo(new BigDecimal(shipped)) > 0;
  }

  static boolean isNumber(String text) {
    try {
      return new BigDecimal(text).precision() <= 20;
    } catch (NumberFormatException e) {
      return false;
    }
  }
}
