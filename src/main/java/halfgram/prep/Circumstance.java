package halfgram.prep;

import halfgram.ingredient.Scale;
import halfgram.kitchen.Kitchen;
import halfgram.menu.Dish;
import halfgram.station.Block;
import halfgram.station.Container;
import halfgram.station.Equipment;
import halfgram.station.Person;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;

/** What of the book a day's work is done by, though no task of its sheet says so. */
public enum Circumstance {
  /** Who is in when: people, their shifts, the opening hours, what everybody does at once. */
  HOURS,
  /** What work goes on in: machines, vessels, places. */
  KIT,
  /** On what it is weighed and how closely: scales, tolerances, the water. */
  WEIGHING,
  /** How the dishes served are plated and finished. */
  PLATING;

  /**
   * Those in which two books differ.
   *
   * @param served codes of the dishes that matter
   */
  static SortedSet<Circumstance> between(KitchenBook from, KitchenBook to, Set<String> served) {
    SortedSet<Circumstance> found = new TreeSet<>();
    for (Circumstance one : values()) {
      if (!one.of(from, served).equals(one.of(to, served))) {
        found.add(one);
      }
    }
    return found;
  }

  /** What of it there is in a book: names of people and things are none of it. */
  private List<Object> of(KitchenBook book, Set<String> served) {
    Kitchen kitchen = book.kitchen();
    return switch (this) {
      case HOURS ->
          List.of(
              book.people().stream().map(Circumstance::there).toList(),
              book.blocks().stream().map(Circumstance::away).toList(),
              kitchen.opens(),
              kitchen.closes());
      case KIT ->
          List.of(
              book.equipment().values().stream().map(Circumstance::works).toList(),
              book.containers().values().stream().map(Circumstance::holds).toList(),
              book.places());
      case WEIGHING ->
          List.of(
              book.scales().stream().map(Circumstance::weighs).toList(),
              kitchen.doseTolerance(),
              kitchen.baseTolerance(),
              kitchen.waterHardness());
      case PLATING -> served.stream().<Object>map(code -> plated(book, code)).toList();
    };
  }

  private static List<Object> there(Person of) {
    return List.of(of.code(), of.stations(), of.shifts());
  }

  private static List<Object> away(Block of) {
    return List.of(of.days(), of.start(), of.end(), of.stations());
  }

  private static List<Object> works(Equipment of) {
    return List.of(
        of.code(), of.station(), of.units(), of.limits(), of.touches(), of.wash(), of.drying());
  }

  private static List<Object> holds(Container of) {
    return List.of(of.code(), of.volume(), of.tare(), of.count(), of.inside());
  }

  private static List<Object> weighs(Scale of) {
    return List.of(
        of.code(), of.step(), of.verification(), of.max(), of.accuracy(), of.reads(), of.station());
  }

  private static List<Object> plated(KitchenBook book, String code) {
    Optional<Dish> dish = Optional.ofNullable(book.dishes().get(code));
    return List.of(dish.flatMap(Dish::plating), dish.map(Dish::finish).orElse(List.of()));
  }
}
