package halfgram.pages.formulas;

import halfgram.technique.Technique;
import halfgram.technique.Techniques;
import halfgram.technique.bath.BathInputs;
import halfgram.technique.bath.SphereBath;
import java.util.List;

/** What the book can say of a formula version, for the form and for telling versions apart. */
final class Shape {

  /** How a value is entered. */
  enum Kind {
    TEXT,
    NUMBER,
    FLAG,
    CHOICE,
    TEXTS,
    TICKS,
    PAIRS,
    GROUP,
    ROWS,
    /** Rows, or their first part alone where there is one row with nothing else. */
    SENTENCES,
    /** Several codes in one field. */
    CODES
  }

  /** Whether a field stands in sight or below "more". */
  enum Place {
    MAIN,
    MORE
  }

  /**
   * One key of the book.
   *
   * @param label message key of its name
   * @param known words to choose from, or the name of a list of suggestions first
   * @param parts of a group or a row
   */
  record Part(
      String key, String label, Kind kind, Place place, List<String> known, List<Part> parts) {
    Part more() {
      return new Part(key, label, kind, Place.MORE, known, parts);
    }
  }

  /** Languages a text has fields for. */
  static final List<String> LANGUAGES = List.of("en", "es", "fr");

  private static final List<String> WHY = List.of("quality", "safety");

  static final Part NAME = texts("name", "formulas.field.name");

  private static final List<Part> LINE =
      List.of(
          text("ingredient", "formulas.field.ingredient", "ingredients"),
          text("component", "formulas.field.component", "formulas"),
          number("basis", "formulas.field.basis"),
          number("percent", "formulas.field.percent"),
          text("vessel", "formulas.field.vessel", "containers"),
          text("step", "formulas.field.at-step", "steps"),
          number("holdBack", "formulas.field.hold-back"),
          text("cut", "formulas.field.cut", "cuts"),
          text("amount", "formulas.field.amount", "").more(),
          number("from", "formulas.field.from").more(),
          number("to", "formulas.field.to").more(),
          number("measured", "formulas.field.measured").more(),
          texts("stopWhen", "formulas.field.stop-when").more(),
          number("sequestrant", "formulas.field.sequestrant").more(),
          text("technique", "formulas.field.by-technique", "").more(),
          flag("aside", "formulas.field.aside").more(),
          text("output", "formulas.field.output", "").more(),
          number("version", "formulas.field.pin").more(),
          choice("as", "formulas.field.as", List.of("prepared", "purchased")).more(),
          number("tolerance", "formulas.field.tolerance").more(),
          text("carrier", "formulas.field.carrier", "").more(),
          flag("roundToPack", "formulas.field.whole-packs").more(),
          text("code", "formulas.field.line-code", "").more());

  private static final List<Part> WORK =
      List.of(
          text("fixed", "formulas.field.fixed", ""),
          text("perKg", "formulas.field.per-kg", ""),
          text("perPiece", "formulas.field.per-piece", ""));

  private static final List<Part> MACHINE =
      List.of(
          text("use", "formulas.field.machine", "equipment"),
          text("perFill", "formulas.field.per-fill", ""),
          choice("during", "formulas.field.during", List.of("hands", "alone")),
          text("min", "formulas.field.fill-min", ""),
          text("max", "formulas.field.fill-max", ""),
          text("step", "formulas.field.fill-step", ""));

  private static final List<Part> AFTER =
      List.of(
          text("step", "formulas.field.after-step", "steps"),
          text("min", "formulas.field.at-least", ""),
          text("max", "formulas.field.at-most", ""),
          choice("why", "formulas.field.why", WHY),
          text("source", "formulas.field.source", ""));

  private static final List<Part> ATTACHED =
      List.of(
          choice("name", "formulas.field.technique-name", names()),
          text("step", "formulas.field.technique-step", "steps"),
          part("of", "formulas.field.technique-parts", Kind.PAIRS, List.of(), List.of()),
          part("inputs", "formulas.field.technique-inputs", Kind.PAIRS, List.of(), List.of()));

  private static final List<Part> GATE =
      List.of(
          choice("kind", "formulas.field.gate-kind", List.of("tasting", "test-piece")),
          choice("by", "formulas.field.gate-by", List.of("cook", "chef")),
          part(
              "checks",
              "formulas.field.gate-checks",
              Kind.TICKS,
              List.of("skin", "centre", "taste", "texture"),
              List.of()));

  /** The text first: where there is nothing else it stands for all of it. */
  private static final List<Part> SENTENCE =
      List.of(
          texts("text", "formulas.field.sentence"),
          text("vessel", "formulas.field.sentence-vessel", "containers"),
          part("lines", "formulas.field.sentence-lines", Kind.CODES, List.of(""), List.of()));

  private static final List<Part> STEP =
      List.of(
          text("code", "formulas.field.step-code", ""),
          texts("name", "formulas.field.step-name").more(),
          part("do", "formulas.field.do", Kind.SENTENCES, List.of(), SENTENCE),
          text("station", "formulas.field.station", "stations"),
          group("handsOn", "formulas.field.hands-on", WORK),
          group("unattended", "formulas.field.unattended", WORK),
          text("unload", "formulas.field.unload", "").more(),
          number("hands", "formulas.field.hands").more(),
          number("yield", "formulas.field.yield").more(),
          number("breakage", "formulas.field.breakage").more(),
          choice("check", "formulas.field.check", List.of("tasting", "test-piece")).more(),
          group("gate", "formulas.field.gate", GATE).more(),
          flag("renewsDate", "formulas.field.renews-date").more(),
          group(
                  "residue",
                  "formulas.field.residue",
                  List.of(
                      text("fixed", "formulas.field.residue-fixed", ""),
                      number("percent", "formulas.field.residue-percent")))
              .more(),
          rows("equipment", "formulas.field.equipment", MACHINE).more(),
          flag("dry", "formulas.field.dry").more(),
          rows("after", "formulas.field.after", AFTER).more(),
          part(
                  "cautions",
                  "formulas.field.cautions",
                  Kind.TICKS,
                  List.of(
                      "allergen-contact",
                      "blade",
                      "boiling-pot",
                      "cryogen",
                      "herb-in-oil",
                      "hot-oil",
                      "raw-dairy",
                      "raw-egg",
                      "raw-fish",
                      "regulated-cure",
                      "strong-salt"),
                  List.of())
              .more());

  private static final List<Part> OUTPUT =
      List.of(
          text("code", "formulas.field.output-code", ""),
          texts("name", "formulas.field.output-name"),
          choice("unit", "formulas.field.unit", List.of("mass", "piece")),
          number("share", "formulas.field.share"),
          text("pieceMass", "formulas.field.piece-mass", ""),
          group(
              "hold",
              "formulas.field.hold",
              List.of(
                  text("max", "formulas.field.hold-max", ""),
                  number("days", "formulas.field.hold-days"),
                  text("from", "formulas.field.hold-from", "steps"),
                  choice("why", "formulas.field.why", WHY),
                  text("source", "formulas.field.source", ""),
                  text("place", "formulas.field.place", ""),
                  text("at", "formulas.field.temperature", ""))),
          group(
              "rest",
              "formulas.field.rest",
              List.of(
                  text("min", "formulas.field.at-least", ""),
                  choice("why", "formulas.field.why", WHY),
                  text("source", "formulas.field.source", ""))),
          text("container", "formulas.field.container", "containers"),
          text("fill", "formulas.field.fill", ""),
          number("density", "formulas.field.density").more(),
          choice("split", "formulas.field.split", List.of("full", "equal")).more(),
          text("thaw", "formulas.field.thaw", "").more());

  private static final List<Part> TECHNIQUE =
      List.of(
          choice("name", "formulas.field.technique-name", List.of("sphere-bath")),
          text("step", "formulas.field.technique-step", "steps"),
          text("bath", "formulas.field.bath", "formulas"),
          text("pan", "formulas.field.pan", "containers"),
          text("alginate", "formulas.field.alginate", "ingredients"),
          text("salt", "formulas.field.salt", "ingredients"),
          text("saltKind", "formulas.field.salt-kind", ""),
          group("inputs", "formulas.field.inputs", inputs()));

  /** A version; its number, its day and its note are not in it. */
  static final List<Part> VERSION =
      List.of(
          rows("lines", "formulas.field.lines", LINE),
          rows("steps", "formulas.field.steps", STEP),
          rows("outputs", "formulas.field.outputs", OUTPUT),
          text("written", "formulas.field.written", ""),
          choice("when", "formulas.field.when", List.of("evening-before")),
          text("most", "formulas.field.most", ""),
          group("technique", "formulas.field.technique", TECHNIQUE),
          rows("techniques", "formulas.field.techniques", ATTACHED));

  private Shape() {}

  private static List<Part> inputs() {
    return BathInputs.OWN.stream().map(input -> number(input.name(), "")).toList();
  }

  /** Techniques that a step can have; the bath has fields of its own. */
  private static List<String> names() {
    return Techniques.list().stream()
        .map(Technique::name)
        .filter(name -> !name.equals(SphereBath.NAME))
        .toList();
  }

  private static Part part(
      String key, String label, Kind kind, List<String> known, List<Part> parts) {
    return new Part(key, label, kind, Place.MAIN, known, parts);
  }

  private static Part text(String key, String label, String suggestions) {
    return part(key, label, Kind.TEXT, List.of(suggestions), List.of());
  }

  private static Part number(String key, String label) {
    return part(key, label, Kind.NUMBER, List.of(""), List.of());
  }

  private static Part flag(String key, String label) {
    return part(key, label, Kind.FLAG, List.of(), List.of());
  }

  private static Part texts(String key, String label) {
    return part(key, label, Kind.TEXTS, LANGUAGES, List.of());
  }

  private static Part choice(String key, String label, List<String> words) {
    return part(key, label, Kind.CHOICE, words, List.of());
  }

  private static Part group(String key, String label, List<Part> parts) {
    return part(key, label, Kind.GROUP, List.of(), parts);
  }

  private static Part rows(String key, String label, List<Part> parts) {
    return part(key, label, Kind.ROWS, List.of(), parts);
  }
}
