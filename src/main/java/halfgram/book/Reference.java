package halfgram.book;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import halfgram.ingredient.Stated;
import halfgram.kitchen.Text;
import halfgram.measure.Ratio;
import halfgram.measure.Standing;
import halfgram.technique.Tables;
import halfgram.technique.bath.CalciumSalt;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.function.Consumer;

/**
 * The reference rows that come with the program, each with its standing and source, and what a
 * kitchen has put in their place: densities, yields per cut, natural calcium, calcium salts,
 * allergens, Gastronorm sizes, and what techniques look up.
 */
public record Reference(
    Tables tables,
    Map<String, Stated> densities,
    Map<String, Map<String, Stated>> yields,
    Map<String, Stated> calcium,
    Map<String, CalciumSalt> salts,
    Map<String, Text> allergens,
    Map<String, Size> sizes) {

  /** Every table, in the order in which they are shown. */
  public static final List<String> TABLES =
      List.of(
          "salts",
          "composition",
          "densities",
          "yields",
          "gastronorm",
          "agents",
          "gelatins",
          "additives",
          "heat-capacities",
          "nitrite-limits");

  /** Between the code and the cut of a row of yields. */
  private static final String CUT = ".";

  /** A container size in millimetres and litres. */
  public record Size(BigDecimal length, BigDecimal width, BigDecimal depth, BigDecimal litres) {}

  /** As shipped: the tables are part of the program, so a fault in one is a bug. */
  private static final class Shipped {
    private static final Map<String, Text> ALLERGENS = readAllergens();
    private static final Reference ROWS = of(read());
  }

  /** Without a kitchen's own rows. */
  public static Reference load() {
    return Shipped.ROWS;
  }

  /** With other rows. */
  static Reference of(Tables tables) {
    return new Reference(
        tables,
        each(tables, "densities", (code, row) -> stated(row, number(row, "g_per_ml"))),
        yields(tables),
        each(
            tables,
            "composition",
            (code, row) -> stated(row, number(row, "calcium_mg_per_100g").movePointLeft(5))),
        each(tables, "salts", Reference::salt),
        Shipped.ALLERGENS,
        each(tables, "gastronorm", (code, row) -> size(row)));
  }

  private static <T> Map<String, T> each(
      Tables tables, String name, BiFunction<String, Tables.Row, T> read) {
    Map<String, T> all = new TreeMap<>();
    tables.table(name).forEach((code, row) -> all.put(code, read.apply(code, row)));
    return all;
  }

  private static Map<String, Map<String, Stated>> yields(Tables tables) {
    Map<String, Map<String, Stated>> yields = new TreeMap<>();
    for (Tables.Row row : tables.table("yields").values()) {
      yields
          .computeIfAbsent(row.text("of"), of -> new TreeMap<>())
          .put(row.text("cut"), stated(row, number(row, "yield_percent").movePointLeft(2)));
    }
    return yields;
  }

  private static CalciumSalt salt(String code, Tables.Row row) {
    return new CalciumSalt(
        code,
        row.text("name"),
        number(row, "molar_mass_g_per_mol").doubleValue(),
        number(row, "calcium_atoms").intValueExact());
  }

  /** In the order of the regulation. */
  private static Map<String, Text> readAllergens() {
    Map<String, Text> names = new LinkedHashMap<>();
    each(
        "allergens",
        row ->
            names.put(
                row.getField("code"),
                new Text(
                    new TreeMap<>(
                        Map.of(
                            "en", row.getField("name_en"),
                            "es", row.getField("name_es"),
                            "fr", row.getField("name_fr"))))));
    return names;
  }

  private static Size size(Tables.Row row) {
    return new Size(
        number(row, "length_mm"),
        number(row, "width_mm"),
        number(row, "depth_mm"),
        number(row, "litres"));
  }

  private static Stated stated(Tables.Row row, BigDecimal value) {
    return new Stated(new Ratio(value), row.standing(), row.source());
  }

  private static BigDecimal number(Tables.Row row, String field) {
    return new BigDecimal(row.text(field));
  }

  private static Tables read() {
    SortedMap<String, SortedMap<String, Tables.Row>> tables = new TreeMap<>();
    TABLES.forEach(name -> tables.put(name, rows(name)));
    return new Tables(tables);
  }

  private static SortedMap<String, Tables.Row> rows(String table) {
    SortedMap<String, Tables.Row> rows = new TreeMap<>();
    each(table, record -> put(rows, record));
    return rows;
  }

  private static void each(String table, Consumer<NamedCsvRecord> take) {
    String name = "/db/reference/" + table + ".csv";
    try (InputStream stream = Reference.class.getResourceAsStream(name)) {
      if (stream == null) {
        throw new IllegalStateException("the program lacks " + name);
      }
      Reader text = new InputStreamReader(stream, StandardCharsets.UTF_8);
      try (CsvReader<NamedCsvRecord> csv =
          CsvReader.builder().commentStrategy(CommentStrategy.SKIP).ofNamedCsvRecord(text)) {
        csv.forEach(take);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(name, e);
    }
  }

  /** A row by its code; where an ingredient has several, by its code and its cut. */
  private static void put(SortedMap<String, Tables.Row> rows, NamedCsvRecord record) {
    SortedMap<String, String> fields = new TreeMap<>(record.getFieldsAsMap());
    fields.keySet().removeAll(Set.of("code", "standing", "source"));
    fields.values().removeIf(String::isBlank);
    String code = record.getField("code");
    if (fields.containsKey("cut")) {
      fields.put("of", code);
      code = code + CUT + fields.get("cut");
    }
    Standing standing = Standing.find(record.getField("standing")).orElseThrow();
    Tables.Row row = new Tables.Row(code, fields, standing, record.getField("source"), false);
    rows.put(code, row);
  }
}
