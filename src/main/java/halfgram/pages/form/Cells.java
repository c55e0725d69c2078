package halfgram.pages.form;

import halfgram.pages.TypedAmount;
import halfgram.prep.KitchenBook;
import halfgram.technique.Figure;
import halfgram.technique.Input;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The fields of a form as typed, each problem at its field. */
public final class Cells {
  /** Words to choose from. */
  public record Option(String value, String label, boolean on) {}

  /** A list of suggestions by its id. */
  public record Suggestions(String id, List<Option> options) {}

  /** One field, or a group or list of them; a list says what one more is called. */
  public record Cell(
      String name,
      String label,
      String kind,
      String value,
      String list,
      String fault,
      List<Option> options,
      List<Cell> cells,
      List<Row> rows,
      String more,
      String hint,
      String now) {

    /** The fields of it that something is wrong with, in their order. */
    Stream<Cell> wrong() {
      Stream<Cell> inside =
          Stream.concat(cells.stream(), rows.stream().flatMap(Row::all)).flatMap(Cell::wrong);
      return fault.isEmpty() ? inside : Stream.concat(Stream.of(this), inside);
    }

    private Cell as(String other, List<Cell> inside) {
      return new Cell(
          name, label, other, value, list, fault, options, inside, rows, more, hint, now);
    }

    /** Whether anything is typed in it, or wrong with it. */
    public boolean isTold() {
      return !value.isEmpty()
          || !fault.isEmpty()
          || !rows.isEmpty()
          || cells.stream().anyMatch(Cell::isTold)
          || (kind.equals("TEXTS") && options.stream().anyMatch(one -> !one.value().isEmpty()))
          || (kind.equals("TICKS") && options.stream().anyMatch(Option::on));
    }
  }

  /** One row of a list; what is typed below "more" is said in short. */
  public record Row(
      String name,
      String list,
      String row,
      String of,
      String title,
      String fault,
      List<Cell> main,
      List<Cell> more,
      String filled,
      boolean open) {

    /** Its fields; it is itself one when something is wrong with all of it. */
    private Stream<Cell> all() {
      Stream<Cell> fields = Stream.concat(main.stream(), more.stream());
      return fault.isEmpty() ? fields : Stream.concat(Stream.of(group(name, title, fault)), fields);
    }
  }

  /** A group of the thing itself that most do without. */
  private static final String FOLD = "FOLD";

  /** A group without fields, of which nothing is shown. */
  private static final String NOTHING = "NOTHING";

  /** An input that counts, or compares, has no unit to speak of. */
  private static final String NO_UNIT = "1";

  /** A field of a row, by the number in its name. */
  private static final Pattern IN_ROW = Pattern.compile("\\.\\d+(\\.|$)");

  private static final Map<String, String> ONE_MORE =
      Map.of(
          "lines", "formulas.add-line",
          "steps", "formulas.add-step",
          "outputs", "formulas.add-output",
          "do", "formulas.add-sentence",
          "equipment", "formulas.add-machine",
          "techniques", "formulas.add-technique");

  private final TypedForm form;
  private final Map<String, String> faults;
  private final Messages words;

  private final Map<String, String> names;
  private final Optional<TypedForm> there;

  public Cells(TypedForm form, Map<String, String> faults, Messages words) {
    this(form, faults, words, Map.of());
  }

  /**
   * @param names of words to choose from; others name themselves
   */
  public Cells(
      TypedForm form, Map<String, String> faults, Messages words, Map<String, String> names) {
    this(form, faults, words, names, Optional.empty());
  }

  private Cells(
      TypedForm form,
      Map<String, String> faults,
      Messages words,
      Map<String, String> names,
      Optional<TypedForm> there) {
    this.names = names;
    this.form = form;
    this.faults = faults;
    this.words = words;
    this.there = there;
  }

  /** The same, with what somebody else has made of each field meanwhile. */
  public Cells against(TypedForm theirs) {
    return new Cells(form, faults, words, names, Optional.of(theirs));
  }

  /** What a field is now; nothing where it is what is typed. Of rows all are told in one. */
  private String now(Part part, String name) {
    boolean told = part.kind() == Part.Kind.GROUP || IN_ROW.matcher(name).find();
    if (told || there.isEmpty()) {
      return "";
    }
    String theirs = shown(part, name, there.get());
    return theirs.equals(shown(part, name, form))
        ? ""
        : theirs.isEmpty() ? words.say("events.now-empty") : words.say("events.now", theirs);
  }

  private String shown(Part part, String name, TypedForm of) {
    return switch (part.kind()) {
      case TEXTS -> joined(" / ", part.known().stream().map(l -> of.get(name + "." + l)));
      case TICKS ->
          joined(
              ", ",
              part.known().stream()
                  .filter(word -> !of.get(name + "." + word).isEmpty())
                  .map(word -> name(part, word)));
      case GROUP, CHOSEN ->
          joined(" ", part.parts().stream().map(one -> shown(one, name + "." + one.key(), of)));
      case ROWS, SENTENCES, ITEMS ->
          joined("; ", of.rows(name).stream().map(row -> row(part, name + "." + row + ".", of)));
      case FLAG -> of.get(name).isEmpty() ? "" : words.say("formulas.yes");
      case CHOICE, DECIDES -> of.get(name).isEmpty() ? "" : name(part, of.get(name));
      case TEXT, NUMBER, TIME, CODES -> TypedAmount.shown(of.get(name).strip(), words);
    };
  }

  private String row(Part part, String at, TypedForm of) {
    return joined(" ", part.parts().stream().map(one -> shown(one, at + one.key(), of)));
  }

  private static String joined(String between, Stream<String> said) {
    return said.filter(one -> !one.isEmpty()).collect(Collectors.joining(between));
  }

  public List<Cell> cells(List<Part> parts, String prefix) {
    return parts.stream().map(part -> cell(part, prefix)).toList();
  }

  private Cell cell(Part part, String prefix) {
    String name = prefix + part.key();
    return part.kind() == Part.Kind.CHOSEN
        ? chosen(part, name, form.get(prefix + part.known().get(0)))
        : field(part, name);
  }

  /** The fields of the word that is chosen, those seldom needed folded. */
  private Cell chosen(Part part, String name, String word) {
    List<Cell> main = new ArrayList<>();
    List<Cell> more = new ArrayList<>();
    for (Part one : part.by(word).parts()) {
      (one.place() == Part.Place.MORE ? more : main).add(cell(one, name + "."));
    }
    if (!more.isEmpty()) {
      main.add(group(name + ".more", words.say("techniques.more"), "").as(FOLD, more));
    }
    Cell group = group(name, words.say(part.label()), fault(name));
    return group.as(main.isEmpty() && group.fault().isEmpty() ? NOTHING : group.kind(), main);
  }

  private static Cell group(String name, String label, String fault) {
    return new Cell(
        name,
        label,
        Part.Kind.GROUP.name(),
        "",
        "",
        fault,
        List.of(),
        List.of(),
        List.of(),
        "",
        "",
        "");
  }

  private Cell field(Part part, String name) {
    boolean listed = part.isListed();
    boolean folded = part.kind() == Part.Kind.GROUP && part.place() == Part.Place.MORE;
    String kind =
        listed
            ? Part.Kind.ROWS.name()
            : folded && name.equals(part.key()) ? FOLD : part.kind().name();
    String value =
        listed ? String.join(" ", form.rows(name)) : TypedAmount.shown(form.get(name), words);
    List<Option> options =
        switch (part.kind()) {
          case CHOICE, DECIDES ->
              part.known().stream().map(w -> option(w, name(part, w), w.equals(value))).toList();
          case TEXTS ->
              part.known().stream().map(l -> option(form.get(name + "." + l), l, false)).toList();
          case TICKS ->
              part.known().stream()
                  .map(w -> option(w, name(part, w), !form.get(name + "." + w).isEmpty()))
                  .toList();
          case TEXT, NUMBER, TIME, FLAG, CHOSEN, GROUP, ROWS, SENTENCES, ITEMS, CODES -> List.of();
        };
    List<Cell> cells = part.kind() == Part.Kind.GROUP ? cells(part.parts(), name + ".") : List.of();
    List<Row> rows = listed ? rows(part, name) : List.of();
    String list = part.known().isEmpty() ? "" : part.known().get(0);
    String more = words.say(ONE_MORE.getOrDefault(part.key(), "formulas.add"));
    return new Cell(
        name,
        label(part),
        kind,
        value,
        list,
        fault(name),
        options,
        cells,
        rows,
        more,
        part.input().map(input -> hint(part, input)).orElse(""),
        now(part, name));
  }

  private String name(Part part, String word) {
    return part.input().isPresent()
        ? words.say(part.label() + "." + word)
        : names.getOrDefault(word, word);
  }

  private static Option option(String value, String label, boolean on) {
    return new Option(value, label, on);
  }

  private String label(Part part) {
    String name = words.say(part.label());
    return part.input()
        .filter(input -> !input.isWord() && !input.unit().equals(NO_UNIT))
        .map(input -> words.say("formulas.input-own", name, input.unit()))
        .orElse(name);
  }

  /** What an input accepts, and what counts where nothing is typed. */
  private String hint(Part part, Input input) {
    String range =
        words.say("techniques.range", Figure.plain(input.least()), Figure.plain(input.most()));
    if (Double.isNaN(input.usual())) {
      return input.isWord() ? "" : range;
    }
    if (!input.isWord()) {
      return words.say("formulas.input-usual", range, Figure.plain(input.usual()));
    }
    String usual = input.options().get((int) input.usual());
    return words.say("formulas.input-else", input.table().isPresent() ? usual : name(part, usual));
  }

  private String fault(String name) {
    return faults.getOrDefault(name, "");
  }

  private List<Row> rows(Part part, String name) {
    List<Row> rows = new ArrayList<>();
    for (String row : form.rows(name)) {
      String at = name + "." + row;
      List<Cell> all = cells(part.parts(), at + ".");
      List<Cell> main = new ArrayList<>();
      List<Cell> more = new ArrayList<>();
      List<String> filled = new ArrayList<>();
      for (int i = 0; i < all.size(); i++) {
        boolean below = part.parts().get(i).place() == Part.Place.MORE;
        (below ? more : main).add(all.get(i));
        if (below && all.get(i).isTold()) {
          filled.add(said(all.get(i)));
        }
      }
      boolean wrong =
          faults.keySet().stream()
              .anyMatch(k -> more.stream().anyMatch(c -> (k + ".").startsWith(c.name() + ".")));
      String title =
          List.of("code", "ingredient", "component", "name", "use", "step", "name.en", "text.en")
              .stream()
              .map(key -> form.get(at + "." + key))
              .filter(said -> !said.isEmpty())
              .findFirst()
              .orElse("");
      rows.add(
          new Row(
              at,
              name,
              row,
              form.get(at + ".was"),
              title,
              fault(at),
              main,
              more,
              String.join(", ", filled),
              wrong));
    }
    return rows;
  }

  private static String said(Cell cell) {
    return cell.value().isEmpty() || cell.value().equals("on") || !cell.rows().isEmpty()
        ? cell.label()
        : cell.label() + " " + cell.value();
  }

  /** What the fields of a kitchen may name. */
  public static List<Suggestions> suggestions(KitchenBook book, TypedForm form, Messages words) {
    List<Suggestions> lists = new ArrayList<>();
    lists.add(
        new Suggestions(
            "ingredients",
            book.ingredients().values().stream()
                .map(one -> new Option(one.code(), words.text(one.name()), false))
                .toList()));
    lists.add(
        new Suggestions(
            "formulas",
            book.formulary().list().stream()
                .map(one -> new Option(one.code(), words.text(one.current().name()), false))
                .toList()));
    lists.add(
        new Suggestions(
            "containers",
            book.containers().values().stream()
                .map(one -> new Option(one.code(), words.text(one.name()), false))
                .toList()));
    lists.add(
        new Suggestions(
            "stations",
            book.stations().values().stream()
                .map(one -> new Option(one.code(), words.text(one.name()), false))
                .toList()));
    lists.add(
        new Suggestions(
            "equipment",
            book.equipment().values().stream()
                .map(one -> new Option(one.code(), words.text(one.name()), false))
                .toList()));
    lists.add(
        new Suggestions(
            "places",
            book.places().stream()
                .map(one -> new Option(one.name(), words.text(one.called()), false))
                .toList()));
    TreeSet<String> cuts = new TreeSet<>();
    book.ingredients().values().forEach(one -> cuts.addAll(one.cuts().keySet()));
    lists.add(new Suggestions("cuts", plain(List.copyOf(cuts))));
    lists.add(
        new Suggestions(
            "steps",
            plain(
                form.rows("steps").stream()
                    .map(row -> form.get("steps." + row + ".code"))
                    .filter(code -> !code.isEmpty())
                    .toList())));
    return lists;
  }

  private static List<Option> plain(List<String> words) {
    return words.stream().map(word -> new Option(word, word, false)).toList();
  }
}
