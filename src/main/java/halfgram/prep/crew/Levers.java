package halfgram.prep.crew;

import halfgram.lot.Lot;
import halfgram.measure.Amount;
import halfgram.measure.BusinessDay;
import halfgram.measure.Message;
import halfgram.menu.Dish;
import halfgram.prep.KitchenBook;
import halfgram.prep.PrepSheet;
import halfgram.prep.ServiceRun;
import halfgram.prep.Task;
import halfgram.station.Person;
import halfgram.station.Station;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What one can do when work does not fit. A shorter stand is offered only where it is one of
 * quality; a limit of safety is never among them.
 */
final class Levers {
  private final KitchenBook book;
  private final PrepSheet sheet;
  private final DayFacts facts;

  Levers(KitchenBook book, PrepSheet sheet, DayFacts facts) {
    this.book = book;
    this.sheet = sheet;
    this.facts = facts;
  }

  /** What the services are called that a task is for in the end; the first is enough. */
  Object serves(Task task) {
    return service(task).<Object>map(ServiceRun::name).orElseGet(() -> TaskTimes.name(task));
  }

  /** The first service that a task is for in the end. */
  static Optional<ServiceRun> service(PrepSheet sheet, Task task) {
    Deque<String> todo = new ArrayDeque<>(task.serves());
    Set<String> seen = new HashSet<>();
    while (!todo.isEmpty()) {
      String id = todo.poll();
      Optional<ServiceRun> run =
          sheet.allServices().stream().filter(one -> one.id().equals(id)).findFirst();
      if (run.isPresent()) {
        return run;
      }
      if (seen.add(id)) {
        sheet.makes().stream()
            .filter(make -> make.id().equals(id))
            .forEach(make -> make.served().forEach(need -> todo.add(need.user())));
      }
    }
    return Optional.empty();
  }

  /** Against times that contradict each other. */
  List<Message> times(List<TaskTimes.Rule> rules, Task about, Duration shortBy) {
    List<Message> levers = new ArrayList<>();
    Set<String> makes = new HashSet<>();
    for (TaskTimes.Rule rule : rules) {
      rule.task().ifPresent(task -> stock(task, makes).ifPresent(levers::add));
      if (rule.kind() == TaskTimes.Kind.DELIVERY) {
        rule.task().ifPresent(t -> levers.add(Message.of("lever.delivery", TaskTimes.name(t))));
      }
      boolean tasted =
          !rule.safety()
              && (rule.kind() == TaskTimes.Kind.LEAST || rule.kind() == TaskTimes.Kind.MOST);
      if (tasted) {
        rule.task().ifPresent(t -> levers.add(Message.of("lever.taste", TaskTimes.name(t))));
      }
    }
    if (rules.stream().anyMatch(rule -> rule.kind() == TaskTimes.Kind.DUE)) {
      later(about, shortBy).ifPresent(levers::add);
    }
    return levers;
  }

  /** A later service, where one waits for it and the house rules let work and serve so late. */
  Optional<Message> later(Task task, Duration by) {
    return by.isZero() || by.isNegative()
        ? Optional.empty()
        : service(task)
            .filter(run -> isOpen(run, task, by))
            .map(run -> Message.of(later(run), run.name(), by));
  }

  private String later(ServiceRun run) {
    return run.window().start().isAfter(facts.now()) ? "lever.later" : "lever.later-left";
  }

  /** Whether a service still begins, and a task for it is done, before the kitchen closes. */
  private boolean isOpen(ServiceRun run, Task task, Duration by) {
    BusinessDay clock = book.kitchen().clock();
    LocalDate day = clock.of(run.window().start());
    Instant off = task.handsOff();
    return !run.window().start().plus(by).isAfter(book.kitchen().open(day).end())
        && !off.plus(by).isAfter(book.kitchen().open(clock.of(off)).end())
        && run.window().end().plus(by).isBefore(clock.start(day.plusDays(1)));
  }

  Optional<ServiceRun> service(Task task) {
    return service(sheet, task);
  }

  /** Something of the same in the house that nothing takes, and that keeps until it is eaten. */
  private Optional<Message> stock(Task task, Set<String> makes) {
    if (!makes.add(task.make().id())) {
      return Optional.empty();
    }
    Map<Lot, Amount> left = sheet.leftTubs(book);
    return book.lots().stream()
        .filter(lot -> lot.component().formula().equals(task.version().formula()))
        .filter(lot -> keeps(lot, task.make().eaten()))
        .filter(lot -> lot.isFrozen() || left.containsKey(lot))
        .findFirst()
        .map(
            lot ->
                Message.of(
                    lot.isFrozen() ? "lever.frozen" : "lever.stock",
                    lot.code(),
                    task.version().name(),
                    left.getOrDefault(lot, lot.left())));
  }

  /** Until a moment; of a frozen one, thawed now. */
  private boolean keeps(Lot lot, Instant until) {
    Instant end = lot.frozen().map(ice -> facts.now().plus(ice.life())).orElse(lot.useBy());
    return lot.useBy().isAfter(facts.now()) && !end.isBefore(until);
  }

  /** Somebody for a station in a stretch: who could be shown, and who could be called. */
  List<Message> hands(String station, Instant from, Instant to, Duration missing) {
    List<Message> levers = new ArrayList<>();
    Object name = station(station);
    for (Person person : book.people()) {
      boolean can = person.stations().contains(station);
      boolean here = isHere(person, from, to);
      if (can && !here && !isOff(person)) {
        levers.add(Message.of("lever.call", person.name(), name, from, to));
      } else if (!can && here) {
        levers.add(Message.of("lever.lend", person.name(), name, from, to));
      }
    }
    if (levers.isEmpty()) {
      levers.add(Message.of("lever.hands", missing, name, from, to));
    }
    return levers;
  }

  /** What a dish is called. */
  static Object dish(KitchenBook book, String code) {
    Dish dish = book.dishes().get(code);
    return dish == null ? code : dish.name();
  }

  Object station(String code) {
    Station station = book.stations().get(code);
    return station == null ? code : station.name();
  }

  /** Whether somebody said of the day that they are not there. */
  private boolean isOff(Person person) {
    return facts.hours().stream().anyMatch(one -> one.person().equals(person.code()));
  }

  private boolean isHere(Person person, Instant from, Instant to) {
    Slots slots = Slots.startingAt(from);
    int count = Math.max(1, slots.up(to));
    return new Attendance(book, facts, slots, count)
        .cooks().stream()
            .anyMatch(cook -> cook.id().equals(person.code()) && !cook.here().isEmpty());
  }

  /** Against what is late though each reason alone would leave room. */
  List<Message> together(Task task, Duration shortBy) {
    List<Message> levers = new ArrayList<>();
    stock(task, new HashSet<>()).ifPresent(levers::add);
    later(task, shortBy).ifPresent(levers::add);
    Instant from = task.start().minus(Duration.ofHours(1));
    levers.addAll(hands(task.station(), from, task.end(), shortBy));
    return levers;
  }
}
