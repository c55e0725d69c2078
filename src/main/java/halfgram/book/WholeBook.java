package halfgram.book;

import halfgram.event.DietCount;
import halfgram.event.Event;
import halfgram.event.Service;
import halfgram.event.Share;
import halfgram.formula.AllergenTrace;
import halfgram.formula.Formula;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Item;
import halfgram.formula.Line;
import halfgram.formula.TechniqueUse;
import halfgram.input.Problem;
import halfgram.input.Problems;
import halfgram.measure.Message;
import halfgram.menu.Dish;
import halfgram.menu.PlateItem;
import halfgram.menu.Variant;
import halfgram.prep.BathFacts;
import halfgram.prep.KitchenBook;
import halfgram.prep.Plated;
import halfgram.technique.Calculation;
import halfgram.technique.Result;
import halfgram.technique.Technique;
import halfgram.technique.Techniques;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * What can only be checked on the whole book: that no formula is made of itself, that every plate
 * served to a diet is free of what the diet forbids, and that nothing stops a bath.
 */
final class WholeBook {
  private final Problems problems;

  WholeBook(Problems problems) {
    this.problems = problems;
  }

  void check(KitchenBook book) {
    List<String> cycle = book.formulary().findCycle();
    if (!cycle.isEmpty()) {
      problems.add("$.formulas", String.join(" > ", cycle), "problem.cycle");
    }
    if (cycle.isEmpty() && isTraceable(book)) {
      diets(book);
    }
    if (problems.isEmpty()) {
      baths(book);
    }
  }

  /**
   * What stops a bath, or what of it no bath can be worked out of, can only be told where its
   * formula, its pan and its pieces are known.
   */
  private void baths(KitchenBook book) {
    for (Formula formula : book.formulary().list()) {
      for (FormulaVersion version : formula.versions()) {
        version
            .dropping()
            .map(use -> worked(book, version, use))
            .ifPresent(worked -> bath(formula.code(), worked));
      }
    }
  }

  private void bath(String formula, Calculation worked) {
    for (Problem problem : worked.problems()) {
      Message said = problem.message();
      String value = formula + ": " + problem.value();
      problems.add("$.formulas", value, said.key(), said.args().toArray());
    }
    for (Message stop : worked.result().map(Result::stops).orElse(List.of())) {
      problems.add("$.formulas", formula, stop.key(), stop.args().toArray());
    }
  }

  private static Calculation worked(KitchenBook book, FormulaVersion version, TechniqueUse use) {
    Map<String, String> typed = new TreeMap<>(use.typed());
    typed.putAll(BathFacts.typed(book, version));
    Technique technique = Techniques.find(use.name()).orElseThrow();
    return Calculation.of(technique, book.tables(), typed);
  }

  /** Whether everything that a formula or a plate is made of is there. */
  private static boolean isTraceable(KitchenBook book) {
    Stream<Item> lines =
        book.formulary().list().stream()
            .flatMap(formula -> formula.versions().stream())
            .flatMap(version -> version.lines().stream())
            .map(Line::item);
    Stream<Item> plates =
        book.dishes().values().stream()
            .flatMap(
                dish ->
                    Stream.concat(
                        dish.plate().stream(),
                        dish.variants().stream().flatMap(variant -> variant.plate().stream())))
            .map(PlateItem::item);
    return Stream.concat(lines, plates)
        .allMatch(
            item ->
                item.<Boolean>fold(
                    ingredient -> book.ingredients().containsKey(ingredient.code()),
                    component -> book.formulary().find(component.ref()).isPresent()));
  }

  private void diets(KitchenBook book) {
    AllergenTrace trace = new AllergenTrace(book.formulary(), book::ingredient);
    for (int e = 0; e < book.allEvents().size(); e++) {
      Event event = book.allEvents().get(e);
      for (int d = 0; d < event.diets().size(); d++) {
        DietCount count = event.diets().get(d);
        for (Share share : shares(event)) {
          Dish dish = book.dishes().get(share.dish());
          if (dish != null) {
            String path = "$.events[" + e + "].diets[" + d + "]";
            plate(book, trace, path, dish, count);
          }
        }
      }
    }
  }

  private static List<Share> shares(Event event) {
    List<Share> shares = new ArrayList<>();
    for (Service service : event.services()) {
      shares.addAll(service.dishes());
      service.courses().forEach(course -> shares.addAll(course.dishes()));
    }
    return shares;
  }

  private void plate(
      KitchenBook book, AllergenTrace trace, String path, Dish dish, DietCount count) {
    List<PlateItem> plate =
        dish.findVariant(count.diets(), any -> Plated.suits(book, trace, any, count.diets()))
            .map(Variant::plate)
            .orElse(dish.plate());
    Plated.findBreach(book, trace, plate, count.diets())
        .ifPresent(
            breach ->
                problems.add(
                    path, dish.code(), "problem.diet", breach.diet().name(), breach.way()));
  }
}
