package halfgram.prep.crew;

import halfgram.measure.Message;
import halfgram.prep.Awaited;
import halfgram.prep.KitchenBook;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.prep.schedule.Cook;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What holds a placed task where it is: why it is not earlier, and why it is not later. Times count
 * as touching when less than a slot lies between.
 */
public final class Holding {
  private final KitchenBook book;
  private final PrepSheet sheet;
  private final DayFacts facts;
  private final CrewPlan plan;
  private final Map<String, Task> byId = new HashMap<>();
  private final Question question;

  public Holding(KitchenBook book, PrepSheet sheet, DayFacts facts, CrewPlan plan) {
    this.book = book;
    this.sheet = sheet;
    this.facts = facts;
    this.plan = plan;
    sheet.tasks().forEach(task -> byId.put(task.id(), task));
    question = Question.of(book, sheet, facts);
  }

  /**
   * One thing that holds a task.
   *
   * @param task the other task, where there is one
   */
  public record Hold(Message said, Optional<String> task) {}

  /** Why it does not start earlier; what waits for time alone first. */
  public List<Hold> notEarlier(Task task) {
    Optional<Placed> here = plan.find(task.id());
    if (here.isEmpty()) {
      return List.of();
    }
    Instant start = here.get().start();
    Optional<Hold> pinned = pinned(task, here.get());
    if (pinned.isPresent()) {
      return List.of(pinned.get());
    }
    List<Hold> holds = new ArrayList<>();
    for (Task.Link link : task.links()) {
      Placed before = plan.placed().get(link.task());
      Task earlier = byId.get(link.task());
      if (before != null && earlier != null && touch(before.end().plus(link.min()), start)) {
        holds.add(
            new Hold(
                Message.of(
                    link.min().isZero() ? "holding.after" : "holding.after-rest",
                    TaskTimes.name(earlier),
                    before.end(),
                    link.min(),
                    link.reason().source()),
                Optional.of(earlier.id())));
      }
    }
    for (Awaited one : sheet.awaited(task)) {
      if (one.from().filter(from -> touch(from, start)).isPresent()) {
        holds.add(
            new Hold(
                Message.of(
                    "nofit.delivery",
                    one.delivery().supplier(),
                    one.from().get(),
                    TaskTimes.name(task)),
                Optional.empty()));
      }
    }
    for (Placed.Hands hands : here.get().hands()) {
      hands.people().forEach(who -> notEarlier(task, who, hands.from()).ifPresent(holds::add));
    }
    for (Placed.Unit unit : here.get().machines()) {
      usedUntil(task, unit, start).ifPresent(holds::add);
    }
    if (holds.isEmpty() && touch(facts.now(), start)) {
      holds.add(new Hold(Message.of("nofit.now", facts.now()), Optional.empty()));
    }
    return holds;
  }

  /** Why it does not start later. */
  public List<Hold> notLater(Task task) {
    Optional<Placed> here = plan.find(task.id());
    if (here.isEmpty()) {
      return List.of();
    }
    Placed placed = here.get();
    Optional<Hold> pinned = pinned(task, placed);
    if (pinned.isPresent()) {
      return List.of(pinned.get());
    }
    List<Hold> holds = new ArrayList<>();
    for (Task other : sheet.tasks()) {
      Placed after = plan.placed().get(other.id());
      for (Task.Link link : other.links()) {
        if (after != null
            && link.task().equals(task.id())
            && touch(placed.end().plus(link.min()), after.start())) {
          holds.add(
              new Hold(
                  Message.of(
                      link.min().isZero() ? "holding.before" : "holding.before-rest",
                      TaskTimes.name(other),
                      after.start(),
                      link.min(),
                      link.reason().source()),
                  Optional.of(other.id())));
        }
      }
    }
    if (touch(placed.end(), task.end()) || placed.end().isAfter(task.end())) {
      holds.add(
          new Hold(
              Message.of("holding.due", new Levers(book, sheet, facts).serves(task), task.end()),
              Optional.empty()));
    }
    for (Placed.Hands hands : placed.hands()) {
      hands.people().forEach(who -> notLater(task, who, hands.to()).ifPresent(holds::add));
    }
    for (Placed.Unit unit : placed.machines()) {
      usedFrom(task, unit, placed.end()).ifPresent(holds::add);
    }
    return holds;
  }

  /** A chef's hand: whatever else is beside it, that is what holds it. */
  private Optional<Hold> pinned(Task task, Placed placed) {
    return Optional.ofNullable(facts.pins().get(task.id()))
        .filter(pin -> touch(pin.start(), placed.start()))
        .map(
            pin ->
                new Hold(
                    Message.of("holding.pinned", TaskTimes.name(task), placed.start()),
                    Optional.empty()));
  }

  private static boolean touch(Instant one, Instant other) {
    return Duration.between(one, other).abs().compareTo(Slots.SLOT.multipliedBy(2)) < 0;
  }

  private String name(String person) {
    return book.personName(person);
  }

  private Optional<Hold> notEarlier(Task task, String person, Instant start) {
    return busyUntil(task, person, start)
        .or(() -> begins(person, start) ? Optional.of(comes(person, start)) : Optional.empty());
  }

  private Optional<Hold> notLater(Task task, String person, Instant end) {
    return busyFrom(task, person, end)
        .or(() -> ends(person, end) ? Optional.of(leaves(person, end)) : Optional.empty());
  }

  private Hold comes(String person, Instant start) {
    return gap(person, start, true)
        .map(gap -> until(person, gap))
        .orElseGet(() -> free("holding.shift-begins", person, shift(person, start, true)));
  }

  private Hold leaves(String person, Instant end) {
    return gap(person, end, false)
        .map(gap -> from(person, gap))
        .orElseGet(() -> free("holding.shift-ends", person, shift(person, end, false)));
  }

  /** When somebody comes or leaves, to the minute, where that is the slot of a moment. */
  private Instant shift(String person, Instant moment, boolean comes) {
    return present(person, moment).stream()
        .flatMap(one -> one.hours().stream())
        .map(hours -> comes ? hours.start() : hours.end())
        .filter(edge -> isSlot(edge, moment, comes))
        .findFirst()
        .orElse(moment);
  }

  private Optional<Present> present(String person, Instant moment) {
    LocalDate day = book.kitchen().clock().of(moment);
    return book.findPerson(person).map(one -> Present.of(book, facts, one, day));
  }

  private boolean isSlot(Instant edge, Instant moment, boolean begins) {
    return begins
        ? question.slots().up(edge) == question.slots().down(moment)
        : question.slots().down(edge) == question.slots().up(moment);
  }

  /** The break or the fixed block that ends, or begins, for somebody who is there around it. */
  private Optional<Present.Gap> gap(String person, Instant moment, boolean ends) {
    return present(person, moment).stream()
        .flatMap(one -> one.gaps().stream().filter(gap -> isAt(one, gap, moment, ends)))
        .findFirst();
  }

  private boolean isAt(Present one, Present.Gap gap, Instant moment, boolean ends) {
    Instant edge = ends ? gap.window().end() : gap.window().start();
    return isSlot(edge, moment, ends)
        && one.hours().stream()
            .anyMatch(hours -> hours.start().isBefore(edge) && edge.isBefore(hours.end()));
  }

  private Hold until(String person, Present.Gap gap) {
    Instant end = gap.window().end();
    return gap.name()
        .map(name -> Message.of("holding.block-until", name(person), name, end))
        .map(said -> new Hold(said, Optional.empty()))
        .orElseGet(() -> free("holding.break-until", person, end));
  }

  private Hold from(String person, Present.Gap gap) {
    Instant start = gap.window().start();
    return gap.name()
        .map(name -> Message.of("holding.block-from", name(person), name, start))
        .map(said -> new Hold(said, Optional.empty()))
        .orElseGet(() -> free("holding.break-from", person, start));
  }

  private Hold free(String key, String person, Instant at) {
    return new Hold(Message.of(key, name(person), at), Optional.empty());
  }

  private Optional<Hold> busyUntil(Task task, String person, Instant start) {
    return others(task)
        .flatMap(
            one ->
                by(one, person)
                    .map(Placed.Hands::to)
                    .filter(to -> touch(to, start))
                    .map(to -> hold("holding.does-until", name(person), one, to)))
        .findFirst()
        .or(
            () ->
                washes(person)
                    .filter(one -> touch(one.to(), start))
                    .map(one -> washing("holding.washes-until", one, one.to()))
                    .findFirst())
        .or(
            () ->
                plates(person)
                    .filter(one -> touch(one.to(), start))
                    .map(one -> plating("holding.plates-until", person, one, one.to()))
                    .findFirst());
  }

  private Optional<Hold> busyFrom(Task task, String person, Instant end) {
    return others(task)
        .flatMap(
            one ->
                by(one, person)
                    .map(Placed.Hands::from)
                    .filter(from -> touch(end, from))
                    .map(from -> hold("holding.does-from", name(person), one, from)))
        .findFirst()
        .or(
            () ->
                washes(person)
                    .filter(one -> touch(end, one.from()))
                    .map(one -> washing("holding.washes-from", one, one.from()))
                    .findFirst())
        .or(
            () ->
                plates(person)
                    .filter(one -> touch(end, one.from()))
                    .map(one -> plating("holding.plates-from", person, one, one.from()))
                    .findFirst());
  }

  private Stream<Washed> washes(String person) {
    return plan.washes().stream().filter(one -> one.person().equals(person));
  }

  private Stream<Plated> plates(String person) {
    return plan.platings().stream().filter(one -> one.people().contains(person));
  }

  private Hold plating(String key, String person, Plated line, Instant at) {
    return new Hold(
        Message.of(key, name(person), Levers.dish(book, line.dish()), at), Optional.empty());
  }

  private Hold washing(String key, Washed one, Instant at) {
    Message said = Message.of(key, name(one.person()), machine(one.unit()), at);
    return new Hold(said, Optional.of(one.before()).filter(byId::containsKey));
  }

  private static Stream<Placed.Hands> by(Placed placed, String person) {
    return placed.hands().stream().filter(hands -> hands.people().contains(person));
  }

  private Optional<Hold> usedUntil(Task task, Placed.Unit unit, Instant start) {
    Duration wash = wash(unit);
    return others(task)
        .filter(one -> one.machines().contains(unit))
        .filter(one -> touch(one.end(), start) || touch(one.end().plus(wash), start))
        .map(one -> hold("holding.used-until", machine(unit), one, one.end()))
        .findFirst();
  }

  private Optional<Hold> usedFrom(Task task, Placed.Unit unit, Instant end) {
    Duration wash = wash(unit);
    return others(task)
        .filter(one -> one.machines().contains(unit))
        .filter(one -> touch(end, one.start()) || touch(end.plus(wash), one.start()))
        .map(one -> hold("holding.used-from", machine(unit), one, one.start()))
        .findFirst();
  }

  private Stream<Placed> others(Task task) {
    return plan.placed().values().stream()
        .filter(one -> !one.task().equals(task.id()) && byId.containsKey(one.task()));
  }

  private Hold hold(String key, Object who, Placed other, Instant when) {
    Task task = byId.get(other.task());
    Object name = task == null ? other.task() : TaskTimes.name(task);
    return new Hold(Message.of(key, who, name, when), Optional.of(other.task()));
  }

  private Duration wash(Placed.Unit unit) {
    return book.equipment().containsKey(unit.equipment())
        ? java.util.Objects.requireNonNull(book.equipment().get(unit.equipment())).wash()
        : Duration.ZERO;
  }

  private Object machine(Placed.Unit unit) {
    return book.equipment().containsKey(unit.equipment())
        ? java.util.Objects.requireNonNull(book.equipment().get(unit.equipment())).name()
        : unit.equipment();
  }

  /** Whether somebody comes, or comes back from a break, at a moment. */
  private boolean begins(String person, Instant moment) {
    int slot = question.slots().down(moment);
    return spans(person).stream().anyMatch(span -> span.from() == slot);
  }

  private boolean ends(String person, Instant moment) {
    int slot = question.slots().up(moment);
    return spans(person).stream().anyMatch(span -> span.to() == slot);
  }

  private List<Cook.Span> spans(String person) {
    return question.day().cooks().stream()
        .filter(cook -> cook.id().equals(person))
        .flatMap(cook -> cook.here().stream())
        .toList();
  }
}
