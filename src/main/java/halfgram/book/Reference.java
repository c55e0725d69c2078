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
import java.util.function.Consumer;

/**
 * The reference rows that come with the program, each with its standing and source: densities,
 * yields per cut, natural calcium, calcium salts, allergens, Gastronorm sizes.
 */
public record Reference(
    Map<String, Stated> densities,
    Map<String, Map<String, Stated>> yields,
    Map<String, Stated> calcium,
    Map<String, CalciumSalt> salts,
    Map<String, Text> allergens,
    Map<String, Size> sizes,
    Tables tables) {

  /** The tables that techniques look things up in. */
  private static final List<String> TECHNIQUES =
      List.of("salts", "composition", "densities", "heat-capacities", "nitrite-limits");

  /** A container size in millimetres and litres. */
  public record Size(BigDecimal length, BigDecimal width, BigDecimal depth, BigDecimal litres) {}

  /** Reads all tables; they are part of the program, so a fault in one is a bug. */
  public static Reference load() {
    Reference reference =
        new Reference(
            new TreeMap<>(),
            new TreeMap<>(),
            new TreeMap<>(),
            new TreeMap<>(),
            new LinkedHashMap<>(),
            new TreeMap<>(),
            tables(TECHNIQUES));
    rows(
        "densities",
        row -> reference.densities.put(row.getField("code"), stated(row, number(row, "g_per_ml"))));
    rows(
        "yields",
        row ->
            reference
                .yields
                .computeIfAbsent(row.getField("code"), code -> new TreeMap<>())
                .put(
                    row.getField("cut"),
                    stated(row, number(row, "yield_percent").movePointLeft(2))));
    rows(
        "composition",
        row ->
            reference.calcium.put(
                row.getField("code"),
                stated(row, number(row, "calcium_mg_per_100g").movePointLeft(5))));
    rows("salts", row -> reference.salts.put(row.getField("code"), salt(row)));
    rows("allergens", row -> reference.allergens.put(row.getField("code"), names(row)));
    rows("gastronorm", row -> reference.sizes.put(row.getField("code"), size(row)));
    return reference;
  }

  /** Whole tables by name. */
  private static Tables tables(List<String> names) {
    SortedMap<String, SortedMap<String, Tables.Row>> tables = new TreeMap<>();
    for (String name : names) {
      SortedMap<String, Tables.Row> rows = new TreeMap<>();
      rows(name, row -> rows.put(row.getField("code"), row(row)));
      tables.put(name, rows);
    }
    return new Tables(tables);
  }

  private static Tables.Row row(NamedCsvRecord row) {
    SortedMap<String, String> fields = new TreeMap<>(row.getFieldsAsMap());
    fields.keySet().removeAll(Set.of("code", "standing", "source"));
    fields.values().removeIf(String::isBlank);
    Standing standing = Standing.find(row.getField("standing")).orElseThrow();
    return new Tables.Row(row.getField("code"), fields, standing, row.getField("source"), false);
  }

  private static CalciumSalt salt(NamedCsvRecord row) {
    return new CalciumSalt(
        row.getField("code"),
        row.getField("name"),
        number(row, "molar_mass_g_per_mol").doubleValue(),
        Integer.parseInt(row.getField("calcium_atoms")));
  }

  private static Text names(NamedCsvRecord row) {
    return new Text(
        new TreeMap<>(
            Map.of(
                "en", row.getField("name_en"),
                "es", row.getField("name_es"),
                "fr", row.getField("name_fr"))));
  }

  private static Size size(NamedCsvRecord row) {
    return new Size(
        number(row, "length_mm"),
        number(row, "width_mm"),
        number(row, "depth_mm"),
        number(row, "litres"));
  }

  private static Stated stated(NamedCsvRecord row, BigDecimal value) {
    Standing standing = Standing.find(row.getField("standing")).orElseThrow();
    return new Stated(new Ratio(value), standing, row.getField("source"));
  }

  private static BigDecimal number(NamedCsvRecord row, String field) {
    return new BigDecimal(row.getField(field));
  }

  private static void rows(String table, Consumer<NamedCsvRecord> each) {
    String name = "/db/reference/" + table + ".csv";
    try (InputStream stream = Reference.class.getResourceAsStream(name)) {
      if (stream == null) {
        throw new IllegalStateException("the program lacks " + name);
      }
      Reader text = new InputStreamReader(stream, StandardCharsets.UTF_8);
      try (CsvReader<NamedCsvRecord> csv =
          CsvReader.builder().commentStrategy(CommentStrategy.SKIP).ofNamedCsvRecord(text)) {
        csv.forEach(each);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(name, e);
    }
  }
}
