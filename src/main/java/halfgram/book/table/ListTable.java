package halfgram.book.table;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.measure.Message;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A list of the book, one row an item.
 *
 * @param list key in the book
 * @param keys how many of the columns, from the left, say which item it is
 * @param fixed columns that an item which is there keeps as they are
 */
record ListTable(String name, String list, int keys, List<Column> columns, Set<String> fixed)
    implements BookTable {

  static BookTable pars() {
    List<Column> columns =
        new ArrayList<>(
            List.of(Column.word("service"), Column.word("component"), Column.word("output")));
    for (String day : List.of("mon", "tue", "wed", "thu", "fri", "sat", "sun")) {
      columns.add(Column.word(day, "amounts." + day));
    }
    return new ListTable("pars", "pars", 3, columns, Set.of());
  }

  static BookTable events() {
    return new ListTable(
        "events",
        "events",
        1,
        List.of(
            Column.word("code"),
            Column.text("name", "name", "en"),
            Column.word("date"),
            Column.number("expected", "covers.expected"),
            Column.number("final", "covers.final"),
            Column.number("buffer", "buffer"),
            Column.diets(),
            Column.flag("draft")),
        Set.of());
  }

  static BookTable stock() {
    return new ListTable(
        "stock",
        "tubs",
        1,
        List.of(
            Column.word("code"),
            Column.word("component"),
            Column.word("output"),
            Column.number("version", "version"),
            Column.word("left"),
            Column.word("made"),
            Column.word("use-by", "useBy"),
            Column.word("place"),
            Column.word("container"),
            Column.reserved(),
            Column.word("frozen-since", "frozen.since"),
            Column.word("keep-until", "frozen.keepUntil"),
            Column.number("days", "frozen.days"),
            Column.word("thawed")),
        Set.of(
            "component",
            "output",
            "version",
            "made",
            "use-by",
            "place",
            "container",
            "reserved",
            "frozen-since",
            "keep-until",
            "days",
            "thawed"));
  }

  static BookTable ingredients() {
    return new ListTable(
        "ingredients",
        "ingredients",
        1,
        List.of(
            Column.word("code"),
            Column.text("name", "name", "en"),
            Column.text("name-es", "name", "es"),
            Column.text("name-fr", "name", "fr"),
            Column.word("reference"),
            Column.word("form"),
            Column.number("density", "density"),
            Column.words("contains", "contains"),
            Column.words("tags", "tags"),
            Column.packs(),
            Column.units(),
            Column.words("look-alike", "lookAlike")),
        Set.of());
  }

  @Override
  public List<String> header() {
    return columns.stream().map(Column::name).toList();
  }

  @Override
  public List<List<String>> rows(ObjectNode book) {
    List<List<String>> rows = new ArrayList<>();
    book.path(list)
        .forEach(item -> rows.add(columns.stream().map(column -> column.show(item)).toList()));
    return rows;
  }

  @Override
  public Placed put(ObjectNode book, List<Row> rows) {
    Placed placed = new Placed();
    ArrayNode items = book.withArray(list);
    Map<List<String>, Integer> there = index(items);
    Set<List<String>> seen = new HashSet<>();
    for (Row row : rows) {
      List<String> key = columns.subList(0, keys).stream().map(c -> row.cell(c.name())).toList();
      if (seen.add(key)) {
        boolean fresh = !there.containsKey(key);
        int at = there.getOrDefault(key, items.size());
        ObjectNode item = fresh ? items.addObject() : (ObjectNode) items.path(at);
        put(item, row, "$." + list + "[" + at + "]", fresh ? Set.of() : fixed, placed);
      } else {
        placed.misread(row, columns.get(0).name(), Message.of("table.twice"));
      }
    }
    return placed;
  }

  private void put(ObjectNode item, Row row, String path, Set<String> kept, Placed placed) {
    placed.row(path, row, columns.get(0).name());
    for (Column column : columns) {
      String cell = row.cell(column.name());
      placed.put(path + "." + column.key(), row, column.name());
      if (kept.contains(column.name()) && !cell.isEmpty() && !cell.equals(column.show(item))) {
        placed.misread(row, column.name(), Message.of("table.fixed", column.show(item)));
      } else if (!column.put(item, cell)) {
        placed.misread(row, column.name(), Message.of(column.accepted()));
      }
    }
  }

  /** Where each item stands, the first of a key. */
  private Map<List<String>, Integer> index(ArrayNode items) {
    Map<List<String>, Integer> index = new HashMap<>();
    for (int i = 0; i < items.size(); i++) {
      JsonNode item = items.path(i);
      index.putIfAbsent(columns.subList(0, keys).stream().map(c -> c.show(item)).toList(), i);
    }
    return index;
  }
}
