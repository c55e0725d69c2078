package halfgram.prep.crew;

import halfgram.measure.Message;
import halfgram.prep.KitchenBook;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.prep.schedule.project.Network;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Why a day does not fit: in this order, times that contradict each other whoever does it; nobody
 * who can; two tasks that need the same at once; more work than time in some stretch; and where
 * none of these is it, what holds the late task where it is. Dishes that there are too few to plate
 * come with nobody who can. With nothing late, nothing left out and hands enough there is nothing
 * to tell.
 */
public final class Reasons {
  private static final int MOST = 12;

  private final KitchenBook book;
  private final PrepSheet sheet;
  private final DayFacts facts;
  private final CrewPlan plan;
  private final Levers levers;
  private Optional<Holding> held = Optional.empty();
  private final List<NoFit> found = new ArrayList<>();
  private final Map<String, Integer> told = new HashMap<>();
  private final Set<String> explained = new HashSet<>();

  private Reasons(KitchenBook book, PrepSheet sheet, DayFacts facts, CrewPlan plan) {
    this.book = book;
    this.sheet = sheet;
    this.facts = facts;
    this.plan = plan;
    this.levers = new Levers(book, sheet, facts);
  }

  /** Every reason, the kinds in their order; empty when all has its place in time. */
  public static List<NoFit> of(KitchenBook book, PrepSheet sheet, DayFacts facts, CrewPlan plan) {
    Reasons reasons = new Reasons(book, sheet, facts, plan);
    List<Task> wrong = reasons.wrong();
    if (wrong.isEmpty()) {
      reasons.plating();
      return List.copyOf(reasons.found);
    }
    Optional<Known> times = reasons.times();
    reasons.found.forEach(one -> reasons.explained.addAll(one.tasks()));
    Optional<Stretches> stretches = times.map(known -> known.stretches(reasons));
    stretches.ifPresent(there -> wrong.forEach(task -> reasons.nobody(task, there)));
    reasons.plating();
    stretches.ifPresent(
        there -> {
          reasons.found.addAll(there.bothAtOnce(reasons.levers));
          reasons.found.addAll(there.tooMuch(reasons.levers));
        });
    reasons.found.forEach(one -> reasons.explained.addAll(one.tasks()));
    wrong.forEach(reasons::together);
    return List.copyOf(reasons.found.subList(0, Math.min(MOST, reasons.found.size())));
  }

  /** Tasks left out, and those that end after they are due; a fresh bath is its run's. */
  private List<Task> wrong() {
    return sheet.tasks().stream()
        .filter(task -> task.kind() != Task.Kind.FRESH_BATH)
        .filter(
            task ->
                plan.leftOut().contains(task.id())
                    || plan.find(task.id())
                        .filter(placed -> placed.end().isAfter(task.end().plus(Slots.SLOT)))
                        .isPresent())
        .toList();
  }

  /** The times that are left once every contradiction has been told. */
  private record Known(TaskTimes net, Network.Times times) {
    private Stretches stretches(Reasons of) {
      return new Stretches(
          of.book, of.sheet, of.facts, of.plan, of.told, times, net, Set.copyOf(of.explained));
    }
  }

  /** Tells of every contradiction among the times; the earliest times once those are let go. */
  private Optional<Known> times() {
    Instant opens = book.kitchen().open(sheet.request().from()).start();
    for (int round = 0; round < MOST; round++) {
      TaskTimes net = new TaskTimes(sheet, facts, opens, told);
      Optional<Known> known =
          net.earliest()
              .fold(
                  times -> Optional.of(new Known(net, times)),
                  cycle -> {
                    tell(net, cycle);
                    return Optional.empty();
                  });
      if (known.isPresent()) {
        return known;
      }
    }
    return Optional.empty();
  }

  /** One contradiction; its due time is let go by as much. */
  private void tell(TaskTimes net, Network.Cycle cycle) {
    List<TaskTimes.Rule> rules = cycle.arcs().stream().map(net::rule).toList();
    List<Message> chain = rules.stream().map(TaskTimes.Rule::said).toList();
    List<String> tasks =
        rules.stream().flatMap(rule -> rule.task().stream()).map(Task::id).distinct().toList();
    Duration shortBy = Duration.ofMinutes(cycle.shortBy());
    Optional<Task> due =
        rules.stream()
            .filter(rule -> rule.kind() == TaskTimes.Kind.DUE)
            .flatMap(rule -> rule.task().stream())
            .findFirst();
    Task about =
        due.or(() -> rules.stream().flatMap(rule -> rule.task().stream()).findFirst())
            .orElseThrow();
    Message what =
        due.isPresent()
            ? Message.of("nofit.times", levers.serves(about), shortBy)
            : Message.of("nofit.contradict", TaskTimes.name(about), shortBy);
    found.add(
        new NoFit(
            NoFit.Kind.TIMES, what, shortBy, chain, levers.times(rules, about, shortBy), tasks));
    told.merge(about.id(), cycle.shortBy(), Integer::sum);
  }

  /** Dishes for which there are too few to plate them. */
  private void plating() {
    for (Plated line : plan.platings()) {
      if (line.missing() == 0 || !line.to().isAfter(facts.now())) {
        continue;
      }
      Duration missing = Duration.between(line.from(), line.to()).multipliedBy(line.missing());
      found.add(
          new NoFit(
              NoFit.Kind.NOBODY,
              Message.of(
                  "nofit.plating",
                  Levers.dish(book, line.dish()),
                  line.needed(),
                  line.from(),
                  line.to(),
                  line.people().size()),
              missing,
              new Spare(book, facts, plan).longest(line.station(), line.from(), line.to()),
              line.station()
                  .map(where -> levers.hands(where, line.from(), line.to(), missing))
                  .orElse(List.of()),
              List.of()));
    }
  }

  private void nobody(Task task, Stretches stretches) {
    stretches.nobody(task, levers).ifPresent(found::add);
  }

  /** What holds a late task where it is, back to what begins it. */
  private void together(Task task) {
    if (explained.contains(task.id())) {
      return;
    }
    boolean leftOut = plan.leftOut().contains(task.id());
    Duration shortBy =
        plan.find(task.id())
            .map(placed -> Duration.between(task.end(), placed.end()))
            .orElse(Duration.ZERO);
    Message what =
        leftOut
            ? Message.of("nofit.left-out", TaskTimes.name(task), levers.serves(task))
            : Message.of("nofit.late", TaskTimes.name(task), levers.serves(task), shortBy);
    List<Message> chain = leftOut ? free(task) : new ArrayList<>();
    List<String> tasks = new ArrayList<>(List.of(task.id()));
    Holding holding = holding();
    Optional<Holding.Hold> before = holding.notEarlier(task).stream().findFirst();
    while (before.isPresent() && tasks.size() <= MOST) {
      chain.add(0, before.get().said());
      Optional<String> next = before.get().task().filter(id -> !tasks.contains(id));
      next.ifPresent(tasks::add);
      before =
          next.flatMap(id -> sheet.tasks().stream().filter(t -> t.id().equals(id)).findFirst())
              .flatMap(other -> holding.notEarlier(other).stream().findFirst());
    }
    explained.addAll(tasks);
    task.make().version().steps().forEach(s -> explained.add(task.make().id() + "/" + s.code()));
    found.add(
        new NoFit(
            NoFit.Kind.TOGETHER, what, shortBy, chain, levers.together(task, shortBy), tasks));
  }

  /** Worked out once, and only when something is asked of it. */
  private Holding holding() {
    Holding there = held.orElseGet(() -> new Holding(book, sheet, facts, plan));
    held = Optional.of(there);
    return there;
  }

  /** The longest stretch for which each of those who could do it has nothing else to do. */
  private List<Message> free(Task task) {
    Instant to = task.handsOff();
    Instant from = to.minus(Duration.between(task.start(), to).multipliedBy(2));
    from = from.isBefore(facts.now()) ? facts.now() : from;
    return to.isAfter(from) ? new Spare(book, facts, plan).longest(task, from, to) : List.of();
  }

  static long minutes(Instant from, Instant to) {
    return from.until(to, ChronoUnit.MINUTES);
  }
}
