package halfgram.prep;

import halfgram.delivery.Delivery;
import halfgram.event.Buffer;
import halfgram.event.Event;
import halfgram.event.RegularService;
import halfgram.formula.Cost;
import halfgram.formula.Formulary;
import halfgram.ingredient.Ingredient;
import halfgram.ingredient.Scale;
import halfgram.kitchen.Kitchen;
import halfgram.kitchen.Text;
import halfgram.lot.Lot;
import halfgram.measure.BusinessDay;
import halfgram.menu.Diet;
import halfgram.menu.Dish;
import halfgram.par.Par;
import halfgram.station.Block;
import halfgram.station.Container;
import halfgram.station.Equipment;
import halfgram.station.Person;
import halfgram.station.Place;
import halfgram.station.Station;
import halfgram.technique.Tables;
import halfgram.technique.bath.CalciumSalt;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.stream.Collectors;

/**
 * Everything a plan is computed from, whole and consistent: whoever makes one has checked every
 * reference.
 *
 * @param blocks times in which everybody on shift, or some stations, do one thing
 * @param places where tubs stand, and how much goes in
 * @param allergens names of the allergens by code
 * @param salts calcium salts of the reference table by code
 * @param tables the reference rows, the kitchen's own among them
 * @param allEvents those that are only drafts too: whoever plans, lists or serves asks for {@link
 *     #events}
 * @param lots tubs; what one keeps for a draft is free here, since the draft asks for nothing
 */
public record KitchenBook(
    Kitchen kitchen,
    Buffer buffer,
    List<Block> blocks,
    List<Place> places,
    SortedMap<String, Station> stations,
    List<Person> people,
    SortedMap<String, Equipment> equipment,
    SortedMap<String, Container> containers,
    List<Scale> scales,
    SortedMap<String, Ingredient> ingredients,
    Map<String, Text> allergens,
    Map<String, CalciumSalt> salts,
    Tables tables,
    SortedMap<String, Diet> diets,
    Formulary formulary,
    SortedMap<String, Dish> dishes,
    SortedMap<String, RegularService> services,
    List<Par> pars,
    List<Event> allEvents,
    List<Delivery> deliveries,
    List<Lot> lots) {
  public KitchenBook {
    lots = free(lots, allEvents, kitchen.clock());
  }

  /** A tub keeps nothing for a draft, nor for a day on which it is past its date. */
  private static List<Lot> free(List<Lot> lots, List<Event> events, BusinessDay clock) {
    return lots.stream()
        .map(lot -> lot.reserved().isEmpty() ? lot : lot.without(inVain(lot, events, clock)))
        .toList();
  }

  private static Set<String> inVain(Lot lot, List<Event> events, BusinessDay clock) {
    return events.stream()
        .filter(event -> event.draft() || isPast(lot, event, clock))
        .map(Event::code)
        .collect(Collectors.toSet());
  }

  private static boolean isPast(Lot lot, Event event, BusinessDay clock) {
    return !lot.useBy().isAfter(clock.start(event.date()));
  }

  /** Whether a tub is past its date on the day of an event that it is kept for. */
  public boolean isKeptInVain(Lot lot, String event) {
    return findEvent(event).filter(of -> isPast(lot, of, kitchen.clock())).isPresent();
  }

  /** The events that are agreed: the one place where drafts are left out. */
  public List<Event> events() {
    return allEvents.stream().filter(event -> !event.draft()).toList();
  }

  /** The events that are only asked for. */
  public List<Event> drafts() {
    return allEvents.stream().filter(Event::draft).toList();
  }

  /** An event by its code, be it a draft. */
  public Optional<Event> findEvent(String code) {
    return allEvents.stream().filter(event -> event.code().equals(code)).findFirst();
  }

  public Ingredient ingredient(String code) {
    Ingredient found = ingredients.get(code);
    if (found == null) {
      throw new IllegalArgumentException("no ingredient " + code);
    }
    return found;
  }

  public Optional<Person> findPerson(String code) {
    return people.stream().filter(one -> one.code().equals(code)).findFirst();
  }

  /** What somebody is called; the code of one who is in the book no more. */
  public String personName(String code) {
    return findPerson(code).map(Person::name).orElse(code);
  }

  /** What a place is called; one the kitchen does not list goes by its own word. */
  public Text placeName(String place) {
    return places.stream()
        .filter(one -> one.name().equals(place))
        .findFirst()
        .map(Place::called)
        .orElseGet(() -> Text.of(place));
  }

  /** Food costs; it keeps what it has worked out. */
  public Cost cost() {
    return new Cost(formulary, this::ingredient);
  }

  /** This book with other tubs. */
  public KitchenBook withLots(List<Lot> others) {
    return with(allEvents, others);
  }

  /** This book if these drafts were agreed. */
  public KitchenBook agreed(Set<String> drafts) {
    return with(
        allEvents.stream()
            .map(event -> drafts.contains(event.code()) ? event.agreed() : event)
            .toList(),
        lots);
  }

  private KitchenBook with(List<Event> otherEvents, List<Lot> otherLots) {
    return new KitchenBook(
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
        allergens,
        salts,
        tables,
        diets,
        formulary,
        dishes,
        services,
        pars,
        otherEvents,
        deliveries,
        otherLots);
  }
}
