package halfgram.pages.formulas;

import halfgram.formula.AllergenTrace;
import halfgram.formula.Formula;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Output;
import halfgram.kitchen.Text;
import halfgram.menu.PlateItem;
import halfgram.prep.KitchenBook;
import halfgram.words.Messages;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * All formulas by what they are for.
 *
 * @param gone what was just taken out; none or one
 * @param out everything that is out
 */
record ListView(
    String find, boolean any, String count, List<Group> groups, List<Out> gone, List<Out> out) {

  /**
   * One that was taken out.
   *
   * @param version the number of its current version, as the form sends it
   */
  record Out(String code, String name, int version) {
    private static Out of(Formula gone, Messages words) {
      FormulaVersion last = gone.current();
      return new Out(gone.code(), words.text(last.name()), last.number());
    }
  }

  /** Formulas of one use. */
  record Group(String title, List<Row> rows) {}

  /** One formula. */
  record Row(
      String code,
      String name,
      String station,
      String version,
      String since,
      String gives,
      String keeps,
      String contains) {}

  static ListView of(KitchenBook book, String find, String out, Messages words) {
    AllergenTrace trace = new AllergenTrace(book.formulary(), book::ingredient);
    Set<String> plated = new TreeSet<>();
    book.dishes()
        .values()
        .forEach(
            dish -> {
              dish.plate().forEach(item -> plated.addAll(codes(item)));
              dish.variants().forEach(v -> v.plate().forEach(i -> plated.addAll(codes(i))));
            });
    Set<String> inside = new TreeSet<>();
    Set<String> baths = new TreeSet<>();
    for (Formula formula : book.formulary().list()) {
      FormulaVersion version = formula.current();
      version
          .lines()
          .forEach(line -> line.item().component().ifPresent(r -> inside.add(r.formula())));
      version.dropping().ifPresent(use -> baths.add(use.bath()));
    }
    Map<String, List<Row>> groups = new LinkedHashMap<>();
    List.of("formulas.on-dishes", "formulas.in-formulas", "formulas.baths", "formulas.alone")
        .forEach(key -> groups.put(key, new ArrayList<>()));
    int shown = 0;
    for (Formula formula : book.formulary().list()) {
      if (!matches(book, formula, find)) {
        continue;
      }
      shown++;
      String code = formula.code();
      String key =
          plated.contains(code)
              ? "formulas.on-dishes"
              : baths.contains(code)
                  ? "formulas.baths"
                  : inside.contains(code) ? "formulas.in-formulas" : "formulas.alone";
      groups.getOrDefault(key, new ArrayList<>()).add(row(book, formula, trace, words));
    }
    List<Group> all =
        groups.entrySet().stream()
            .filter(entry -> !entry.getValue().isEmpty())
            .map(entry -> new Group(words.say(entry.getKey()), entry.getValue()))
            .toList();
    int of = book.formulary().list().size();
    return new ListView(
        find,
        of > 0,
        words.say("formulas.count", shown, of),
        all,
        book.formulary().find(out).filter(Formula::takenOut).stream()
            .map(gone -> Out.of(gone, words))
            .toList(),
        out(book, words));
  }

  private static List<Out> out(KitchenBook book, Messages words) {
    return book.formulary().listAll().stream()
        .filter(Formula::takenOut)
        .map(gone -> Out.of(gone, words))
        .toList();
  }

  private static List<String> codes(PlateItem item) {
    return item.item().component().map(ref -> List.of(ref.formula())).orElse(List.of());
  }

  private static boolean matches(KitchenBook book, Formula formula, String find) {
    String wanted = find.strip().toLowerCase(Locale.ROOT);
    List<String> texts = new ArrayList<>(List.of(formula.code()));
    texts.addAll(formula.current().name().byLanguage().values());
    formula.current().outputs().forEach(o -> texts.addAll(o.name().byLanguage().values()));
    formula
        .current()
        .lines()
        .forEach(
            line ->
                line.item()
                    .ingredient()
                    .ifPresent(i -> texts.addAll(book.ingredient(i).name().byLanguage().values())));
    return texts.stream().anyMatch(text -> text.toLowerCase(Locale.ROOT).contains(wanted));
  }

  private static Row row(KitchenBook book, Formula formula, AllergenTrace trace, Messages words) {
    FormulaVersion version = formula.current();
    var station = book.stations().get(version.steps().get(0).station());
    return new Row(
        formula.code(),
        words.text(version.name()),
        station == null ? "" : words.text(station.name()),
        String.valueOf(version.number()),
        version.since().map(day -> since(day, words)).orElse(""),
        version.outputs().stream()
            .map(output -> words.text(output.name()))
            .collect(Collectors.joining(", ")),
        version.outputs().stream()
            .map(output -> hold(output, words))
            .distinct()
            .collect(Collectors.joining("; ")),
        contains(book, trace.of(version).allergenCodes(), words));
  }

  /** "Tue 1 Sep 2026". */
  static String since(LocalDate day, Messages words) {
    return words.shortDate(day) + " " + day.getYear();
  }

  static String version(FormulaVersion version, Messages words) {
    return version.since().isPresent()
        ? words.say("formulas.version-since", version.number(), version.since().get())
        : words.say("formulas.version", version.number());
  }

  static String contains(KitchenBook book, Set<String> allergens, Messages words) {
    List<String> names = new ArrayList<>();
    for (String code : allergens) {
      Text name = book.allergens().get(code);
      names.add((name == null ? code : words.text(name)).toUpperCase(Locale.ROOT));
    }
    return names.isEmpty() ? "" : words.say("sheet.contains", String.join(", ", names));
  }

  /** "2 d, walk-in, 4 °C, SAFETY". */
  static String hold(Output output, Messages words) {
    Output.Hold hold = output.hold();
    StringBuilder said =
        new StringBuilder(
            hold.days().isPresent()
                ? words.say("formulas.days", hold.days().getAsInt())
                : words.duration(hold.max()));
    hold.from()
        .map(step -> words.say("formulas.from-step", step))
        .or(
            () ->
                Optional.of(words.say("formulas.from-rest"))
                    .filter(any -> !output.rest().min().isZero()))
        .ifPresent(said::append);
    if (!hold.place().isEmpty()) {
      said.append(words.say("sheet.place", hold.place()));
    }
    hold.at().ifPresent(at -> said.append(words.say("sheet.place", at)));
    hold.lastDays()
        .forEach(last -> said.append(words.say("formulas.last-day", last.days(), last.from())));
    if (hold.reason().isSafety()) {
      said.append(words.say("sheet.safety"));
    }
    return said.toString();
  }
}
