package halfgram.book;

import halfgram.formula.ComponentRef;
import halfgram.formula.Dose;
import halfgram.formula.Formula;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Formulary;
import halfgram.formula.Item;
import halfgram.formula.Line;
import halfgram.formula.MassBalance;
import halfgram.formula.Output;
import halfgram.formula.Step;
import halfgram.ingredient.Ingredient;
import halfgram.ingredient.Stated;
import halfgram.kitchen.Text;
import halfgram.measure.Amount;
import halfgram.measure.Exact;
import halfgram.measure.Mass;
import halfgram.measure.Message;
import halfgram.measure.Quantity;
import halfgram.measure.Ratio;
import halfgram.measure.Rounding;
import halfgram.technique.bath.Hardness;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;

/** Reads formulas: versions and their lines; steps and outputs see {@link StepReader}. */
final class FormulaReader {
  private static final String SHARE_MOST = "100000";

  private final Reading reading;
  private final Map<String, Ingredient> ingredients;
  private final Optional<BigDecimal> hardness;
  private final StepReader steps;
  private final TechniqueReader techniques;
  private final List<Consumer<Formulary>> componentLines = new ArrayList<>();

  FormulaReader(
      Reading reading,
      Map<String, Ingredient> ingredients,
      Optional<BigDecimal> hardness,
      StepReader steps,
      TechniqueReader techniques) {
    this.reading = reading;
    this.ingredients = ingredients;
    this.hardness = hardness;
    this.steps = steps;
    this.techniques = techniques;
  }

  Formula formula(Node node) {
    String code = reading.declare(Reading.Kind.FORMULA, node);
    Text name = node.text("name");
    List<FormulaVersion> versions = node.some("versions", version -> version(version, code, name));
    Set<Integer> numbers = new HashSet<>();
    for (int i = 0; i < versions.size(); i++) {
      if (!numbers.add(versions.get(i).number())) {
        node.problem(
            "versions[" + i + "].version",
            versions.get(i).number(),
            "problem.duplicate",
            "version");
      }
    }
    Formula formula = new Formula(code, versions, node.flag("takenOut"));
    if (formula.takenOut()) {
      reading.takeOut(code);
    }
    for (int i = 0; i < versions.size() && !formula.takenOut(); i++) {
      if (versions.get(i).number() == formula.current().number()) {
        reading.uses(node.path() + ".versions[" + i + "]");
      }
    }
    return formula;
  }

  /** Checks what could not be while formulas were still being read: that components are there. */
  void check(Formulary formulary) {
    componentLines.forEach(check -> check.accept(formulary));
    techniques.check(formulary);
  }

  private FormulaVersion version(Node node, String code, Text name) {
    int number = node.integer("version", 1, 100_000);
    Optional<Mass> written = node.findMass("written");
    List<Step> read = node.some("steps", steps::step);
    Set<String> codes = new HashSet<>();
    for (int i = 0; i < read.size(); i++) {
      if (!codes.add(read.get(i).code())) {
        node.problem("steps[" + i + "].code", read.get(i).code(), "problem.duplicate", "step");
      }
    }
    read = steps.inOrder(node, read);
    String first = read.isEmpty() ? "" : read.get(0).code();
    Set<String> lineCodes = new HashSet<>();
    List<Line> lines = node.some("lines", line -> line(line, first, codes, written, lineCodes));
    carriers(node, lines, lineCodes);
    MethodReader.check(node, read, lines);
    List<Output> outputs = node.some("outputs", steps::output);
    checkOutputs(node, outputs);
    checkHolds(node, outputs, codes);
    checkBasis(node, lines);
    FormulaVersion version =
        new FormulaVersion(
            code,
            name,
            number,
            node.findDate("since"),
            node.findWord("note").orElse(""),
            written,
            lines,
            read,
            outputs,
            evening(node),
            most(node, outputs),
            List.of());
    checkYield(node, version);
    return techniques.apply(node, version);
  }

  private static boolean evening(Node node) {
    Optional<String> when =
        node.find(
            "when",
            word -> word.equals("evening-before") ? Optional.of(word) : Optional.empty(),
            "accept.when");
    return when.isPresent();
  }

  private static Optional<Amount> most(Node node, List<Output> outputs) {
    Optional<Quantity> typed = node.findQuantity("most");
    Optional<Amount> most = typed.flatMap(Quantity::canonical);
    boolean fits =
        most.isEmpty()
            || (!outputs.isEmpty()
                && most.get().dimension() == outputs.get(0).unit()
                && most.get().isPositive());
    boolean household = typed.isPresent() && most.isEmpty();
    if (!fits || household) {
      node.refuse("most", "problem.accepted", Message.of("accept.output-amount"));
      return Optional.empty();
    }
    return most;
  }

  private static void checkOutputs(Node node, List<Output> outputs) {
    Set<String> codes = new HashSet<>();
    Ratio sum = Ratio.ZERO;
    for (int i = 0; i < outputs.size(); i++) {
      if (!codes.add(outputs.get(i).code())) {
        node.problem(
            "outputs[" + i + "].code", outputs.get(i).code(), "problem.duplicate", "output");
      }
      sum = sum.plus(outputs.get(i).share());
    }
    if (sum.compareTo(Ratio.ONE) > 0) {
      node.problem("outputs", Exact.plain(sum.percent(), 6) + " %", "problem.shares-over");
    }
  }

  private static void checkHolds(Node node, List<Output> outputs, Set<String> steps) {
    for (int i = 0; i < outputs.size(); i++) {
      Optional<String> from = outputs.get(i).hold().from();
      if (from.isPresent() && !steps.contains(from.get())) {
        node.problem(
            "outputs[" + i + "].hold.from",
            from.get(),
            "problem.no-such",
            "step",
            String.join(", ", new java.util.TreeSet<>(steps)));
      }
    }
  }

  private static void checkBasis(Node node, List<Line> lines) {
    Ratio basis =
        lines.stream()
            .filter(line -> line.dose().isBasis())
            .map(line -> line.dose().counted())
            .reduce(Ratio.ZERO, Ratio::plus);
    if (!lines.isEmpty() && basis.compareTo(Ratio.ONE) != 0) {
      node.problem("lines", Exact.plain(basis.percent(), 6) + " %", "problem.basis");
    }
  }

  private static void checkYield(Node node, FormulaVersion version) {
    if (!version.steps().isEmpty()
        && !version.lines().isEmpty()
        && !MassBalance.of(version).yields()) {
      node.problem("steps", "0 g", "problem.no-yield", version.formula());
    }
  }

  private static void carriers(Node node, List<Line> lines, Set<String> codes) {
    for (int i = 0; i < lines.size(); i++) {
      Optional<String> carrier = lines.get(i).carrier();
      if (carrier.isPresent() && !codes.contains(carrier.get())) {
        node.problem(
            "lines[" + i + "].carrier",
            carrier.get(),
            "problem.no-such",
            "line",
            String.join(", ", new java.util.TreeSet<>(codes)));
      }
    }
  }

  private Line line(
      Node node, String first, Set<String> steps, Optional<Mass> written, Set<String> codes) {
    Optional<String> cut = node.findWord("cut");
    Item item = item(node, cut);
    Optional<Ingredient> ingredient =
        item.ingredient().flatMap(code -> Optional.ofNullable(ingredients.get(code)));
    String code = node.findCode("code").orElse(item.code());
    if (!codes.add(code)) {
      node.problem("code", code, "problem.duplicate-line");
    }
    Optional<String> vessel = reading.findCode(Reading.Kind.CONTAINER, node, "vessel");
    Optional<String> step = node.findWord("step");
    if (step.isPresent() && !steps.contains(step.get())) {
      node.problem(
          "step",
          step.get(),
          "problem.no-such",
          "step",
          String.join(", ", new java.util.TreeSet<>(steps)));
      step = Optional.empty();
    }
    return new Line(
        code,
        item,
        trim(node, ingredient, cut),
        node.choice("as", Line.Weighed.class, Line.Weighed.PREPARED),
        dose(node, ingredient, written),
        node.percent("holdBack", Ratio.ZERO, "0", "100"),
        vessel,
        step.orElse(first),
        node.findPercent("tolerance", "0.01", "50"),
        node.findCode("carrier"),
        node.flag("roundToPack"),
        aside(node));
  }

  private static boolean aside(Node node) {
    boolean aside = node.flag("aside");
    if (aside && node.has("basis")) {
      node.problem("aside", "true", "problem.aside-basis");
    }
    return aside;
  }

  private Item item(Node node, Optional<String> cut) {
    boolean isIngredient = node.has("ingredient");
    if (isIngredient == node.has("component")) {
      node.problem("", "", "problem.one-item");
      return new Item.OfIngredient("", cut);
    }
    if (isIngredient) {
      String code = reading.code(Reading.Kind.INGREDIENT, node, "ingredient");
      return new Item.OfIngredient(code, cut);
    }
    ComponentRef ref = ComponentReader.ref(reading, node);
    componentLines.add(formulary -> ComponentReader.check(formulary, node, ref));
    return new Item.OfComponent(ref);
  }

  private static Ratio trim(Node node, Optional<Ingredient> ingredient, Optional<String> cut) {
    if (cut.isEmpty() || ingredient.isEmpty()) {
      if (cut.isPresent() && node.has("component")) {
        node.problem("cut", cut.get(), "problem.cut-of-component");
      }
      return Ratio.ONE;
    }
    Optional<Stated> known = ingredient.get().findCut(cut.get());
    if (known.isEmpty()) {
      node.problem(
          "cut",
          cut.get(),
          "problem.no-such",
          "cut",
          Reading.near(ingredient.get().cuts().keySet(), cut.get()));
    }
    return known.map(Stated::value).orElse(Ratio.ONE);
  }

  private Dose dose(Node node, Optional<Ingredient> ingredient, Optional<Mass> written) {
    long ways =
        List.of("basis", "percent", "amount", "from", "sequestrant", "technique").stream()
            .filter(node::has)
            .count();
    if (ways != 1) {
      node.problem("", "", "problem.one-dose");
      node.has("to");
      node.has("measured");
      node.has("stopWhen");
      return Dose.percent(Ratio.ZERO);
    }
    if (node.has("basis")) {
      return Dose.basis(node.percent("basis", Ratio.ZERO, "0.000001", "100"));
    }
    if (node.has("percent")) {
      return Dose.percent(node.percent("percent", Ratio.ZERO, "0.000001", SHARE_MOST));
    }
    if (node.has("amount")) {
      return absolute(node, ingredient, written);
    }
    if (node.has("sequestrant")) {
      if (hardness.isEmpty()) {
        node.problem("sequestrant", "", "problem.no-hardness");
      }
      double ppm = hardness.map(BigDecimal::doubleValue).orElse(0.0);
      double perLitre = new Hardness(ppm).citratePerLitre();
      BigDecimal share = Rounding.FROM_PHYSICS.round(BigDecimal.valueOf(perLitre / 1000));
      BigDecimal times = node.number("sequestrant", "0.1", "10");
      return Dose.sequestrant(new Ratio(share.multiply(times)));
    }
    if (node.has("technique")) {
      return Dose.technique(node.word("technique"), Ratio.ZERO);
    }
    Ratio from = node.percent("from", Ratio.ZERO, "0", SHARE_MOST);
    Ratio to = Ratio.percent(node.number("to", "0.000001", SHARE_MOST));
    if (from.compareTo(to) > 0) {
      node.problem("from", Exact.plain(from.percent(), 6), "problem.from-to");
    }
    return Dose.fromTo(
        from,
        to,
        node.findPercent("measured", "0.000001", SHARE_MOST),
        Wording.sentence(node, "stopWhen"));
  }

  private static Dose absolute(Node node, Optional<Ingredient> ingredient, Optional<Mass> written) {
    Quantity typed = node.findQuantity("amount").orElse(Quantity.of("1 g"));
    if (written.isEmpty() || written.get().isZero()) {
      node.problem("amount", typed, "problem.no-written");
      return Dose.percent(Ratio.ZERO);
    }
    Optional<Amount> mass = mass(node, "amount", typed, ingredient);
    return Dose.absolute(typed, mass.orElse(Amount.NO_MASS).over(Amount.of(written.get())));
  }

  /** The mass of a typed quantity of an ingredient, or of a component given by mass. */
  static Optional<Amount> mass(
      Node node, String key, Quantity typed, Optional<Ingredient> ingredient) {
    Optional<Amount> mass =
        ingredient.isPresent()
            ? ingredient.get().findMass(typed)
            : typed
                .canonical()
                .filter(amount -> amount.dimension() == halfgram.measure.Dimension.MASS);
    if (mass.isEmpty()) {
      Message why =
          ingredient
              .map(found -> found.whyNoMass(typed))
              .orElse(Message.of("problem.accepted", Message.of("accept.mass")));
      node.problem(key, typed, why.key(), why.args().toArray());
    }
    return mass;
  }
}
