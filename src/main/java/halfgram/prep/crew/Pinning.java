package halfgram.prep.crew;

import halfgram.measure.Message;
import halfgram.measure.Window;
import halfgram.prep.Awaited;
import halfgram.prep.KitchenBook;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.station.Equipment;
import halfgram.station.Person;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * Whether a task can stay where the chef wants it.
 *
 * <p>Rules. What has begun does not move, and nothing starts in the past, before the kitchen can
 * know of its goods, or before what it waits for. Whoever does it is there all the while and can
 * work the station. What is begun or pinned itself holds its people and its machines; everything
 * else makes way.
 */
public final class Pinning {
  private final KitchenBook book;
  private final PrepSheet sheet;
  private final DayFacts facts;
  private final CrewPlan plan;

  /**
   * @param facts with the pins there are already
   * @param plan in force
   */
  public Pinning(KitchenBook book, PrepSheet sheet, DayFacts facts, CrewPlan plan) {
    this.book = book;
    this.sheet = sheet;
    this.facts = facts;
    this.plan = plan;
  }

  /** Whether a pin that was taken can be kept: its task is to do, its time is not over. */
  public static boolean isHeld(KitchenBook book, DayFacts facts, Task task, DayFacts.Pin pin) {
    Window work = work(facts, task, pin.start());
    return facts.isToDo(task.id())
        && !pin.start().plus(Adrift.GRACE).isBefore(facts.now())
        && pin.people().stream().allMatch(code -> isThere(book, facts, code, work))
        && works(book, facts, task, pin.start()).isEmpty();
  }

  /** Why a task cannot be there; empty when it can. */
  public Optional<Message> refuse(Task task, DayFacts.Pin pin) {
    if (facts.isOver(task.id())) {
      return Optional.of(Message.of("lanes.refused.over", TaskTimes.name(task)));
    }
    if (facts.onIt(task.id()).isPresent()) {
      Instant since = facts.onIt(task.id()).get().since();
      return Optional.of(Message.of("lanes.refused.begun", TaskTimes.name(task), since));
    }
    if (pin.start().isBefore(facts.now())) {
      return Optional.of(Message.of("lanes.refused.past", facts.now()));
    }
    Instant end = book.kitchen().clock().start(sheet.request().last().plusDays(1));
    if (!pin.start().isBefore(end)) {
      return Optional.of(Message.of("lanes.refused.day", sheet.request().last()));
    }
    return waits(task, pin)
        .or(() -> people(task, pin))
        .or(() -> works(book, facts, task, pin.start()))
        .or(() -> machines(task, pin));
  }

  // ---- what it waits for ----

  private Optional<Message> waits(Task task, DayFacts.Pin pin) {
    for (Awaited one : sheet.awaited(task)) {
      if (one.from().isPresent() && pin.start().isBefore(one.from().get())) {
        return Optional.of(
            Message.of(
                "lanes.refused.goods",
                TaskTimes.name(task),
                one.delivery().supplier(),
                one.from().get()));
      }
    }
    for (Task.Link link : task.links()) {
      Optional<Instant> end =
          facts.doneAt(link.task()).or(() -> plan.find(link.task()).map(Placed::end));
      Optional<Task> earlier = find(link.task());
      if (end.isPresent() && earlier.isPresent() && task.kind() != Task.Kind.FRESH_BATH) {
        Instant from = end.get().plus(link.min());
        if (pin.start().isBefore(from)) {
          return Optional.of(
              Message.of("lanes.refused.waits", TaskTimes.name(earlier.get()), from));
        }
      }
    }
    return Optional.empty();
  }

  private Optional<Task> find(String id) {
    return sheet.tasks().stream().filter(task -> task.id().equals(id)).findFirst();
  }

  // ---- who does it ----

  private Optional<Message> people(Task task, DayFacts.Pin pin) {
    Window work = work(facts, task, pin.start());
    int needed = book.people().isEmpty() || work.start().equals(work.end()) ? 0 : task.hands();
    if (pin.people().stream().distinct().count() != needed) {
      return Optional.of(
          Message.of("lanes.refused.hands", TaskTimes.name(task), needed, pin.people().size()));
    }
    for (String code : pin.people()) {
      Optional<Person> person = book.findPerson(code);
      if (person.isEmpty()) {
        return Optional.of(Message.of("lanes.refused.nobody", code));
      }
      String name = person.get().name();
      if (!person.get().stations().contains(task.station())) {
        return Optional.of(Message.of("lanes.refused.station", name, station(task)));
      }
      if (!isThere(book, facts, code, work)) {
        return Optional.of(Message.of("lanes.refused.not-there", name, work.start(), work.end()));
      }
      Optional<Placed> other = held(task, one -> meeting(one, code, work).isPresent());
      if (other.isPresent()) {
        Instant until = meeting(other.get(), code, work).orElseThrow().to();
        return Optional.of(Message.of("lanes.refused.busy", name, name(other.get().task()), until));
      }
    }
    return Optional.empty();
  }

  private Object station(Task task) {
    return Optional.ofNullable(book.stations().get(task.station()))
        .<Object>map(one -> one.name())
        .orElse(task.station());
  }

  /** From when until when hands are on it. */
  private static Window work(DayFacts facts, Task task, Instant start) {
    Duration hands =
        Duration.between(task.start(), task.handsOff())
            .plus(facts.more().getOrDefault(task.id(), Duration.ZERO));
    return new Window(start, start.plus(hands));
  }

  /** Whether somebody is at work in every slot of a span. */
  private static boolean isThere(KitchenBook book, DayFacts facts, String code, Window work) {
    Slots slots = Slots.startingAt(work.start());
    int count = Math.max(1, slots.up(work.end()));
    boolean[] there = new boolean[count];
    new Attendance(book, facts, slots, count)
        .cooks().stream()
            .filter(cook -> cook.id().equals(code))
            .flatMap(cook -> cook.here().stream())
            .forEach(span -> Arrays.fill(there, span.from(), span.to(), true));
    for (boolean slot : there) {
      if (!slot) {
        return false;
      }
    }
    return true;
  }

  // ---- on what ----

  /** A machine of it that does not work then. */
  private static Optional<Message> works(
      KitchenBook book, DayFacts facts, Task task, Instant start) {
    Window span = new Window(start, start.plus(length(facts, task)));
    for (String code : machines(task)) {
      Equipment equipment = book.equipment().get(code);
      int missing = missing(facts, code, span);
      if (equipment != null && missing >= equipment.units()) {
        return Optional.of(Message.of("lanes.refused.broken", equipment.name()));
      }
    }
    return Optional.empty();
  }

  private static int missing(DayFacts facts, String code, Window span) {
    return facts.broken().stream()
        .filter(one -> one.equipment().equals(code) && meets(span, one.window()))
        .mapToInt(DayFacts.Broken::units)
        .sum();
  }

  private Optional<Message> machines(Task task, DayFacts.Pin pin) {
    Window span = new Window(pin.start(), pin.start().plus(length(facts, task)));
    for (String code : machines(task)) {
      Equipment equipment = book.equipment().get(code);
      if (equipment == null) {
        continue;
      }
      Predicate<Placed> there =
          one ->
              one.machines().stream().anyMatch(unit -> unit.equipment().equals(code))
                  && meets(span, new Window(one.start(), one.end()));
      long taken =
          plan.placed().values().stream().filter(one -> isHeld(task, one)).filter(there).count();
      if (taken + missing(facts, code, span) >= equipment.units()) {
        Optional<Placed> other = held(task, there);
        return Optional.of(
            other.isEmpty()
                ? Message.of("lanes.refused.broken", equipment.name())
                : Message.of(
                    "lanes.refused.taken",
                    equipment.name(),
                    name(other.get().task()),
                    other.get().end()));
      }
    }
    return Optional.empty();
  }

  private static List<String> machines(Task task) {
    return task.machines().stream().map(use -> use.equipment()).distinct().toList();
  }

  private static Duration length(DayFacts facts, Task task) {
    return Duration.between(task.start(), task.end())
        .plus(facts.more().getOrDefault(task.id(), Duration.ZERO));
  }

  // ---- what does not make way ----

  private Optional<Placed> held(Task task, Predicate<Placed> which) {
    return plan.placed().values().stream()
        .filter(one -> isHeld(task, one))
        .filter(which)
        .findFirst();
  }

  /** Begun, or pinned itself. */
  private boolean isHeld(Task task, Placed other) {
    Map<String, DayFacts.Pin> pins = facts.pins();
    return !other.task().equals(task.id())
        && !facts.isOver(other.task())
        && (facts.onIt(other.task()).isPresent() || pins.containsKey(other.task()));
  }

  /** When somebody has a hand in it during some work. */
  private static Optional<Placed.Hands> meeting(Placed placed, String code, Window work) {
    return placed.hands().stream()
        .filter(one -> one.people().contains(code))
        .filter(one -> meets(work, new Window(one.from(), one.to())))
        .findFirst();
  }

  private static boolean meets(Window one, Window other) {
    return one.start().isBefore(other.end()) && other.start().isBefore(one.end());
  }

  private Object name(String id) {
    return find(id).<Object>map(TaskTimes::name).orElse(id);
  }
}
