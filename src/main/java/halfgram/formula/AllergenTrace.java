package halfgram.formula;

import halfgram.ingredient.Ingredient;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.function.Function;

/**
 * Which allergens and tags a formula carries, and the way each came in: the codes from the formula
 * down to the ingredient. A bath it sets in counts as part of it.
 *
 * <p>Example: {@code milk -> [yoghurt-spheres, yoghurt-base, cream]}.
 */
public final class AllergenTrace {

  /** Ways in by allergen code, and by tag. */
  public record Carried(
      SortedMap<String, List<String>> allergens, SortedMap<String, List<String>> tags) {

    public SortedSet<String> allergenCodes() {
      return new java.util.TreeSet<>(allergens.keySet());
    }

    /** The same without the ways. */
    public Contains contains() {
      return new Contains(allergenCodes(), new java.util.TreeSet<>(tags.keySet()));
    }
  }

  private final Formulary formulary;
  private final Function<String, Ingredient> ingredients;
  private final IdentityHashMap<FormulaVersion, Carried> known = new IdentityHashMap<>();

  public AllergenTrace(Formulary formulary, Function<String, Ingredient> ingredients) {
    this.formulary = formulary;
    this.ingredients = ingredients;
  }

  public Carried of(FormulaVersion version) {
    Carried before = known.get(version);
    if (before != null) {
      return before;
    }
    Carried carried = new Carried(new TreeMap<>(), new TreeMap<>());
    for (Line line : version.lines()) {
      merge(carried, version.formula(), of(line.item()));
    }
    version
        .dropping()
        .flatMap(use -> formulary.find(ComponentRef.of(use.bath())))
        .ifPresent(bath -> merge(carried, version.formula(), of(bath)));
    known.put(version, carried);
    return carried;
  }

  public Carried of(Item item) {
    return item.fold(
        ingredient -> of(ingredients.apply(ingredient.code())),
        component -> of(formulary.get(component.ref())));
  }

  private static Carried of(Ingredient ingredient) {
    Carried carried = new Carried(new TreeMap<>(), new TreeMap<>());
    List<String> way = List.of(ingredient.code());
    ingredient.allergens().forEach(code -> carried.allergens().put(code, way));
    ingredient.tags().forEach(tag -> carried.tags().put(tag, way));
    return carried;
  }

  private static void merge(Carried into, String formula, Carried part) {
    part.allergens().forEach((code, way) -> into.allergens().putIfAbsent(code, via(formula, way)));
    part.tags().forEach((tag, way) -> into.tags().putIfAbsent(tag, via(formula, way)));
  }

  private static List<String> via(String formula, List<String> way) {
    List<String> longer = new ArrayList<>(List.of(formula));
    longer.addAll(way);
    return List.copyOf(longer);
  }
}
