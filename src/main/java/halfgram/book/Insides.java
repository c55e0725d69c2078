package halfgram.book;

import halfgram.formula.Contents;
import halfgram.formula.Formula;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Formulary;
import halfgram.formula.TechniqueUse;
import halfgram.ingredient.Ingredient;
import halfgram.ingredient.Stated;
import halfgram.input.Problems;
import halfgram.measure.Exact;
import halfgram.measure.Ratio;
import halfgram.measure.Standing;
import halfgram.technique.Input;
import halfgram.technique.Tables;
import halfgram.technique.Technique;
import halfgram.technique.Techniques;
import halfgram.technique.Typed;
import halfgram.technique.Values;
import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeSet;
import java.util.function.Function;

/**
 * Tells techniques what is inside of everything that goes into a formula, components searched
 * through: natural calcium, and milk. It can only be told when all formulas are read. What a
 * technique remarks on hangs on it, never what it adds to a batch. What somebody typed stays.
 *
 * <p>Example: a jelly of 1 part of an infusion that is half milk of 113 mg/100 g: 565 mg/kg.
 */
final class Insides {
  private static final String MILK = "milk";

  private final Map<String, Ingredient> ingredients;
  private final Tables tables;
  private final Problems problems;

  Insides(Map<String, Ingredient> ingredients, Tables tables, Problems problems) {
    this.problems = problems;
    this.ingredients = ingredients;
    this.tables = tables;
  }

  /** These formulas, told; every component of them is there, and none is made of itself. */
  Formulary told(Formulary bare) {
    boolean asked =
        bare.listAll().stream()
            .flatMap(formula -> formula.versions().stream())
            .flatMap(version -> version.techniques().stream())
            .anyMatch(Insides::asks);
    return asked
        ? new Formulary(bare.listAll().stream().map(formula -> told(bare, formula)).toList())
        : bare;
  }

  private Formula told(Formulary bare, Formula formula) {
    return new Formula(
        formula.code(),
        formula.versions().stream().map(version -> told(bare, version)).toList(),
        formula.takenOut());
  }

  private FormulaVersion told(Formulary bare, FormulaVersion version) {
    return version.techniques().stream().anyMatch(Insides::asks)
        ? version.withTechniques(
            version.techniques().stream().map(use -> told(bare, version, use)).toList())
        : version;
  }

  /** Whether it wants to know of anything inside. */
  private static boolean asks(TechniqueUse use) {
    return Techniques.find(use.name()).orElseThrow().inputs().stream()
        .map(Input::origin)
        .anyMatch(origin -> origin == Input.Origin.CALCIUM || origin == Input.Origin.MILK);
  }

  private TechniqueUse told(Formulary bare, FormulaVersion version, TechniqueUse use) {
    Technique technique = Techniques.find(use.name()).orElseThrow();
    SortedMap<String, String> typed = use.typed();
    Set<String> derived = new TreeSet<>();
    use.values()
        .all()
        .forEach(
            (name, value) -> {
              if (value.standing() == Standing.COMPUTED) {
                derived.add(name);
              }
            });
    boolean changed = false;
    for (Input input : technique.inputs()) {
      Optional<String> inside = inside(bare, version, input);
      if (inside.isPresent() && typed.putIfAbsent(input.name(), inside.get()) == null) {
        derived.add(input.name());
        changed = true;
      }
    }
    String path = "$.formulas." + version.formula() + ".";
    return changed
        ? new Typed(technique, tables, path, problems)
            .read(typed, derived)
            .map(values -> again(technique, use, values))
            .orElse(use)
        : use;
  }

  private TechniqueUse again(Technique technique, TechniqueUse use, Values values) {
    return new TechniqueUse(
        use.name(),
        use.step(),
        use.parts(),
        values,
        use.result().map(old -> technique.work(values, tables)),
        use.additions());
  }

  private Optional<String> inside(Formulary bare, FormulaVersion version, Input input) {
    return switch (input.origin()) {
      case CALCIUM -> calcium(bare, version).map(number -> number + " " + input.unit());
      case MILK -> hasMilk(bare, version) ? Optional.of("yes") : Optional.empty();
      default -> Optional.empty();
    };
  }

  /** mg in a kilogram of what goes in; empty when no ingredient's is known. */
  private Optional<String> calcium(Formulary bare, FormulaVersion version) {
    BigDecimal share =
        average(bare, version, of -> of.calcium().map(Stated::value).orElse(Ratio.ZERO)).number();
    return share.signum() == 0
        ? Optional.empty()
        : Optional.of(Exact.plain(share.movePointRight(6), 2));
  }

  private boolean hasMilk(Formulary bare, FormulaVersion version) {
    return !average(bare, version, of -> of.allergens().contains(MILK) ? Ratio.ONE : Ratio.ZERO)
        .isZero();
  }

  private Ratio average(
      Formulary bare, FormulaVersion version, Function<Ingredient, Ratio> inside) {
    return Contents.average(
        bare,
        version,
        code -> Optional.ofNullable(ingredients.get(code)).map(inside).orElse(Ratio.ZERO));
  }
}
