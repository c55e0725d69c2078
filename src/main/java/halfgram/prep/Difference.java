package halfgram.prep;

import halfgram.formula.FormulaVersion;
import halfgram.formula.Item;
import halfgram.formula.Line;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * What a proposed sheet would change in the one in force, both of the same days.
 *
 * @param services whose times, covers or plates change, also those that come or go
 * @param made what is made of a component in the whole horizon, where that changes
 * @param weighed what is weighed otherwise because another version of its formula is made
 * @param unchanged how many tasks stay as they are
 * @param touched ids of tasks of begun makes that would change: a fault, since begun work stands
 * @param grown begun makes into which more is to be weighed
 * @param misfits that the sheet in force does not have
 * @param held tasks whose earliest start by a delivery comes, goes or changes
 * @param around what changes around the tasks
 */
public record Difference(
    List<Service> services,
    List<Made> made,
    List<Weighed> weighed,
    List<Task> added,
    List<Task> withdrawn,
    List<Changed> changed,
    int unchanged,
    SortedSet<String> touched,
    List<Begun> grown,
    List<Misfit> misfits,
    List<Held> held,
    SortedSet<Circumstance> around) {
  private static final BigDecimal MILLIGRAM = new BigDecimal("0.001");

  /** A service before and after; either is empty when the service comes or goes. */
  public record Service(Optional<ServiceRun> from, Optional<ServiceRun> to, List<Plates> plates) {

    /** Where the why of some of its plates stands after; empty when it has none of them then. */
    public Optional<String> findPath(Plates of) {
      return to.flatMap(
          run ->
              run.plates().stream()
                  .filter(plates -> key(plates).equals(of.key()))
                  .findFirst()
                  .map(plates -> Paths.plates(run, plates)));
    }
  }

  /** Plates of one dish before and after; none is 0. */
  public record Plates(String course, String dish, SortedSet<String> diets, int from, int to) {
    private String key() {
      return course + "/" + dish + "/" + diets;
    }
  }

  /** What is made of an output before and after; none is zero. */
  public record Made(String formula, String output, Amount from, Amount to) {}

  /** What a formula takes of an item before and after, by its versions; none is zero. */
  public record Weighed(String formula, Item item, Amount from, Amount to) {}

  /**
   * A task before and after.
   *
   * @param made what its make gives, where that changes
   */
  public record Changed(Task from, Task to, List<Made> made) {

    /** How much later it starts; negative when earlier. */
    public Duration moved() {
      return Duration.between(from.start(), to.start());
    }
  }

  /** A task and from when it may start before and after; empty when no delivery says. */
  public record Held(Task task, Optional<Instant> from, Optional<Instant> to) {}

  /** Whether accepting it would change nothing. */
  public boolean isEmpty() {
    return services.isEmpty()
        && added.isEmpty()
        && withdrawn.isEmpty()
        && changed.isEmpty()
        && held.isEmpty()
        && around.isEmpty();
  }

  /**
   * As below, with what changes around the tasks.
   *
   * @param book of the sheet in force
   * @param other of the one proposed
   */
  public static Difference of(
      KitchenBook book, PrepSheet inForce, KitchenBook other, PrepSheet proposed) {
    SortedSet<String> served = dishes(inForce);
    served.retainAll(dishes(proposed));
    return of(inForce, proposed, Circumstance.between(book, other, served));
  }

  private static SortedSet<String> dishes(PrepSheet sheet) {
    return sheet.services().stream()
        .flatMap(run -> run.plates().stream())
        .map(plates -> plates.dish().code())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  public static Difference of(PrepSheet inForce, PrepSheet proposed) {
    return of(inForce, proposed, new TreeSet<>());
  }

  private static Difference of(
      PrepSheet inForce, PrepSheet proposed, SortedSet<Circumstance> around) {
    Map<String, Task> before = byId(inForce);
    Map<String, Task> after = byId(proposed);
    List<Task> added =
        proposed.tasks().stream().filter(task -> !before.containsKey(task.id())).toList();
    List<Task> withdrawn =
        inForce.tasks().stream()
            .filter(task -> !after.containsKey(task.id()))
            .filter(task -> proposed.begun().stream().noneMatch(of -> isOver(of, task)))
            .toList();
    List<Changed> changed = new ArrayList<>();
    int unchanged = 0;
    for (Task to : proposed.tasks()) {
      Task from = before.get(to.id());
      if (from != null) {
        Changed change = new Changed(from, to, made(List.of(from.make()), List.of(to.make())));
        if (isSame(change)) {
          unchanged++;
        } else {
          changed.add(change);
        }
      }
    }
    Set<String> known = inForce.misfits().stream().map(Misfit::path).collect(Collectors.toSet());
    return new Difference(
        services(inForce, proposed),
        made(inForce.makes(), proposed.makes()),
        weighed(inForce.makes(), proposed.makes()),
        added,
        withdrawn,
        changed,
        unchanged,
        touched(proposed, added, withdrawn, changed),
        proposed.begun().stream().filter(of -> of.before().isPresent()).toList(),
        proposed.misfits().stream().filter(misfit -> !known.contains(misfit.path())).toList(),
        held(inForce, proposed, before.keySet()),
        around);
  }

  /** Of tasks that both have; a new one says itself what it waits for. */
  private static List<Held> held(PrepSheet inForce, PrepSheet proposed, Set<String> before) {
    List<Held> held = new ArrayList<>();
    for (Task task : proposed.tasks()) {
      List<Awaited> from = inForce.awaited(task);
      List<Awaited> to = proposed.awaited(task);
      if (before.contains(task.id()) && !moments(from).equals(moments(to))) {
        held.add(new Held(task, latest(from), latest(to)));
      }
    }
    return held;
  }

  private static List<Optional<Instant>> moments(List<Awaited> awaited) {
    return awaited.stream().map(Awaited::from).toList();
  }

  private static Optional<Instant> latest(List<Awaited> awaited) {
    return awaited.stream().flatMap(one -> one.from().stream()).max(Instant::compareTo);
  }

  /**
   * Work done on an earlier day is no longer shown, and what was lost is no longer done: neither is
   * a change.
   */
  private static boolean isOver(Begun of, Task task) {
    return of.make().id().equals(task.make().id()) && (of.hasDone(task) || of.failed());
  }

  private static Map<String, Task> byId(PrepSheet sheet) {
    return sheet.tasks().stream().collect(Collectors.toMap(Task::id, Function.identity()));
  }

  private static boolean isSame(Changed change) {
    Task from = change.from();
    Task to = change.to();
    return from.start().equals(to.start())
        && from.handsOff().equals(to.handsOff())
        && from.end().equals(to.end())
        && from.hands() == to.hands()
        && change.made().isEmpty()
        && isDoneAlike(from, to);
  }

  /** Whether its step says the same, and the same goes in there: by another version it may not. */
  private static boolean isDoneAlike(Task from, Task to) {
    FormulaVersion was = from.version();
    FormulaVersion is = to.version();
    boolean alike =
        was.isSame(is) || (from.step().equals(to.step()) && goesIn(from).equals(goesIn(to)));
    return alike
        && (was.number() == is.number()
            || from.make().scaled().basis().compareTo(to.make().scaled().basis()) == 0);
  }

  private static List<Line> goesIn(Task task) {
    return task.version().lines().stream()
        .filter(line -> line.step().equals(task.step().code()))
        .toList();
  }

  private static SortedSet<String> touched(
      PrepSheet proposed, List<Task> added, List<Task> withdrawn, List<Changed> changed) {
    Map<String, Begun> begun =
        proposed.begun().stream()
            .filter(of -> of.before().isEmpty())
            .collect(Collectors.toMap(of -> of.make().id(), Function.identity()));
    SortedSet<String> touched = new TreeSet<>();
    List<Task> all = new ArrayList<>(withdrawn);
    changed.forEach(change -> all.add(change.from()));
    for (Task task : added) {
      Begun of = begun.get(task.make().id());
      if (of != null && !of.isMissing(task.step()) && !of.tasks().contains(task)) {
        all.add(task);
      }
    }
    for (Task task : all) {
      if (begun.containsKey(task.make().id())) {
        touched.add(task.id());
      }
    }
    return touched;
  }

  private static List<Service> services(PrepSheet inForce, PrepSheet proposed) {
    Map<String, Optional<ServiceRun>> before = new LinkedHashMap<>();
    inForce.services().forEach(run -> before.put(run.id(), Optional.of(run)));
    List<Service> services = new ArrayList<>();
    for (ServiceRun to : proposed.services()) {
      Optional<ServiceRun> from = before.getOrDefault(to.id(), Optional.empty());
      before.remove(to.id());
      add(services, from, Optional.of(to));
    }
    // A service that is over by now is no longer planned, and that is no change.
    before.values().stream()
        .filter(
            from ->
                from.filter(run -> run.window().end().isAfter(proposed.request().asOf()))
                    .isPresent())
        .forEach(from -> add(services, from, Optional.empty()));
    return services;
  }

  private static void add(
      List<Service> services, Optional<ServiceRun> from, Optional<ServiceRun> to) {
    List<Plates> plates = plates(from, to);
    boolean same =
        from.isPresent()
            && to.isPresent()
            && from.get().window().equals(to.get().window())
            && from.get().covers().equals(to.get().covers())
            && from.get().prepared().equals(to.get().prepared())
            && plates.isEmpty();
    if (!same) {
      services.add(new Service(from, to, plates));
    }
  }

  private static List<Plates> plates(Optional<ServiceRun> from, Optional<ServiceRun> to) {
    Map<String, Plates> all = new LinkedHashMap<>();
    from.ifPresent(
        run ->
            run.plates()
                .forEach(of -> all.merge(key(of), plates(of, of.count(), 0), Difference::sum)));
    to.ifPresent(
        run ->
            run.plates()
                .forEach(of -> all.merge(key(of), plates(of, 0, of.count()), Difference::sum)));
    return all.values().stream().filter(of -> of.from() != of.to()).toList();
  }

  private static String key(ServiceRun.Plates of) {
    return plates(of, 0, 0).key();
  }

  private static Plates plates(ServiceRun.Plates of, int from, int to) {
    return new Plates(of.course(), of.dish().code(), of.diets(), from, to);
  }

  private static Plates sum(Plates one, Plates other) {
    return new Plates(
        one.course(), one.dish(), one.diets(), one.from() + other.from(), one.to() + other.to());
  }

  private static List<Made> made(List<Make> from, List<Make> to) {
    SortedMap<String, Made> all = new TreeMap<>();
    for (Make make : from) {
      for (int i = 0; i < make.version().outputs().size(); i++) {
        add(all, make.version(), i, make.scaled().output(i), zero(make.version(), i));
      }
    }
    for (Make make : to) {
      for (int i = 0; i < make.version().outputs().size(); i++) {
        add(all, make.version(), i, zero(make.version(), i), make.scaled().output(i));
      }
    }
    return all.values().stream().filter(of -> isOther(of.from(), of.to())).toList();
  }

  /** By what a scale could ever tell: what comes from which tub moves the last digits of sums. */
  private static boolean isOther(Amount from, Amount to) {
    return from.minus(to).number().abs().compareTo(MILLIGRAM) >= 0;
  }

  /** Of formulas that are made by another version than before, whatever comes out of them. */
  private static List<Weighed> weighed(List<Make> from, List<Make> to) {
    SortedMap<String, Weighed> all = new TreeMap<>();
    for (String formula : otherwise(from, to)) {
      from.forEach(make -> add(all, formula, make, true));
      to.forEach(make -> add(all, formula, make, false));
    }
    return all.values().stream().filter(of -> isOther(of.from(), of.to())).toList();
  }

  private static SortedSet<String> otherwise(List<Make> from, List<Make> to) {
    SortedSet<String> formulas = new TreeSet<>();
    for (Make make : to) {
      FormulaVersion is = make.version();
      if (from.stream()
          .map(Make::version)
          .anyMatch(was -> was.formula().equals(is.formula()) && was.number() != is.number())) {
        formulas.add(is.formula());
      }
    }
    return formulas;
  }

  private static void add(
      SortedMap<String, Weighed> all, String formula, Make make, boolean before) {
    if (!make.version().formula().equals(formula)) {
      return;
    }
    Amount none = Amount.NO_MASS;
    for (Line line : make.version().lines()) {
      Amount amount = make.scaled().setOut(line);
      all.merge(
          formula + "/" + line.item().code(),
          new Weighed(formula, line.item(), before ? amount : none, before ? none : amount),
          (one, other) ->
              new Weighed(
                  formula, one.item(), one.from().plus(other.from()), one.to().plus(other.to())));
    }
  }

  private static Amount zero(FormulaVersion version, int output) {
    return Amount.zero(version.outputs().get(output).unit());
  }

  /** By output and unit, since another version may count what this one weighs. */
  private static void add(
      SortedMap<String, Made> all, FormulaVersion version, int output, Amount from, Amount to) {
    String code = version.outputs().get(output).code();
    Dimension unit = version.outputs().get(output).unit();
    all.merge(
        version.formula() + ":" + code + "/" + unit,
        new Made(version.formula(), code, from, to),
        (one, other) ->
            new Made(
                one.formula(),
                one.output(),
                one.from().plus(other.from()),
                one.to().plus(other.to())));
  }
}
