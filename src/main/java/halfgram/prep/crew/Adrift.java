package halfgram.prep.crew;

import halfgram.measure.Window;
import halfgram.prep.KitchenBook;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.station.Equipment;
import halfgram.station.Person;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A task for which a crew plan no longer holds.
 *
 * @param task its id; of a plating line, that of the line
 * @param what the code of the person or the machine it is about; empty for the others
 * @param by how late; zero where that says nothing
 */
public record Adrift(String task, Kind kind, String what, Duration by) {
  /** Why it does not hold. */
  public enum Kind {
    /** It should have been started. */
    NOT_STARTED,
    /** It takes longer than its place. */
    OVER,
    /** Whoever was to do it is not there. */
    NOT_THERE,
    /** Its machine does not work. */
    BROKEN,
    /** It has no place. */
    NO_PLACE
  }

  /** What is this much later is not late. */
  public static final Duration GRACE = Duration.ofMinutes(10);

  /** What of a plan no longer holds, in the order of the sheet. */
  public static List<Adrift> list(
      KitchenBook book, PrepSheet sheet, DayFacts facts, CrewPlan plan) {
    List<Adrift> adrift = new ArrayList<>();
    for (Task task : sheet.tasks()) {
      Optional<Placed> placed = plan.find(task.id());
      if (facts.isToDo(task.id())) {
        if (placed.isPresent()) {
          toDo(book, facts, plan, placed.get())
              .or(() -> unwashed(book, facts, plan, task.id()))
              .ifPresent(adrift::add);
        } else if (!plan.leftOut().contains(task.id())) {
          adrift.add(new Adrift(task.id(), Kind.NO_PLACE, "", Duration.ZERO));
        }
      } else if (placed.isPresent()) {
        begun(task, facts, placed.get())
            .or(() -> leaves(book, facts, placed.get()))
            .ifPresent(adrift::add);
      }
    }
    for (Plated line : plan.platings()) {
      missing(book, facts, line.hands())
          .filter(code -> line.to().isAfter(facts.now()))
          .filter(code -> !facts.plated().containsKey(line.id()))
          .map(code -> new Adrift(line.id(), Kind.NOT_THERE, code, Duration.ZERO))
          .ifPresent(adrift::add);
    }
    return adrift;
  }

  private static Optional<Adrift> toDo(
      KitchenBook book, DayFacts facts, CrewPlan plan, Placed placed) {
    Duration late = Duration.between(placed.start(), facts.now());
    if (late.compareTo(GRACE) > 0) {
      return Optional.of(new Adrift(placed.task(), Kind.NOT_STARTED, "", late));
    }
    return missing(book, facts, placed)
        .map(code -> new Adrift(placed.task(), Kind.NOT_THERE, code, Duration.ZERO))
        .or(
            () ->
                broken(book, facts, plan, placed)
                    .map(code -> new Adrift(placed.task(), Kind.BROKEN, code, Duration.ZERO)));
  }

  private static Optional<Adrift> begun(Task task, DayFacts facts, Placed placed) {
    return Underway.of(task, facts)
        .map(
            on -> {
              Duration hands = Duration.between(placed.handsOff(), on.handsOff());
              Duration whole = Duration.between(placed.end(), on.end());
              return hands.compareTo(whole) > 0 ? hands : whole;
            })
        .filter(late -> late.compareTo(GRACE) > 0)
        .map(late -> new Adrift(task.id(), Kind.OVER, "", late));
  }

  /** Whoever was to take out at the end what has been begun is not there then. */
  private static Optional<Adrift> leaves(KitchenBook book, DayFacts facts, Placed placed) {
    return Optional.of(placed)
        .filter(one -> facts.onIt(one.task()).isPresent())
        .flatMap(Placed::unload)
        .flatMap(out -> missing(book, facts, out))
        .map(code -> new Adrift(placed.task(), Kind.NOT_THERE, code, Duration.ZERO));
  }

  /** Whoever was to wash a machine for it is not there then. */
  private static Optional<Adrift> unwashed(
      KitchenBook book, DayFacts facts, CrewPlan plan, String task) {
    return plan.washes().stream()
        .filter(wash -> wash.before().equals(task) && wash.to().isAfter(facts.now()))
        .map(wash -> new Placed.Hands(wash.from(), wash.to(), List.of(wash.person())))
        .flatMap(hands -> missing(book, facts, hands).stream())
        .map(code -> new Adrift(task, Kind.NOT_THERE, code, Duration.ZERO))
        .findFirst();
  }

  /** Somebody who was to do it and of whom it was said that they are not there then. */
  private static Optional<String> missing(KitchenBook book, DayFacts facts, Placed placed) {
    return missing(book, facts, placed, Duration.ZERO);
  }

  /** The same for when it is begun so much later than planned. */
  static Optional<String> missing(KitchenBook book, DayFacts facts, Placed placed, Duration later) {
    return placed.hands().stream()
        .map(one -> new Placed.Hands(one.from().plus(later), one.to().plus(later), one.people()))
        .flatMap(one -> missing(book, facts, one).stream())
        .findFirst();
  }

  static Optional<String> missing(KitchenBook book, DayFacts facts, Placed.Hands hands) {
    LocalDate day = book.kitchen().clock().of(hands.from());
    return hands.people().stream()
        .filter(
            code ->
                book.people().stream().map(Person::code).noneMatch(code::equals)
                    || facts.hours().stream()
                        .filter(one -> one.person().equals(code) && one.day().equals(day))
                        .anyMatch(one -> !covers(one, hands)))
        .findFirst();
  }

  /** Whether they are there at both ends: what lies between may be cut by a break. */
  private static boolean covers(DayFacts.Hours hours, Placed.Hands hands) {
    return hours.windows().stream().anyMatch(window -> holds(window, hands.from()))
        && hours.windows().stream().anyMatch(window -> holds(window, last(hands)));
  }

  private static Instant last(Placed.Hands hands) {
    Instant last = hands.to().minusSeconds(1);
    return last.isBefore(hands.from()) ? hands.from() : last;
  }

  private static boolean holds(Window window, Instant moment) {
    return !moment.isBefore(window.start()) && moment.isBefore(window.end());
  }

  /** A machine of which fewer units work than are planned at once while the task is on it. */
  static Optional<String> broken(KitchenBook book, DayFacts facts, CrewPlan plan, Placed placed) {
    return placed.machines().stream()
        .map(Placed.Unit::equipment)
        .distinct()
        .filter(
            code -> {
              Equipment equipment = book.equipment().get(code);
              int missing =
                  facts.broken().stream()
                      .filter(one -> one.equipment().equals(code))
                      .filter(one -> one.window().start().isBefore(placed.end()))
                      .filter(one -> placed.start().isBefore(one.window().end()))
                      .mapToInt(DayFacts.Broken::units)
                      .sum();
              return missing > 0
                  && (equipment == null
                      || atOnce(facts, plan, placed, code) > equipment.units() - missing);
            })
        .findFirst();
  }

  private static long atOnce(DayFacts facts, CrewPlan plan, Placed placed, String code) {
    return plan.placed().values().stream()
        .filter(other -> !facts.isOver(other.task()))
        .filter(other -> other.start().isBefore(placed.end()))
        .filter(other -> placed.start().isBefore(other.end()))
        .flatMap(other -> other.machines().stream())
        .filter(unit -> unit.equipment().equals(code))
        .count();
  }
}
