package halfgram.pages.pars;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.desk.House;
import halfgram.desk.Pars;
import halfgram.desk.Pars.Row;
import halfgram.desk.Pars.Spot;
import halfgram.measure.Quantity;
import halfgram.pages.TypedNumber;
import halfgram.web.Halt;
import java.io.UncheckedIOException;
import java.time.DayOfWeek;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The week's pars as typed.
 *
 * @param rows in the order of the page, also those still without an amount
 * @param seen what each cell held when the form was begun
 * @param typed what each cell of the form holds
 */
record ParsForm(Set<Row> rows, Map<Spot, String> seen, Map<Spot, String> typed) {
  private static final String CELL = "par:";

  /** The pars as they are. */
  static ParsForm of(House house) {
    Map<Spot, String> cells = Pars.cells(house);
    Set<Row> rows = new LinkedHashSet<>();
    cells.keySet().forEach(spot -> rows.add(spot.row()));
    return new ParsForm(rows, cells, cells);
  }

  /** What was sent; a cell that was seen and not sent holds what it held. */
  static ParsForm read(Map<String, List<String>> form) {
    Set<Row> rows = new LinkedHashSet<>();
    form.getOrDefault("row", List.of()).forEach(name -> row(name).ifPresent(rows::add));
    Map<Spot, String> seen = seen(form.getOrDefault("seen", List.of("{}")).get(0));
    Map<Spot, String> typed = new LinkedHashMap<>(seen);
    form.forEach(
        (name, values) -> {
          if (name.startsWith(CELL)) {
            spot(name).ifPresent(spot -> typed.put(spot, tidy(values.get(0))));
          }
        });
    typed.keySet().forEach(spot -> rows.add(spot.row()));
    return new ParsForm(rows, seen, typed);
  }

  /** "3,2kg" becomes "3.2 kg", "45 pieces" what the book has; else it stays as it was typed. */
  private static String tidy(String typed) {
    String spaced =
        TypedNumber.pointed(typed).replaceFirst("^(\\d+(?:\\.\\d+)?)(?=[a-zA-Z])", "$1 ");
    return Quantity.parse(spaced).map(Quantity::toString).orElse(typed.strip());
  }

  private static Map<Spot, String> seen(String json) {
    Map<Spot, String> seen = new LinkedHashMap<>();
    try {
      for (Map.Entry<String, JsonNode> entry : BookStore.parse(json).properties()) {
        spot(entry.getKey()).ifPresent(spot -> seen.put(spot, entry.getValue().asText()));
      }
    } catch (UncheckedIOException e) {
      throw Halt.unreadable("seen");
    }
    return seen;
  }

  /** This form with one more row. */
  ParsForm with(Row row) {
    Set<Row> more = new LinkedHashSet<>(rows);
    more.add(row);
    return new ParsForm(more, seen, typed);
  }

  /** This form as if it had begun now: what is there now has been seen. */
  ParsForm rebased(House now) {
    Map<Spot, String> there = Pars.cells(now);
    Map<Spot, String> mine = new LinkedHashMap<>();
    Set<Row> all = new LinkedHashSet<>(rows);
    there.keySet().forEach(spot -> all.add(spot.row()));
    for (Row row : all) {
      for (DayOfWeek day : DayOfWeek.values()) {
        Spot spot = new Spot(row, day);
        String is = there.getOrDefault(spot, "");
        String was = seen.getOrDefault(spot, "");
        String typedHere = typed.getOrDefault(spot, was);
        mine.put(spot, typedHere.equals(was) ? is : typedHere);
      }
    }
    return new ParsForm(all, there, mine);
  }

  /** What was seen, to be sent along. */
  String seenJson() {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    seen.forEach((spot, typedThen) -> json.put(name(spot), typedThen));
    return json.toString();
  }

  static String name(Row row) {
    return row.service() + "/" + row.component() + "/" + row.output();
  }

  static String name(Spot spot) {
    String day = spot.day().name().substring(0, 3).toLowerCase(Locale.ROOT);
    return CELL + name(spot.row()) + "/" + day;
  }

  private static Optional<Row> row(String name) {
    String[] parts = name.split("/", -1);
    return parts.length == 3
        ? Optional.of(new Row(parts[0], parts[1], parts[2]))
        : Optional.empty();
  }

  private static Optional<Spot> spot(String name) {
    int cut = name.lastIndexOf('/');
    if (cut < 0 || !name.startsWith(CELL)) {
      return Optional.empty();
    }
    Optional<Row> row = row(name.substring(CELL.length(), cut));
    Optional<DayOfWeek> day = Pars.day(name.substring(cut + 1));
    return row.isPresent() && day.isPresent()
        ? Optional.of(new Spot(row.get(), day.get()))
        : Optional.empty();
  }
}
