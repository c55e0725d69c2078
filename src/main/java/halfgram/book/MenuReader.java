package halfgram.book;

import halfgram.event.Replaced;
import halfgram.formula.ComponentRef;
import halfgram.formula.Item;
import halfgram.ingredient.Ingredient;
import halfgram.kitchen.Text;
import halfgram.measure.Amount;
import halfgram.measure.Message;
import halfgram.measure.Quantity;
import halfgram.menu.Diet;
import halfgram.menu.Dish;
import halfgram.menu.PlateItem;
import halfgram.menu.Plating;
import halfgram.menu.Swap;
import halfgram.menu.Variant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeSet;

/** Reads diets and dishes. */
final class MenuReader {
  /** What is read on with when nothing was given. */
  private static final PlateItem NOTHING =
      new PlateItem(
          new Item.OfIngredient("", Optional.empty()), Quantity.of("1 g"), Amount.NO_MASS);

  private final Reading reading;
  private final Map<String, Ingredient> ingredients;
  private final ComponentReader components;

  MenuReader(Reading reading, Map<String, Ingredient> ingredients, ComponentReader components) {
    this.reading = reading;
    this.ingredients = ingredients;
    this.components = components;
  }

  Diet diet(Node node) {
    String code = reading.declare(Reading.Kind.DIET, node);
    List<String> without = node.words("without");
    for (int i = 0; i < without.size(); i++) {
      if (!without.get(i).isEmpty() && !reading.reference.allergens().containsKey(without.get(i))) {
        node.problem(
            "without[" + i + "]",
            without.get(i),
            "problem.no-such",
            "allergen",
            String.join(", ", reading.reference.allergens().keySet()));
      }
    }
    return new Diet(
        code, node.text("name"), new TreeSet<>(without), new TreeSet<>(node.words("withoutTags")));
  }

  Dish dish(Node node) {
    String code = reading.declare(Reading.Kind.DISH, node);
    List<PlateItem> plate = node.some("plate", this::plateItem);
    return new Dish(
        code,
        node.text("name"),
        plate,
        node.sentences("finish"),
        node.list("variants", variant -> variant(variant, plate)),
        node.list("swaps", swap -> swap(swap, plate)),
        node.object("plating").map(this::plating));
  }

  private Plating plating(Node node) {
    Optional<String> station = reading.findCode(Reading.Kind.STATION, node, "station");
    Plating plating =
        new Plating(
            node.findInteger("people", 1, 100).orElse(1),
            node.number("platesPerMinute", "0.05", "120"),
            node.list(
                "last",
                step ->
                    new Plating.LastStep(
                        Wording.sentence(step, "text"), step.integer("seconds", 0, 3600))),
            node.findText("plate"),
            node.findInteger("perTray", 1, 500).map(OptionalInt::of).orElse(OptionalInt.empty()),
            station);
    node.done();
    return plating;
  }

  private Swap swap(Node node, List<PlateItem> plate) {
    Swap swap = swap(node);
    if (!swap.applies(plate)) {
      node.problem("component", swap.item(), "problem.not-on-plate", codes(plate));
    }
    return swap;
  }

  /** What stands in for what in a service, on one dish. */
  Replaced replaced(Node node) {
    String dish = reading.code(Reading.Kind.DISH, node, "dish");
    return new Replaced(dish, swap(node));
  }

  /** What stands in for what. */
  private Swap swap(Node node) {
    boolean isIngredient = node.has("ingredient");
    if (isIngredient == node.has("component")) {
      node.problem("", "", "problem.one-item");
    }
    String code = node.code(isIngredient ? "ingredient" : "component");
    Optional<Node> with = node.need("with", "accept.plate-item");
    Optional<PlateItem> item = with.map(this::plateItem);
    with.ifPresent(Node::done);
    return new Swap(code, item.orElse(NOTHING));
  }

  PlateItem plateItem(Node node) {
    boolean isIngredient = node.has("ingredient");
    if (isIngredient == node.has("component")) {
      node.problem("", "", "problem.one-item");
    }
    Quantity typed = node.findQuantity("amount").orElse(Quantity.of("1 g"));
    if (!node.has("amount")) {
      node.problem("amount", "", "problem.missing", Message.of("accept.quantity"));
    }
    if (typed.number().signum() == 0) {
      reading.problems.addInNew(node.path("amount"), typed, "problem.nothing");
    }
    if (isIngredient) {
      String code = reading.code(Reading.Kind.INGREDIENT, node, "ingredient");
      Optional<Amount> mass =
          Optional.ofNullable(ingredients.get(code))
              .flatMap(
                  ingredient -> FormulaReader.mass(node, "amount", typed, Optional.of(ingredient)));
      return new PlateItem(
          new Item.OfIngredient(code, Optional.empty()), typed, mass.orElse(Amount.NO_MASS));
    }
    ComponentRef ref = components.component(node);
    Amount amount = components.amount(node, "amount", ref, typed);
    return new PlateItem(new Item.OfComponent(ref), typed, amount);
  }

  private Variant variant(Node node, List<PlateItem> plate) {
    List<String> diets = node.words("diets");
    for (int i = 0; i < diets.size(); i++) {
      reading.refer(Reading.Kind.DIET, node, "diets[" + i + "]", diets.get(i));
    }
    List<PlateItem> changed = new ArrayList<>(plate);
    node.list("replace", replace -> replace(replace, changed));
    List<String> removed = node.words("remove");
    for (int i = 0; i < removed.size(); i++) {
      String code = removed.get(i);
      if (!changed.removeIf(item -> item.item().code().equals(code))) {
        node.problem("remove[" + i + "]", code, "problem.not-on-plate", codes(plate));
      }
    }
    changed.addAll(node.list("add", this::plateItem));
    return new Variant(
        new TreeSet<>(diets),
        node.findText("name").orElse(Text.of(String.join(", ", diets))),
        changed);
  }

  private String replace(Node node, List<PlateItem> plate) {
    String code = node.has("ingredient") ? node.code("ingredient") : node.code("component");
    int at = -1;
    for (int i = 0; i < plate.size(); i++) {
      at = plate.get(i).item().code().equals(code) ? i : at;
    }
    Optional<Node> with = node.need("with", "accept.plate-item");
    Optional<PlateItem> item = with.map(this::plateItem);
    with.ifPresent(Node::done);
    if (at < 0) {
      node.problem("component", code, "problem.not-on-plate", codes(plate));
    } else if (item.isPresent()) {
      plate.set(at, item.get());
    }
    return code;
  }

  private static String codes(List<PlateItem> plate) {
    return String.join(", ", plate.stream().map(item -> item.item().code()).toList());
  }
}
