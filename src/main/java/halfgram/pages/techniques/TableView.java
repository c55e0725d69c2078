package halfgram.pages.techniques;

import halfgram.measure.Message;
import halfgram.technique.Tables;
import halfgram.web.Visit;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

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
    Set<String> columns = tables.columns(table);
    List<Line> lines = new ArrayList<>();
    for (Tables.Row row : tables.table(table).values()) {
      if (has(row, find)) {
        List<String> cells = columns.stream().map(row::text).toList();
        lines.add(
            new Line(
                row.code(),
                Visit.encoded(row.code()),
                cells,
                pairs(row),
                words.say(Message.of("standing." + row.standing().word())),
                row.source(),
                row.own()));
      }
    }
    List<String> names = columns.stream().map(TableView::spoken).toList();
    return new TableView(table, name, find, columns.size() > SIDE_BY_SIDE, names, lines);
  }

  private static List<Pair> pairs(Tables.Row row) {
    return row.fields().entrySet().stream()
        .map(field -> new Pair(spoken(field.getKey()), field.getValue()))
        .toList();
  }

  private static boolean has(Tables.Row row, String find) {
    String wanted = find.toLowerCase(Locale.ROOT);
    return row.code().contains(wanted)
        || row.fields().values().stream().anyMatch(v -> v.toLowerCase(Locale.ROOT).contains(wanted))
        || row.source().toLowerCase(Locale.ROOT).contains(wanted);
  }

  /** A column's name for reading: "set_low_c" is "set low c". */
  static String spoken(String column) {
    return column.replace('_', ' ');
  }
}
