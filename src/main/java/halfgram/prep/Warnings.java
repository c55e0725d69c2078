package halfgram.prep;

import halfgram.formula.FormulaVersion;
import halfgram.formula.Line;
import halfgram.formula.Output;
import halfgram.formula.TechniqueYield;
import halfgram.ingredient.Ingredient;
import halfgram.kitchen.Text;
import halfgram.measure.Message;
import halfgram.station.Place;
import halfgram.technique.bath.SphereBath;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** What is worth a look although nothing is broken: odd numbers, and numbers that are missing. */
final class Warnings {
  private final KitchenBook book;
  private final List<Message> warnings = new ArrayList<>();

  private Warnings(KitchenBook book) {
    this.book = book;
  }

  static List<Message> of(KitchenBook book, Explosion explosion) {
    Warnings warnings = new Warnings(book);
    Map<String, Ingredient> used = new LinkedHashMap<>();
    List<Make> makes = new ArrayList<>();
    explosion.begun().forEach(begun -> makes.add(begun.make()));
    makes.addAll(explosion.makes());
    for (Make make : makes) {
      warnings.collect(make.version(), used);
      explosion
          .workedOf(make)
          .bath
          .map(SphereBath::warnings)
          .orElse(List.of())
          .forEach(said -> warnings.add(Message.of("warn.of", make.version().name(), said)));
      warnings.yields(make.version());
      if (explosion.workedOf(make).bath.isPresent()) {
        warnings.calcium(make.version());
      }
    }
    warnings.allergens(used);
    warnings.places(makes);
    explosion
        .unsaid()
        .forEach(
            lot -> {
              FormulaVersion version = book.formulary().get(lot.component());
              warnings.add(Message.of("warn.thaw", lot.code(), version.name()));
            });
    return warnings.warnings;
  }

  private void add(Message warning) {
    if (!warnings.contains(warning)) {
      warnings.add(warning);
    }
  }

  /** Ingredients of a version and of everything in it. */
  private void collect(FormulaVersion version, Map<String, Ingredient> found) {
    for (Line line : version.lines()) {
      line.item().ingredient().ifPresent(code -> found.put(code, book.ingredient(code)));
      line.item().component().ifPresent(ref -> collect(book.formulary().get(ref), found));
    }
  }

  private void allergens(Map<String, Ingredient> used) {
    List<Text> untold =
        used.values().stream()
            .filter(ingredient -> !ingredient.allergensStated())
            .map(Ingredient::name)
            .toList();
    if (!untold.isEmpty()) {
      add(Message.of("warn.allergens", untold));
    }
  }

  /** A kitchen that lists its places counts how full they get; it cannot do that for others. */
  private void places(List<Make> makes) {
    Set<String> listed = book.places().stream().map(Place::name).collect(Collectors.toSet());
    if (listed.isEmpty()) {
      return;
    }
    Map<String, Set<Text>> others = new TreeMap<>();
    for (Make make : makes) {
      for (Output output : make.version().outputs()) {
        String place = output.hold().place();
        if (!place.isEmpty() && !listed.contains(place)) {
          others.computeIfAbsent(place, one -> new LinkedHashSet<>()).add(make.version().name());
        }
      }
    }
    others.forEach((place, names) -> add(Message.of("warn.place", place, List.copyOf(names))));
  }

  /** A batch is scaled by the yields of its steps, so what a technique says otherwise is told. */
  private void yields(FormulaVersion version) {
    version.techniques().stream()
        .flatMap(use -> TechniqueYield.findDoubt(version, use).stream())
        .forEach(said -> add(Message.of("warn.of", version.name(), said)));
  }

  /** Milk and its like bring calcium; where nobody knows how much, a bath is worn unseen. */
  private void calcium(FormulaVersion version) {
    Map<String, Ingredient> inside = new LinkedHashMap<>();
    collect(version, inside);
    List<Text> unknown =
        inside.values().stream()
            .filter(ingredient -> ingredient.allergens().contains(Baths.MILK))
            .filter(ingredient -> ingredient.calcium().isEmpty())
            .map(Ingredient::name)
            .toList();
    if (!unknown.isEmpty()) {
      add(Message.of("warn.of", version.name(), Message.of("warn.calcium", unknown)));
    }
  }
}
