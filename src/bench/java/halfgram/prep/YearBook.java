package halfgram.prep;

import halfgram.event.Buffer;
import halfgram.event.Covers;
import halfgram.event.Curve;
import halfgram.event.Event;
import halfgram.event.Service;
import halfgram.event.Share;
import halfgram.formula.ComponentRef;
import halfgram.formula.Dose;
import halfgram.formula.Formula;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Formulary;
import halfgram.formula.Instruction;
import halfgram.formula.Item;
import halfgram.formula.Line;
import halfgram.formula.Output;
import halfgram.formula.Reason;
import halfgram.formula.Residue;
import halfgram.formula.Step;
import halfgram.formula.Work;
import halfgram.ingredient.Form;
import halfgram.ingredient.Ingredient;
import halfgram.kitchen.Kitchen;
import halfgram.kitchen.Text;
import halfgram.lot.Lot;
import halfgram.measure.Amount;
import halfgram.measure.BusinessDay;
import halfgram.measure.Dimension;
import halfgram.measure.Mass;
import halfgram.measure.Quantity;
import halfgram.measure.Ratio;
import halfgram.menu.Dish;
import halfgram.menu.PlateItem;
import halfgram.station.Station;
import halfgram.technique.Tables;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * A year of events over nested formulas, by seed: 500 formulas in five levels, six lines each, two
 * of them components of the level below; every event 120 covers and 20 dishes.
 */
final class YearBook {
  static final LocalDate FIRST = LocalDate.of(2026, 1, 1);
  static final int DAYS = 365;
  private static final int LEVELS = 5;
  private static final int PER_LEVEL = 100;
  private static final int DISHES_PER_EVENT = 20;
  private static final List<LocalTime> STARTS =
      List.of(
          LocalTime.of(12, 0),
          LocalTime.of(12, 30),
          LocalTime.of(13, 0),
          LocalTime.of(17, 30),
          LocalTime.of(18, 0),
          LocalTime.of(18, 30),
          LocalTime.of(19, 0),
          LocalTime.of(20, 0));

  private YearBook() {}

  static KitchenBook of(int events, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    TreeMap<String, Ingredient> ingredients = new TreeMap<>();
    for (int i = 0; i < 50; i++) {
      ingredients.put("ingredient-" + i, ingredient("ingredient-" + i));
    }
    List<Formula> formulas = new ArrayList<>();
    for (int level = 0; level < LEVELS; level++) {
      for (int i = 0; i < PER_LEVEL; i++) {
        formulas.add(formula(level, i, random));
      }
    }
    TreeMap<String, Dish> dishes = new TreeMap<>();
    for (int i = 0; i < PER_LEVEL; i++) {
      dishes.put("dish-" + i, dish(i));
    }
    List<Event> occasions = new ArrayList<>();
    for (int i = 0; i < events; i++) {
      occasions.add(event(i, random));
    }
    return new KitchenBook(
        kitchen(),
        Buffer.PUBLISHED,
        List.of(),
        List.of(),
        new TreeMap<>(Map.of("cold", new Station("cold", Text.of("Cold")))),
        List.of(),
        new TreeMap<>(),
        new TreeMap<>(),
        List.of(),
        ingredients,
        Map.of(),
        Map.of(),
        new Tables(new TreeMap<>()),
        new TreeMap<>(),
        new Formulary(formulas),
        dishes,
        new TreeMap<>(),
        List.of(),
        occasions,
        List.of(),
        lots());
  }

  private static Kitchen kitchen() {
    return new Kitchen(
        "YEAR",
        Text.of("Year"),
        new BusinessDay(ZoneId.of("Europe/Copenhagen"), LocalTime.of(4, 0)),
        LocalTime.of(6, 0),
        LocalTime.of(23, 30),
        "EUR",
        Optional.of(BigDecimal.TEN),
        Duration.ofMinutes(45),
        BigDecimal.ONE,
        Ratio.percent(1),
        Ratio.percent(2),
        Duration.ofDays(1),
        Kitchen.Lanes.ASK,
        Kitchen.Units.METRIC,
        Kitchen.Hours.TWENTY_FOUR,
        Optional.empty());
  }

  private static Ingredient ingredient(String code) {
    return new Ingredient(
        code,
        Text.of(code),
        Form.SOLID,
        Optional.empty(),
        Optional.empty(),
        true,
        new TreeSet<>(),
        new TreeSet<>(),
        List.of(),
        new TreeSet<>(),
        Map.of(),
        new TreeMap<>());
  }

  private static Formula formula(int level, int index, SplittableRandom random) {
    String code = code(level, index);
    List<Line> lines = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      boolean component = i < 2 && level < LEVELS - 1;
      Item item =
          component
              ? new Item.OfComponent(
                  ComponentRef.of(code(level + 1, (index * 7 + i * 31 + 3) % PER_LEVEL)))
              : new Item.OfIngredient("ingredient-" + random.nextInt(50), Optional.empty());
      Dose dose =
          i == 5
              ? Dose.basis(Ratio.ONE)
              : Dose.percent(Ratio.percent(BigDecimal.valueOf(5 + random.nextInt(60))));
      lines.add(
          new Line(
              "line-" + i,
              item,
              Ratio.ONE,
              Line.Weighed.PREPARED,
              dose,
              Ratio.ZERO,
              Optional.empty(),
              "make",
              Optional.empty(),
              Optional.empty(),
              false,
              false));
    }
    Step step =
        new Step(
            "make",
            Text.of("make"),
            List.of(Instruction.of(Text.of("Make"))),
            "cold",
            1,
            new Work(Duration.ofMinutes(10), Duration.ofMinutes(1), Duration.ZERO),
            new Work(Duration.ofMinutes(15), Duration.ZERO, Duration.ZERO),
            Duration.ZERO,
            List.of(),
            false,
            Ratio.percent(90 + random.nextInt(10)),
            new Residue(Mass.grams("40"), Ratio.percent(2)),
            Ratio.ZERO,
            List.of(),
            Optional.empty(),
            Optional.empty(),
            false,
            List.of());
    Output output =
        new Output(
            "out",
            Text.of(code),
            Dimension.MASS,
            Ratio.ONE,
            Optional.empty(),
            Output.Rest.NONE,
            Output.Hold.of(
                Duration.ofDays(1 + random.nextInt(3)),
                new Reason(Reason.Kind.QUALITY, "bench"),
                "walk-in"),
            Optional.empty(),
            Optional.empty(),
            Output.Split.FULL,
            Optional.empty());
    return new Formula(
        code,
        List.of(
            new FormulaVersion(
                code,
                Text.of(code),
                1,
                Optional.empty(),
                "",
                Optional.empty(),
                lines,
                List.of(step),
                List.of(output),
                false,
                Optional.empty(),
                List.of())),
        false);
  }

  private static String code(int level, int index) {
    return "formula-" + level + "-" + index;
  }

  private static Dish dish(int index) {
    PlateItem item =
        new PlateItem(
            new Item.OfComponent(ComponentRef.of(code(0, index))),
            Quantity.of("40 g"),
            Amount.grams(40));
    String code = "dish-" + index;
    return new Dish(
        code, Text.of(code), List.of(item), List.of(), List.of(), List.of(), Optional.empty());
  }

  private static Event event(int index, SplittableRandom random) {
    List<Share> menu = new ArrayList<>();
    int first = random.nextInt(PER_LEVEL);
    for (int i = 0; i < DISHES_PER_EVENT; i++) {
      menu.add(new Share("dish-" + (first + i * 3) % PER_LEVEL, Ratio.ONE, 1));
    }
    LocalTime start = STARTS.get(random.nextInt(STARTS.size()));
    Service service =
        new Service(
            "service",
            Text.of("Service"),
            start,
            start.plusHours(2),
            List.of(),
            Curve.EVEN,
            menu,
            List.of());
    return new Event(
        "event-" + index,
        Text.of("Event " + index),
        FIRST.plusDays(random.nextInt(DAYS)),
        new Covers(120, OptionalInt.empty()),
        Optional.empty(),
        List.of(),
        List.of(service),
        false);
  }

  /** Some stock, so that netting has something to do. */
  private static List<Lot> lots() {
    List<Lot> lots = new ArrayList<>();
    var clock = kitchen().clock();
    for (int i = 0; i < PER_LEVEL; i++) {
      lots.add(
          new Lot(
              "tub-" + i,
              ComponentRef.of(code(i % LEVELS, i)),
              Amount.grams(2000),
              clock.start(FIRST.minusDays(1)),
              clock.start(FIRST.plusDays(10)),
              "walk-in",
              Optional.empty(),
              List.of()));
    }
    return lots;
  }
}
