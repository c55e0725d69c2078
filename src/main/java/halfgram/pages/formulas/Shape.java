package halfgram.pages.formulas;

import halfgram.pages.form.Part;
import halfgram.pages.form.Part.Kind;
import halfgram.technique.bath.SphereBath;
import java.util.List;

/** What the book can say of a formula version, for the form and for telling versions apart. */
final class Shape {

  private static final List<String> WHY = List.of("quality", "safety");

  static final Part NAME = Part.texts("name", "formulas.field.name");

  private static final List<Part> LINE =
      List.of(
          Part.text("ingredient", "formulas.field.ingredient", "ingredients"),
          Part.text("component", "formulas.field.component", "formulas"),
          Part.number("basis", "formulas.field.basis"),
          Part.number("percent", "formulas.field.percent"),
          Part.text("vessel", "formulas.field.vessel", "containers"),
          Part.text("step", "formulas.field.at-step", "steps"),
          Part.number("holdBack", "formulas.field.hold-back"),
          Part.text("cut", "formulas.field.cut", "cuts"),
          Part.text("amount", "formulas.field.amount", "").more(),
          Part.number("from", "formulas.field.from").more(),
          Part.number("to", "formulas.field.to").more(),
          Part.number("measured", "formulas.field.measured").more(),
          Part.texts("stopWhen", "formulas.field.stop-when").more(),
          Part.number("sequestrant", "formulas.field.sequestrant").more(),
          Part.text("technique", "formulas.field.by-technique", "").more(),
          Part.flag("aside", "formulas.field.aside").more(),
          Part.text("output", "formulas.field.output", "").more(),
          Part.number("version", "formulas.field.pin").more(),
          Part.choice("as", "formulas.field.as", List.of("prepared", "purchased")).more(),
          Part.number("tolerance", "formulas.field.tolerance").more(),
          Part.text("carrier", "formulas.field.carrier", "").more(),
          Part.flag("roundToPack", "formulas.field.whole-packs").more(),
          Part.text("code", "formulas.field.line-code", "").more());

  private static final List<Part> WORK =
      List.of(
          Part.text("fixed", "formulas.field.fixed", ""),
          Part.text("perKg", "formulas.field.per-kg", ""),
          Part.text("perPiece", "formulas.field.per-piece", ""));

  private static final List<Part> MACHINE =
      List.of(
          Part.text("use", "formulas.field.machine", "equipment"),
          Part.text("perFill", "formulas.field.per-fill", ""),
          Part.choice("during", "formulas.field.during", List.of("hands", "alone")),
          Part.text("min", "formulas.field.fill-min", ""),
          Part.text("max", "formulas.field.fill-max", ""),
          Part.text("step", "formulas.field.fill-step", ""));

  private static final List<Part> AFTER =
      List.of(
          Part.text("step", "formulas.field.after-step", "steps"),
          Part.text("min", "formulas.field.at-least", ""),
          Part.text("max", "formulas.field.at-most", ""),
          Part.choice("why", "formulas.field.why", WHY),
          Part.text("source", "formulas.field.source", ""));

  private static final List<Part> ATTACHED =
      List.of(
          Part.of(
              "name",
              "formulas.field.technique-name",
              Kind.DECIDES,
              AttachedFields.names(),
              List.of()),
          Part.text("step", "formulas.field.technique-step", "steps"),
          AttachedFields.OF,
          AttachedFields.INPUTS);

  private static final List<Part> GATE =
      List.of(
          Part.choice("kind", "formulas.field.gate-kind", List.of("tasting", "test-piece")),
          Part.choice("by", "formulas.field.gate-by", List.of("cook", "chef")),
          Part.of(
              "checks",
              "formulas.field.gate-checks",
              Kind.TICKS,
              List.of("skin", "centre", "taste", "texture"),
              List.of()));

  /** The text first: where there is nothing else it stands for all of it. */
  private static final List<Part> SENTENCE =
      List.of(
          Part.texts("text", "formulas.field.sentence"),
          Part.text("vessel", "formulas.field.sentence-vessel", "containers"),
          Part.of("lines", "formulas.field.sentence-lines", Kind.CODES, List.of(""), List.of()));

  private static final List<Part> STEP =
      List.of(
          Part.text("code", "formulas.field.step-code", ""),
          Part.texts("name", "formulas.field.step-name").more(),
          Part.of("do", "formulas.field.do", Kind.SENTENCES, List.of(), SENTENCE),
          Part.text("station", "formulas.field.station", "stations"),
          Part.group("handsOn", "formulas.field.hands-on", WORK),
          Part.group("unattended", "formulas.field.unattended", WORK),
          Part.text("unload", "formulas.field.unload", "").more(),
          Part.number("hands", "formulas.field.hands").more(),
          Part.number("yield", "formulas.field.yield").more(),
          Part.number("breakage", "formulas.field.breakage").more(),
          Part.choice("check", "formulas.field.check", List.of("tasting", "test-piece")).more(),
          Part.group("gate", "formulas.field.gate", GATE).more(),
          Part.flag("renewsDate", "formulas.field.renews-date").more(),
          Part.group(
                  "residue",
                  "formulas.field.residue",
                  List.of(
                      Part.text("fixed", "formulas.field.residue-fixed", ""),
                      Part.number("percent", "formulas.field.residue-percent")))
              .more(),
          Part.rows("equipment", "formulas.field.equipment", MACHINE).more(),
          Part.flag("dry", "formulas.field.dry").more(),
          Part.rows("after", "formulas.field.after", AFTER).more(),
          Part.of(
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
          Part.text("code", "formulas.field.output-code", ""),
          Part.texts("name", "formulas.field.output-name"),
          Part.choice("unit", "formulas.field.unit", List.of("mass", "piece")),
          Part.number("share", "formulas.field.share"),
          Part.text("pieceMass", "formulas.field.piece-mass", ""),
          Part.group(
              "hold",
              "formulas.field.hold",
              List.of(
                  Part.text("max", "formulas.field.hold-max", ""),
                  Part.number("days", "formulas.field.hold-days"),
                  Part.text("from", "formulas.field.hold-from", "steps"),
                  Part.choice("why", "formulas.field.why", WHY),
                  Part.text("source", "formulas.field.source", ""),
                  Part.text("place", "formulas.field.place", "places"),
                  Part.text("at", "formulas.field.temperature", ""))),
          Part.group(
              "rest",
              "formulas.field.rest",
              List.of(
                  Part.text("min", "formulas.field.at-least", ""),
                  Part.choice("why", "formulas.field.why", WHY),
                  Part.text("source", "formulas.field.source", ""))),
          Part.text("container", "formulas.field.container", "containers"),
          Part.text("fill", "formulas.field.fill", ""),
          Part.number("density", "formulas.field.density").more(),
          Part.choice("split", "formulas.field.split", List.of("full", "equal")).more(),
          Part.text("thaw", "formulas.field.thaw", "").more());

  private static final List<Part> TECHNIQUE =
      List.of(
          Part.choice("name", "formulas.field.technique-name", List.of(SphereBath.NAME)),
          Part.text("step", "formulas.field.technique-step", "steps"),
          Part.text("bath", "formulas.field.bath", "formulas"),
          Part.text("pan", "formulas.field.pan", "containers"),
          Part.text("alginate", "formulas.field.alginate", "ingredients"),
          Part.text("salt", "formulas.field.salt", "ingredients"),
          Part.text("saltKind", "formulas.field.salt-kind", Part.ROWS_OF + "salts"),
          Part.group("inputs", "formulas.field.inputs", AttachedFields.bath()));

  /** A version; its number, its day and its note are not in it. */
  static final List<Part> VERSION =
      List.of(
          Part.rows("lines", "formulas.field.lines", LINE),
          Part.rows("steps", "formulas.field.steps", STEP),
          Part.rows("outputs", "formulas.field.outputs", OUTPUT),
          Part.text("written", "formulas.field.written", ""),
          Part.choice("when", "formulas.field.when", List.of("evening-before")),
          Part.text("most", "formulas.field.most", ""),
          Part.group("technique", "formulas.field.technique", TECHNIQUE).more(),
          Part.rows("techniques", "formulas.field.techniques", ATTACHED));

  private Shape() {}
}
