package halfgram.book.table;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import de.siegmar.fastcsv.writer.CsvWriter;
import halfgram.measure.Message;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * A table as a CSV file: UTF-8, commas, a header. A text that a spreadsheet would run as a formula
 * has an apostrophe before it, which is taken off again when it is read.
 */
public final class CsvText {
  private static final Pattern NUMBER = Pattern.compile("-?\\d+(\\.\\d+)?");

  /** What a spreadsheet takes for a formula, with the apostrophes that may stand before. */
  private static final Pattern FORMULA = Pattern.compile("'*[=+\\-@\\t\\r].*", Pattern.DOTALL);

  /** What a file holds: its rows, and what is wrong with it; by a wrong header no row is read. */
  public record Outcome(List<Row> rows, List<Misread> misreads) {}

  private CsvText() {}

  public static byte[] write(List<String> header, List<List<String>> rows) {
    StringWriter text = new StringWriter();
    try (CsvWriter csv = CsvWriter.builder().build(text)) {
      csv.writeRecord(header);
      rows.forEach(row -> csv.writeRecord(row.stream().map(CsvText::guarded).toList()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static String guarded(String cell) {
    boolean runs = FORMULA.matcher(cell).matches() && !NUMBER.matcher(cell).matches();
    return runs ? "'" + cell : cell;
  }

  private static String bare(String cell) {
    boolean isGuarded = cell.startsWith("'") && FORMULA.matcher(cell.substring(1)).matches();
    return isGuarded ? cell.substring(1) : cell;
  }

  /**
   * Reads a file with these columns, in any order; all but the first may be missing, and semicolons
   * may stand for commas, as some spreadsheets write them.
   */
  public static Outcome read(byte[] bytes, List<String> columns) {
    String text;
    try {
      text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      return bad(1, "", "", Message.of("table.not-utf8"));
    }
    String plain = text.startsWith("\uFEFF") ? text.substring(1) : text;
    String first = plain.lines().findFirst().orElse("");
    char separator = first.contains(";") && !first.contains(",") ? ';' : ',';
    List<List<String>> records = new ArrayList<>();
    try (CsvReader<CsvRecord> csv =
        CsvReader.builder()
            .fieldSeparator(separator)
            .skipEmptyLines(false)
            .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
            .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
            .ofCsvRecord(plain)) {
      csv.forEach(record -> records.add(record.getFields()));
    } catch (CsvParseException | IOException e) {
      return bad(records.size() + 1, "", "", Message.of("table.broken"));
    }
    return rows(records, columns);
  }

  private static Outcome rows(List<List<String>> records, List<String> columns) {
    List<String> header =
        records.isEmpty() ? List.of() : records.get(0).stream().map(String::strip).toList();
    List<Misread> misreads = new ArrayList<>(header(header, columns));
    List<Row> rows = new ArrayList<>();
    if (!misreads.isEmpty()) {
      return new Outcome(List.of(), misreads);
    }
    for (int i = 1; i < records.size(); i++) {
      List<String> record = records.get(i);
      if (record.stream().allMatch(String::isBlank)) {
        continue;
      }
      if (record.size() != header.size()) {
        Message message = Message.of("table.width", record.size(), header.size());
        misreads.add(new Misread(i + 1, "", "", message));
        continue;
      }
      Map<String, String> cells = new HashMap<>();
      for (int c = 0; c < header.size(); c++) {
        cells.put(header.get(c), bare(record.get(c)));
      }
      rows.add(new Row(i + 1, cells));
    }
    return new Outcome(rows, misreads);
  }

  private static List<Misread> header(List<String> header, List<String> columns) {
    List<Misread> misreads = new ArrayList<>();
    String known = String.join(",", columns);
    for (int i = 0; i < header.size(); i++) {
      String name = header.get(i);
      if (!columns.contains(name)) {
        misreads.add(new Misread(1, name, name, Message.of("table.no-column", known)));
      } else if (header.indexOf(name) < i) {
        misreads.add(new Misread(1, name, name, Message.of("table.column-twice")));
      }
    }
    if (!header.contains(columns.get(0))) {
      misreads.add(new Misread(1, columns.get(0), "", Message.of("table.column-missing", known)));
    }
    return misreads;
  }

  private static Outcome bad(int row, String column, String value, Message message) {
    return new Outcome(List.of(), List.of(new Misread(row, column, value, message)));
  }
}
