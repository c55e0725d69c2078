package halfgram.pages.techniques;

import halfgram.measure.Message;
import halfgram.technique.Tables;
import halfgram.web.Visit;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** One reference table, its columns side by side. */
record TableView(
    String table, String name, String find, boolean wide, List<String> columns, List<Line> lines) {
  /** More columns than this stand below each other. */
  private static final int SIDE_BY_SIDE = 6;

  /**
   * A row.
   *
   * @param own whether the kitchen has its own word in it
   */
  record Line(
      String code,
      String address,
      List<String> cells,
      List<Pair> pairs,
      String believed,
      String source,
      boolean own) {}

  /** A column with what the row has in it. */
  record Pair(String name, String value) {}

  static TableView of(String table, String name, Tables tables, String find, Messages words) {
    List<String> columns = inOrder(tables, table);
    List<Line> lines = new ArrayList<>();
    for (Tables.Row row : tables.table(table).values()) {
      if (has(row, find)) {
        List<String> cells = columns.stream().map(row::text).toList();
        lines.add(
            new Line(
                row.code(),
                Visit.encoded(row.code()),
                cells,
                pairs(columns, row),
                words.say(Message.of("standing." + row.standing().word())),
                row.source(),
                row.own()));
      }
    }
    List<String> names = columns.stream().map(TableView::spoken).toList();
    return new TableView(table, name, find, columns.size() > SIDE_BY_SIDE, names, lines);
  }

  private static List<Pair> pairs(List<String> columns, Tables.Row row) {
    return columns.stream()
        .filter(row::has)
        .map(column -> new Pair(spoken(column), row.text(column)))
        .toList();
  }

  private static boolean has(Tables.Row row, String find) {
    String wanted = find.toLowerCase(Locale.ROOT);
    return row.code().contains(wanted)
        || row.fields().values().stream().anyMatch(v -> v.toLowerCase(Locale.ROOT).contains(wanted))
        || row.source().toLowerCase(Locale.ROOT).contains(wanted);
  }

  /** Units at the end of a column's name, as people write them. */
  private static final Map<String, String> UNITS =
      Map.of("_c", ", °C", "_percent", ", %", "_min", ", min", "_mm", ", mm");

  /** A column's name for reading: "set_low_c" is "set low, °C". */
  static String spoken(String column) {
    for (Map.Entry<String, String> unit : UNITS.entrySet()) {
      if (column.endsWith(unit.getKey())) {
        String name = column.substring(0, column.length() - unit.getKey().length());
        return words(name) + unit.getValue();
      }
    }
    return words(column);
  }

  private static String words(String name) {
    return name.replace('_', ' ').replaceAll("\\bph\\b", "pH");
  }

  /** Columns as people read them: names first, low before high, words after numbers. */
  static List<String> inOrder(Tables tables, String table) {
    return tables.columns(table).stream()
        .sorted(
            Comparator.comparing((String column) -> !column.equals("name"))
                .thenComparing(column -> !tables.isNumeric(table, column))
                .thenComparing(column -> column.replace("low", "0").replace("high", "1")))
        .toList();
  }
}
