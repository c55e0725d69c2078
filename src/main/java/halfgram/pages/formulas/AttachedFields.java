package halfgram.pages.formulas;

import halfgram.pages.form.Cells.Option;
import halfgram.pages.form.Cells.Suggestions;
import halfgram.pages.form.Part;
import halfgram.pages.form.TypedForm;
import halfgram.prep.KitchenBook;
import halfgram.technique.Input;
import halfgram.technique.Technique;
import halfgram.technique.Techniques;
import halfgram.technique.bath.BathInputs;
import halfgram.technique.bath.SphereBath;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** The fields of a technique in a formula: of which lines, and what it is told beside them. */
final class AttachedFields {
  private static final String LINES = "lines";

  /** What of the formula it is about, by technique. */
  static final Part OF =
      Part.chosen(
          "of",
          "formulas.field.technique-parts",
          "name",
          attached().map(one -> Part.group(one.name(), "", parts(one))).toList());

  /** What it is told, by technique. */
  static final Part INPUTS =
      Part.chosen(
          "inputs",
          "formulas.field.technique-inputs",
          "name",
          attached().map(one -> Part.group(one.name(), "", inputs(one))).toList());

  private AttachedFields() {}

  /** Techniques that a step can have; the bath has fields of its own. */
  private static Stream<Technique> attached() {
    return Techniques.list().stream().filter(one -> !one.name().equals(SphereBath.NAME));
  }

  static List<String> names() {
    return attached().map(Technique::name).toList();
  }

  /** What a sphere bath is told. */
  static List<Part> bath() {
    return BathInputs.OWN.stream().map(input -> Part.input(input, SphereBath.NAME)).toList();
  }

  private static List<Part> parts(Technique technique) {
    return technique.parts().stream()
        .map(part -> Part.text(part.name(), label(technique, part.name()), LINES))
        .toList();
  }

  /** A part is called what its mass is called among the inputs, where that is one. */
  private static String label(Technique technique, String part) {
    String key = "technique." + technique.name();
    return technique.inputs().stream()
        .filter(input -> input.part().equals(part))
        .findFirst()
        .map(mass -> key + ".in." + mass.name())
        .orElse(key + ".of." + part);
  }

  /** What is not known from the lines; seldom needed is what has a default. */
  private static List<Part> inputs(Technique technique) {
    return technique.inputs().stream()
        .filter(AttachedFields::isTold)
        .map(
            input -> {
              Part part = Part.input(input, technique.name());
              boolean main = input.isNeeded() || technique.example().containsKey(input.name());
              return main ? part : part.more();
            })
        .toList();
  }

  private static boolean isTold(Input input) {
    return switch (input.origin()) {
      case LINE, MIX, PLAN -> false;
      case FORMULA, CALCIUM, MILK, KITCHEN, TUB, READING -> true;
    };
  }

  /** What the words of its fields are called. */
  static Map<String, String> called(Messages words) {
    Map<String, String> names = new LinkedHashMap<>();
    Techniques.list().forEach(one -> names.put(one.name(), words.say("technique." + one.name())));
    return names;
  }

  /** The lines of a formula as typed, and the rows of the tables that its techniques ask for. */
  static List<Suggestions> lists(KitchenBook book, TypedForm form, Messages words) {
    List<Suggestions> lists = new ArrayList<>();
    lists.add(new Suggestions(LINES, lines(book, form, words)));
    Stream<String> inputs =
        Techniques.list().stream()
            .flatMap(one -> one.inputs().stream())
            .flatMap(input -> input.table().stream());
    inputs
        .distinct()
        .forEach(table -> lists.add(new Suggestions(Part.ROWS_OF + table, rows(book, table))));
    return lists;
  }

  private static List<Option> lines(KitchenBook book, TypedForm form, Messages words) {
    Map<String, String> codes = new LinkedHashMap<>();
    Map<String, String> names = new LinkedHashMap<>();
    book.formulary()
        .list()
        .forEach(one -> know(codes, names, one.code(), words.text(one.current().name())));
    book.ingredients()
        .values()
        .forEach(one -> know(codes, names, one.code(), words.text(one.name())));
    List<Option> lines = new ArrayList<>();
    for (String row : form.rows(LINES)) {
      String at = LINES + "." + row + ".";
      String item = form.get(at + "ingredient").strip();
      String typed = item.isEmpty() ? form.get(at + "component").strip() : item;
      String code = codes.getOrDefault(TypedForm.called(typed), typed);
      String own = form.get(at + "code").strip();
      String name = names.getOrDefault(code, code);
      if (!name.isEmpty() || !own.isEmpty()) {
        lines.add(new Option(own.isEmpty() ? code : own, name, false));
      }
    }
    return lines;
  }

  private static void know(
      Map<String, String> codes, Map<String, String> names, String code, String name) {
    codes.put(TypedForm.called(name), code);
    names.put(code, name);
  }

  private static List<Option> rows(KitchenBook book, String table) {
    return book.tables().table(table).values().stream()
        .map(row -> new Option(row.code(), row.find("name").orElse(row.code()), false))
        .toList();
  }
}
