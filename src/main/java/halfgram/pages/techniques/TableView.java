package halfgram.pages.techniques;

import halfgram.measure.Message;
import halfgram.technique.Tables;
import halfgram.web.Visit;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;

/** One reference table, its columns side by side. */
record TableView(String table, String name, String find, List<String> columns, List<Line> lines) {

  /**
   * A row.
   *
   * @param own whether the kitchen has its own word in it
   */
  record Line(
      String code,
      String address,
      List<String> cells,
      String believed,
      String source,
      boolean own) {}

  static TableView of(String table, String name, Tables tables, String find, Messages words) {
    Set<String> columns = new TreeSet<>();
    tables.table(table).values().forEach(row -> columns.addAll(row.fields().keySet()));
    List<Line> lines = new ArrayList<>();
    for (Tables.Row row : tables.table(table).values()) {
      if (has(row, find)) {
        List<String> cells = columns.stream().map(row::text).toList();
        lines.add(
            new Line(
                row.code(),
                Visit.encoded(row.code()),
                cells,
                words.say(Message.of("standing." + row.standing().word())),
                row.source(),
                row.own()));
      }
    }
    List<String> names = columns.stream().map(TableView::spoken).toList();
    return new TableView(table, name, find, names, lines);
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
