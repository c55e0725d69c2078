package halfgram.book;

import halfgram.ingredient.Form;
import halfgram.ingredient.Ingredient;
import halfgram.ingredient.Pack;
import halfgram.ingredient.Stated;
import halfgram.measure.Mass;
import halfgram.measure.Money;
import halfgram.measure.Quantity;
import halfgram.measure.Ratio;
import halfgram.measure.Standing;
import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/** Reads ingredients; what the book does not say comes from the reference row it names. */
final class IngredientReader {
  private final Reading reading;

  IngredientReader(Reading reading) {
    this.reading = reading;
  }

  Ingredient ingredient(Node node) {
    String code = reading.declare(Reading.Kind.INGREDIENT, node);
    Optional<String> row = node.findCode("reference");
    row.ifPresent(name -> checkRow(node, name));
    List<String> lookAlikes = node.words("lookAlike");
    for (int i = 0; i < lookAlikes.size(); i++) {
      reading.refer(Reading.Kind.INGREDIENT, node, "lookAlike[" + i + "]", lookAlikes.get(i));
    }
    return new Ingredient(
        code,
        node.text("name"),
        node.choice("form", Form.class, Form.SOLID),
        density(node).or(() -> row.map(reading.reference.densities()::get)),
        row.map(reading.reference.calcium()::get),
        node.has("contains"),
        allergens(reading, node),
        new TreeSet<>(node.words("tags")),
        node.list("packs", IngredientReader::pack),
        new TreeSet<>(lookAlikes),
        units(node),
        cuts(node, row));
  }

  private void checkRow(Node node, String row) {
    boolean known =
        reading.reference.densities().containsKey(row)
            || reading.reference.yields().containsKey(row)
            || reading.reference.calcium().containsKey(row)
            || reading.reference.salts().containsKey(row);
    if (!known) {
      TreeSet<String> all = new TreeSet<>(reading.reference.densities().keySet());
      all.addAll(reading.reference.yields().keySet());
      all.addAll(reading.reference.calcium().keySet());
      node.problem("reference", row, "problem.no-such", "reference", reading.accepted(all, row));
    }
  }

  private static Optional<Stated> density(Node node) {
    return node.findNumber("density", "0.01", "25")
        .map(density -> new Stated(new Ratio(density), Standing.ENTERED, ""));
  }

  /** Codes of allergens that something contains. */
  static SortedSet<String> allergens(Reading reading, Node node) {
    List<String> codes = node.words("contains");
    for (int i = 0; i < codes.size(); i++) {
      if (!codes.get(i).isEmpty() && !reading.reference.allergens().containsKey(codes.get(i))) {
        node.problem(
            "contains[" + i + "]",
            codes.get(i),
            "problem.no-such",
            "allergen",
            String.join(", ", reading.reference.allergens().keySet()));
      }
    }
    return new TreeSet<>(codes);
  }

  private static Pack pack(Node node) {
    Mass mass = node.mass("mass");
    Optional<BigDecimal> price = node.find("price", IngredientReader::price, "accept.price");
    return new Pack(mass, price.map(Money::of).orElse(Money.UNKNOWN));
  }

  private static Optional<BigDecimal> price(String text) {
    return text.matches("\\d{1,7}(\\.\\d{1,4})?")
        ? Optional.of(new BigDecimal(text))
        : Optional.empty();
  }

  private static Map<String, Mass> units(Node node) {
    Map<String, Mass> units = new HashMap<>();
    node.list(
        "units",
        unit -> {
          String word = Quantity.unit(unit.word("unit"));
          boolean taken =
              halfgram.measure.Unit.find(word)
                  .filter(known -> known != halfgram.measure.Unit.PIECE)
                  .isPresent();
          if (taken || word.contains(" ")) {
            unit.problem("unit", word, "problem.household-word");
          }
          units.put(word, unit.mass("mass"));
          return word;
        });
    return units;
  }

  private SortedMap<String, Stated> cuts(Node node, Optional<String> row) {
    SortedMap<String, Stated> cuts = new TreeMap<>();
    row.map(name -> reading.reference.yields().getOrDefault(name, Map.of()))
        .ifPresent(known -> cuts.putAll(known));
    node.list(
        "cuts",
        cut -> {
          String word = cut.code("cut");
          Ratio yield = Ratio.percent(cut.number("yield", "0.1", "100"));
          cuts.put(word, new Stated(yield, Standing.ENTERED, cut.findWord("source").orElse("")));
          return word;
        });
    return cuts;
  }
}
