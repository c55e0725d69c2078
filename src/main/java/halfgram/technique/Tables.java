package halfgram.technique;

import halfgram.measure.Standing;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The reference rows that techniques look things up in, by table and code.
 *
 * @param byName tables by name, their rows by code
 */
public record Tables(SortedMap<String, SortedMap<String, Row>> byName) {

  /**
   * A row.
   *
   * @param fields as the table writes them; an empty field is absent
   * @param own whether the kitchen has put something else into it
   */
  public record Row(
      String code,
      SortedMap<String, String> fields,
      Standing standing,
      String source,
      boolean own) {

    public Optional<String> find(String field) {
      return Optional.ofNullable(fields.get(field));
    }

    public String text(String field) {
      return find(field).orElse("");
    }

    /** A number of the row; NaN where the table has none. */
    public double number(String field) {
      return find(field).map(Double::parseDouble).orElse(Double.NaN);
    }

    public boolean has(String field) {
      return fields.containsKey(field);
    }
  }

  public SortedMap<String, Row> table(String name) {
    return byName.getOrDefault(name, new TreeMap<>());
  }

  /** The columns that any row of a table has something in. */
  public SortedSet<String> columns(String table) {
    SortedSet<String> columns = new TreeSet<>();
    table(table).values().forEach(row -> columns.addAll(row.fields().keySet()));
    return columns;
  }

  /** Whether every row of a table has a number in a column, or nothing. */
  public boolean isNumeric(String table, String column) {
    return table(table).values().stream()
        .flatMap(row -> row.find(column).stream())
        .allMatch(value -> value.matches("-?\\d+(\\.\\d+)?"));
  }

  public Optional<Row> find(String table, String code) {
    return Optional.ofNullable(table(table).get(code));
  }

  /** A row that is there for certain: a choice that was checked. */
  public Row row(String table, String code) {
    return find(table, code)
        .orElseThrow(() -> new IllegalArgumentException("no " + code + " in " + table));
  }

  /**
   * These with something else in one row.
   *
   * @param fields the ones that are another's word, with what they say
   */
  public Tables with(
      String table, String code, Map<String, String> fields, Standing standing, String source) {
    Row old = row(table, code);
    SortedMap<String, String> changed = new TreeMap<>(old.fields());
    changed.putAll(fields);
    SortedMap<String, Row> rows = new TreeMap<>(table(table));
    rows.put(code, new Row(code, changed, standing, source, true));
    SortedMap<String, SortedMap<String, Row>> all = new TreeMap<>(byName);
    all.put(table, rows);
    return new Tables(all);
  }
}
