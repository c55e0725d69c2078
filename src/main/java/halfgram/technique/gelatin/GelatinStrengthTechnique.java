package halfgram.technique.gelatin;

import halfgram.measure.Message;
import halfgram.measure.Standing;
import halfgram.technique.Addition;
import halfgram.technique.Curve;
import halfgram.technique.Input;
import halfgram.technique.Input.Origin;
import halfgram.technique.Output;
import halfgram.technique.Result;
import halfgram.technique.Tables;
import halfgram.technique.Tables.Row;
import halfgram.technique.Technique;
import halfgram.technique.Values;
import halfgram.technique.Working;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Gelatin of the grade there is in place of the grade of the recipe.
 *
 * <p>Rules. L, leaf for leaf: the mass changes as the strengths do, m₂ = m₁ × B₁/B₂, because
 * strength times grams of a sheet is about the same for all grades. Q, equal firmness: a gel's
 * strength goes with the square of its concentration, m₂ = m₁ × √(B₁/B₂). Both are worked out; the
 * one chosen is weighed.
 *
 * <p>Example: 10 g of 160 bloom are 6.667 g of 240 bloom by L and 8.165 g by Q. Source: tables of
 * sheet gelatin (L); a published table of factors that Q reproduces: 60 to 240 bloom 2, 160 to 240
 * bloom 1.22.
 */
public final class GelatinStrengthTechnique implements Technique {
  private static final String TABLE = "gelatins";
  private static final String SHEET = "grams_per_sheet";
  private static final double OF_THE_GRADE = 0;
  private static final String AS_THE_GRADE = "the strength of the grade; 0 means the grade's own";

  private static final List<Input> INPUTS =
      List.of(
          Input.row("recipeGrade", TABLE),
          Input.row("ownGrade", TABLE),
          Input.guess("mass", "g", 0, 1_000_000, 0),
          Input.guess("sheets", "1", 0, 100_000, 0),
          bloom("recipeBloom"),
          bloom("ownBloom"),
          Input.choice("rule", "leaf-for-leaf", "equal-firmness"));

  private static final List<Output> OUTPUTS =
      List.of(
          new Output("leafForLeaf", "g"),
          new Output("equalFirmness", "g"),
          new Output("gelatin", "g"),
          new Output("ratioLinear", "1"),
          new Output("ratioRoot", "1"),
          new Output("difference", "%"),
          new Output("recipeSheets", "1"),
          new Output("sheetsLeafForLeaf", "1"),
          new Output("sheetsEqualFirmness", "1"),
          new Output("wholeSheets", "1"),
          new Output("wholeSheetsOff", "%"),
          new Output("recipeProduct", "1"),
          new Output("ownProduct", "1"));

  private static Input bloom(String name) {
    return Input.number(name, "1", 0, 400, OF_THE_GRADE, Standing.PUBLISHED, AS_THE_GRADE)
        .from(Origin.TUB);
  }

  @Override
  public String name() {
    return "gelatin-strength";
  }

  @Override
  public List<Input> inputs() {
    return INPUTS;
  }

  @Override
  public List<Output> outputs() {
    return OUTPUTS;
  }

  @Override
  public Result work(Values values, Tables tables) {
    Working working = new Working(this);
    Row recipe = tables.row(TABLE, values.word("recipeGrade"));
    Row own = tables.row(TABLE, values.word("ownGrade"));
    double from = bloom(values, "recipeBloom", recipe);
    double to = bloom(values, "ownBloom", own);
    if (Double.isNaN(from) || Double.isNaN(to)) {
      String name = Double.isNaN(from) ? recipe.text("name") : own.text("name");
      return working.stop("technique.gelatin-strength.stop.bloom", name).result();
    }
    double mass = mass(values, recipe);
    if (Double.isNaN(mass)) {
      String name = recipe.text("name");
      return working.stop("technique.gelatin-strength.stop.no-sheets", name).result();
    }
    if (mass == 0 || (values.number("mass") > 0 && values.number("sheets") > 0)) {
      return working.stop("technique.gelatin-strength.stop.mass-or-sheets").result();
    }
    double linear =
        working.figure(
            "leafForLeaf",
            linear(mass, from, to),
            "technique.gelatin-strength.why.leafForLeaf",
            mass,
            from,
            to);
    double root =
        working.figure(
            "equalFirmness",
            root(mass, from, to),
            "technique.gelatin-strength.why.equalFirmness",
            mass,
            from,
            to);
    boolean byLeaf = values.is("rule", "leaf-for-leaf");
    double chosen = byLeaf ? linear : root;
    working.figure(
        "gelatin",
        chosen,
        byLeaf
            ? "technique.gelatin-strength.why.byLeaf"
            : "technique.gelatin-strength.why.byFirmness");
    ratios(working, from, to);
    if (recipe.has(SHEET)) {
      recipeSheets(working, recipe.number(SHEET), mass, from);
    }
    if (own.has(SHEET)) {
      ownSheets(working, own.number(SHEET), chosen, linear, root);
      String why = "technique.gelatin-strength.why.product";
      working.figure("ownProduct", to * own.number(SHEET), why, to, own.number(SHEET));
    }
    strange(working, values, "recipeBloom", recipe);
    strange(working, values, "ownBloom", own);
    if (from != to) {
      working.warn("technique.gelatin-strength.warn.two-rules", linear, root);
    }
    return working.source(recipe.source()).source("published table of factors").result();
  }

  /** What the recipe asks for, in grams or counted in its own sheets. */
  private static double mass(Values values, Row recipe) {
    double sheets = values.number("sheets");
    return sheets > 0 ? sheets * recipe.number(SHEET) : values.number("mass");
  }

  /** L: in proportion to the strengths. */
  static double linear(double mass, double from, double to) {
    return mass * from / to;
  }

  /** Q: by the root of the strengths. */
  static double root(double mass, double from, double to) {
    return mass * StrictMath.sqrt(from / to);
  }

  private static double bloom(Values values, String name, Row row) {
    double read = values.number(name);
    return read == OF_THE_GRADE ? row.number("bloom") : read;
  }

  private static void ratios(Working working, double from, double to) {
    working.figure(
        "ratioLinear", to / from, "technique.gelatin-strength.why.ratioLinear", to, from);
    working.figure(
        "ratioRoot",
        StrictMath.sqrt(to / from),
        "technique.gelatin-strength.why.ratioRoot",
        to,
        from);
    double difference = 100 * (StrictMath.sqrt(from / to) - 1);
    working.figure("difference", difference, "technique.gelatin-strength.why.difference", from, to);
  }

  /** Strength times grams of a sheet; where it is alike, a sheet replaces a sheet. */
  private static void recipeSheets(Working working, double theirs, double mass, double from) {
    working.figure(
        "recipeSheets", mass / theirs, "technique.gelatin-strength.why.sheets", mass, theirs);
    String why = "technique.gelatin-strength.why.product";
    working.figure("recipeProduct", from * theirs, why, from, theirs);
  }

  private static void ownSheets(
      Working working, double ours, double chosen, double linear, double root) {
    String why = "technique.gelatin-strength.why.sheets";
    working.figure("sheetsLeafForLeaf", linear / ours, why, linear, ours);
    working.figure("sheetsEqualFirmness", root / ours, why, root, ours);
    double whole = StrictMath.max(1, StrictMath.floor(chosen / ours + 0.5));
    working.figure(
        "wholeSheets", whole, "technique.gelatin-strength.why.wholeSheets", chosen, ours);
    double off = 100 * (whole * ours / chosen - 1);
    working.figure(
        "wholeSheetsOff", off, "technique.gelatin-strength.why.wholeSheetsOff", whole * ours);
  }

  /** A strength read off the packet that its grade does not have. */
  private static void strange(Working working, Values values, String name, Row row) {
    double read = values.number(name);
    if (read != OF_THE_GRADE
        && (read < row.number("bloom_low") || read > row.number("bloom_high"))) {
      working.warn(
          "technique.gelatin-strength.warn.other-grade",
          read,
          row.text("name"),
          row.number("bloom_low"),
          row.number("bloom_high"));
    }
  }

  @Override
  public List<Addition> additions(Values values, Result result) {
    if (result.find("gelatin").isEmpty()) {
      return List.of();
    }
    double grams = result.number("gelatin");
    return List.of(
        Addition.Weighed.of("gelatin", grams),
        new Addition.Reminder(
            Message.of(
                "technique.gelatin-strength.say.weigh",
                values.word("ownGrade"),
                values.word("recipeGrade"))));
  }

  @Override
  public Map<String, String> example() {
    return Map.of("recipeGrade", "silver", "ownGrade", "platinum", "mass", "10 g");
  }

  @Override
  public Optional<Curve> curve(Values values, Tables tables) {
    Row recipe = tables.row(TABLE, values.word("recipeGrade"));
    double mass = mass(values, recipe);
    double from = bloom(values, "recipeBloom", recipe);
    double here = bloom(values, "ownBloom", tables.row(TABLE, values.word("ownGrade")));
    boolean byLeaf = values.is("rule", "leaf-for-leaf");
    if (Double.isNaN(mass * from * here)) {
      return Optional.empty();
    }
    return Optional.of(
        Curve.of(
            input("ownBloom"),
            output("gelatin"),
            60,
            300,
            here,
            bloom -> byLeaf ? linear(mass, from, bloom) : root(mass, from, bloom)));
  }
}
