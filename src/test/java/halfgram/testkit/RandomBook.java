package halfgram.testkit;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.prep.KitchenBook;
import halfgram.prep.PlanRequest;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * A random valid kitchen book from a seed: nested formulas, dishes, diets, events with courses and
 * curves, regular services with pars, tubs with reservations, on ordinary weekends and on those of
 * the clock changes.
 */
public final class RandomBook {
  private static final List<LocalDate> DAYS =
      List.of(
          LocalDate.of(2026, 6, 12),
          LocalDate.of(2026, 10, 24),
          LocalDate.of(2027, 3, 27),
          LocalDate.of(2026, 12, 31));

  private final Chance chance;
  private final Set<Trait> traits;
  private final ObjectNode json;
  private final LocalDate day;
  private final RandomFormulas formulas;

  /**
   * @param size how many formulas there are at most
   */
  public RandomBook(long seed, int size, Set<Trait> traits) {
    this.chance = new Chance(seed);
    this.traits = traits;
    this.day = chance.of(DAYS);
    this.json = BookText.parse(KITCHEN);
    kitchen();
    this.formulas = new RandomFormulas(chance, traits, json, chance.from(2, size));
    dishes();
    services();
    events();
    if (traits.contains(Trait.TUBS)) {
      tubs();
    }
  }

  public static RandomBook of(long seed) {
    return new RandomBook(seed, 8, Trait.all());
  }

  public ObjectNode json() {
    return json;
  }

  public KitchenBook book() {
    return BookText.read(json);
  }

  /** Two or three days, made for the start of the first. */
  public PlanRequest request(KitchenBook book) {
    return new PlanRequest(
        day, 2 + (int) (day.toEpochDay() % 2), book.kitchen().clock().start(day));
  }

  private static final String KITCHEN =
      """
      {format: 'halfgram-book', version: 1,
       kitchen: {code: 'RAND', name: 'Any kitchen', zone: 'Europe/Copenhagen', currency: 'EUR',
         dayStart: '04:00', opens: '07:00', closes: '23:00', waterHardness: 40},
       stations: [{code: 'cold', name: 'Cold'}, {code: 'hot', name: 'Hot'}],
       equipment: [{code: 'mixer', name: 'Mixer', units: 1}],
       containers: [{code: 'tub', name: 'tub', volume: '1 L', tare: '40 g'},
         {code: 'pan', name: 'pan', volume: '6 L', tare: '1 kg',
          inside: {length: '300 mm', width: '250 mm', depth: '90 mm'}}],
       scales: [
         {code: 'fine', name: 'fine', step: '0.01 g', max: '500 g', class: 'II'},
         {code: 'bench', name: 'bench', step: '1 g', max: '15 kg', class: 'III'}],
       ingredients: [
         {code: 'salt', name: 'salt', form: 'powder', packs: [{mass: '1 kg', price: '1.20'}]},
         {code: 'milk', name: 'milk', form: 'liquid', density: 1.03, contains: ['milk'],
          packs: [{mass: '1 kg', price: '1.10'}]},
         {code: 'leek', name: 'leek', form: 'solid', packs: [{mass: '450 g', price: '2'}],
          cuts: [{cut: 'rings', yield: 62, source: 'test'}],
          units: [{unit: 'bunch', mass: '310 g'}]},
         {code: 'oil', name: 'oil', form: 'liquid', density: 0.92},
         {code: 'alginate', name: 'alginate', form: 'powder'},
         {code: 'water', name: 'water', form: 'liquid', density: 1}],
       diets: [{code: 'dairy-free', name: 'dairy-free', without: [],  withoutTags: ['none']}],
       dishes: [], services: [], pars: [], events: [], tubs: []}
      """;

  private void kitchen() {
    ObjectNode kitchen = (ObjectNode) json.get("kitchen");
    kitchen.put("opens", chance.of("06:30", "07:00", "09:00"));
    kitchen.put("closes", chance.of("20:00", "23:00", "01:00"));
    kitchen.put("lineCheck", chance.of("45 min", "20 min", "2 h"));
    kitchen.put("holdingWeight", chance.of(0.0, 0.5, 1.5, 20.0));
    if (chance.oneIn(3)) {
      kitchen.put("lookAhead", "3 d");
    }
    if (chance.oneIn(3)) {
      kitchen.set(
          "buffer",
          BookText.parse("{b: [{to: 20, percent: 30}, {to: 60, percent: 10}, {percent: 2}]}")
              .get("b"));
    }
  }

  private void dishes() {
    int count = chance.from(1, 3);
    for (int i = 0; i < count; i++) {
      ObjectNode dish = json.withArray("dishes").addObject();
      dish.put("code", "dish-" + i).put("name", "Dish " + i);
      ArrayNode plate = dish.putArray("plate");
      int things = chance.from(1, 3);
      for (int t = 0; t < things; t++) {
        formulas.served(plate.addObject());
      }
      plate.addObject().put("ingredient", "leek").put("amount", "3 g");
      if (chance.oneIn(2)) {
        ObjectNode variant = dish.putArray("variants").addObject();
        variant.putArray("diets").add("dairy-free");
        variant.put("name", "another");
        ObjectNode replace = variant.putArray("replace").addObject();
        replace.put("component", plate.get(0).get("component").asText());
        formulas.served(replace.putObject("with"));
      }
    }
  }

  private void services() {
    if (chance.oneIn(3)) {
      return;
    }
    ObjectNode lunch = json.withArray("services").addObject();
    lunch.put("code", "lunch").put("name", "Lunch").put("start", "12:00").put("end", "14:30");
    ArrayNode days = lunch.putArray("days");
    List.of("mon", "tue", "wed", "thu", "fri", "sat", "sun").forEach(days::add);
    if (chance.oneIn(2)) {
      curve(lunch, List.of("12:00", "12:50", "13:30", "14:05"));
    }
    int count = chance.from(1, 4);
    Set<String> formulasOfPars = new HashSet<>();
    for (int i = 0; i < count; i++) {
      ObjectNode par = BookText.parse("{service: 'lunch'}");
      String amount = formulas.reference(par);
      if (!formulasOfPars.add(par.get("component").asText())) {
        continue;
      }
      json.withArray("pars").add(par);
      ObjectNode amounts = par.putObject("amounts");
      for (String weekday : List.of("thu", "fri", "sat", "sun", "mon")) {
        if (!chance.oneIn(3)) {
          amounts.put(weekday, RandomFormulas.times(amount, chance.from(3, 40)));
        }
      }
    }
  }

  private void curve(ObjectNode service, List<String> times) {
    int count = chance.from(2, times.size());
    int[] shares = chance.hundred(count);
    ArrayNode curve = service.putArray("curve");
    for (int i = 0; i < count; i++) {
      curve.addObject().put("at", times.get(i)).put("share", shares[i]);
    }
  }

  private void events() {
    int count = chance.from(1, 3);
    for (int i = 0; i < count; i++) {
      ObjectNode event = json.withArray("events").addObject();
      int guests = chance.from(4, 120);
      event.put("code", "event-" + i).put("name", "Event " + i);
      event.put("date", day.plusDays(chance.from(0, 2)).toString());
      event.putObject("covers").put("expected", guests);
      if (chance.oneIn(3)) {
        event.put("buffer", chance.from(0, 20));
      }
      if (chance.oneIn(2)) {
        ObjectNode diet = event.putArray("diets").addObject();
        diet.putArray("diets").add("dairy-free");
        diet.put("count", chance.from(0, 4));
      }
      ArrayNode services = event.putArray("services");
      if (chance.oneIn(3)) {
        buffet(services.addObject());
      }
      courses(services.addObject());
    }
  }

  private void buffet(ObjectNode service) {
    boolean night = chance.oneIn(2);
    service.put("code", "buffet").put("start", night ? "23:30" : "17:00");
    service.put("end", night ? "03:00" : "20:10");
    if (chance.oneIn(2)) {
      curve(
          service,
          night
              ? List.of("23:45", "00:40", "01:50", "02:20")
              : List.of("17:00", "17:35", "18:40", "19:50"));
    }
    dishes(service.putArray("dishes"), 1);
  }

  private void courses(ObjectNode service) {
    service.put("code", "dinner").put("start", "18:30").put("end", "22:00");
    ArrayNode courses = service.putArray("courses");
    List<String> fires = List.of("18:45", "19:30", "21:00");
    int count = chance.from(1, 3);
    for (int i = 0; i < count; i++) {
      ObjectNode course = courses.addObject();
      course.put("code", "course-" + i).put("name", "Course " + i).put("at", fires.get(i));
      dishes(course.putArray("dishes"), chance.from(1, 2));
    }
  }

  private void dishes(ArrayNode shares, int count) {
    int[] parts = chance.hundred(count);
    for (int i = 0; i < count; i++) {
      int all = json.withArray("dishes").size();
      ObjectNode share = shares.addObject();
      share.put("dish", "dish-" + chance.from(0, all - 1)).put("share", parts[i]);
      if (chance.oneIn(4)) {
        share.put("perCover", 2);
      }
    }
  }

  private void tubs() {
    int count = chance.from(0, 6);
    List<String> events = new ArrayList<>();
    json.withArray("events").forEach(event -> events.add(event.get("code").asText()));
    for (int i = 0; i < count; i++) {
      ObjectNode tub = json.withArray("tubs").addObject();
      tub.put("code", "tub-" + i);
      String unit = formulas.tubOf(tub);
      int left = chance.from(1, 60) * (unit.equals("g") ? 25 : 1);
      tub.put("left", left + " " + unit);
      boolean shortLived = traits.contains(Trait.SHORT_LIVED_TUBS);
      LocalDateTime made = day.minusDays(shortLived ? 3 : 40).atTime(10, 0);
      tub.put("made", (shortLived ? made.plusHours(chance.from(0, 110)) : made).toString());
      tub.put(
          "useBy",
          (shortLived ? made.plusHours(chance.from(110, 200)) : made.plusDays(100)).toString());
      if (traits.contains(Trait.RESERVATIONS) && chance.oneIn(2)) {
        ArrayNode reserved = tub.putArray("reserved");
        reserved
            .addObject()
            .put("event", chance.of(events))
            .put("amount", chance.from(1, left) + " " + unit);
      }
    }
  }
}
