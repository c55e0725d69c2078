package halfgram.book;

import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.delivery.Delivery;
import halfgram.event.Buffer;
import halfgram.event.Event;
import halfgram.event.RegularService;
import halfgram.formula.Formula;
import halfgram.formula.Formulary;
import halfgram.ingredient.Ingredient;
import halfgram.ingredient.Scale;
import halfgram.input.Problems;
import halfgram.kitchen.Kitchen;
import halfgram.kitchen.Text;
import halfgram.lot.Lot;
import halfgram.measure.BusinessDay;
import halfgram.measure.Ratio;
import halfgram.menu.Diet;
import halfgram.menu.Dish;
import halfgram.par.Par;
import halfgram.prep.KitchenBook;
import halfgram.station.Block;
import halfgram.station.Container;
import halfgram.station.Equipment;
import halfgram.station.Person;
import halfgram.station.Place;
import halfgram.station.Station;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;

/** The parts of a book in the order in which each needs the ones before. */
final class BookParts {
  private final Problems problems;
  private final Reference shipped;

  /**
   * @param shipped the reference rows without the book's own
   */
  BookParts(Problems problems, Reference shipped) {
    this.problems = problems;
    this.shipped = shipped;
  }

  /** Reads everything; the answer is worth something only when there were no problems. */
  KitchenBook read(ObjectNode json) {
    Node root = new Node(json, "$", problems);
    root.has("format");
    root.has("version");
    Reading reading = new Reading(problems, new ReferenceReader(shipped).own(root));
    KitchenReader kitchens = new KitchenReader(reading);
    Optional<Node> kitchenNode = root.need("kitchen", "accept.object");
    Kitchen kitchen = kitchenNode.map(kitchens::kitchen).orElse(NOWHERE);
    Buffer buffer = kitchenNode.map(kitchens::buffer).orElse(Buffer.PUBLISHED);
    List<Block> blocks = kitchenNode.map(kitchens::blocks).orElse(List.of());
    List<Place> places = kitchenNode.map(kitchens::places).orElse(List.of());
    kitchenNode.ifPresent(Node::done);
    SortedMap<String, Station> stations =
        byCode(root.all("stations", kitchens::station), Station::code);
    List<Person> people = root.list("people", kitchens::person);
    SortedMap<String, Equipment> equipment =
        byCode(root.list("equipment", kitchens::equipment), Equipment::code);
    SortedMap<String, Container> containers =
        byCode(root.list("containers", kitchens::container), Container::code);
    List<Scale> scales = root.list("scales", kitchens::scale);
    IngredientReader ingredientReader = new IngredientReader(reading);
    SortedMap<String, Ingredient> ingredients =
        byCode(root.all("ingredients", ingredientReader::ingredient), Ingredient::code);
    FormulaReader formulas =
        new FormulaReader(
            reading,
            ingredients,
            kitchen.waterHardness(),
            new StepReader(reading, equipment, containers),
            new TechniqueReader(reading, containers, kitchen.waterHardness()));
    List<Formula> read = root.all("formulas", formulas::formula);
    read = read.stream().filter(formula -> !formula.versions().isEmpty()).toList();
    Formulary bare = formulary(read);
    formulas.check(bare);
    Formulary formulary =
        problems.isEmpty() && bare.findCycle().isEmpty()
            ? new Insides(ingredients, reading.reference.tables(), problems).told(bare)
            : bare;
    ComponentReader components = new ComponentReader(reading, formulary);
    MenuReader menu = new MenuReader(reading, ingredients, components);
    SortedMap<String, Diet> diets = byCode(root.list("diets", menu::diet), Diet::code);
    SortedMap<String, Dish> dishes = byCode(root.list("dishes", menu::dish), Dish::code);
    ServiceReader services =
        new ServiceReader(reading, components, menu, kitchen.clock().dayStart());
    SortedMap<String, RegularService> regular =
        byCode(root.list("services", services::service), RegularService::code);
    List<Par> pars = root.list("pars", services::par);
    EventReader events = new EventReader(reading, services, menu);
    List<Event> occasions = root.list("events", events::event);
    DeliveryReader deliveries = new DeliveryReader(reading, ingredients, kitchen.clock());
    List<Delivery> goods = root.list("deliveries", deliveries::delivery);
    LotReader lots = new LotReader(reading, components, kitchen.clock());
    List<Lot> tubs = root.list("tubs", lots::lot);
    root.done();
    reading.finish();
    KitchenBook book =
        new KitchenBook(
            kitchen,
            buffer,
            blocks,
            places,
            stations,
            people,
            equipment,
            containers,
            scales,
            ingredients,
            reading.reference.allergens(),
            reading.reference.salts(),
            reading.reference.tables(),
            diets,
            formulary,
            dishes,
            regular,
            pars,
            occasions,
            goods,
            tubs);
    new WholeBook(problems).check(book);
    return book;
  }

  /** Formulas whose versions have steps; others are problems already. */
  private static Formulary formulary(List<Formula> formulas) {
    return new Formulary(
        formulas.stream()
            .filter(
                formula ->
                    formula.versions().stream()
                        .noneMatch(v -> v.steps().isEmpty() || v.outputs().isEmpty()))
            .toList());
  }

  private static <T> SortedMap<String, T> byCode(List<T> items, Function<T, String> code) {
    SortedMap<String, T> byCode = new TreeMap<>();
    items.forEach(item -> byCode.put(code.apply(item), item));
    return byCode;
  }

  /** Stands in for a kitchen that could not be read. */
  private static final Kitchen NOWHERE =
      new Kitchen(
          "?",
          Text.of("?"),
          new BusinessDay(ZoneId.of("UTC"), LocalTime.of(4, 0)),
          LocalTime.of(6, 0),
          LocalTime.of(23, 0),
          "EUR",
          Optional.empty(),
          Duration.ofMinutes(45),
          BigDecimal.ONE,
          Ratio.percent(1),
          Ratio.percent(2),
          Duration.ZERO,
          Kitchen.Lanes.ASK,
          Kitchen.Units.METRIC,
          Kitchen.Hours.TWENTY_FOUR,
          Optional.empty());
}
