package halfgram.prep;

import halfgram.formula.ComponentRef;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Output;
import halfgram.formula.Step;
import halfgram.lot.Lot;
import halfgram.lot.Reservation;
import halfgram.measure.Amount;
import halfgram.prep.netting.Need;
import halfgram.prep.netting.Stock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * A make of the plan in force on which work has begun. It stands as it is, whatever else changes.
 *
 * <p>Rules. What an unfinished one will give counts as tubs on the way, made when it really will be
 * ({@link Pace}). Where that is late it still counts, and is told of, as long as nothing made anew
 * would be there sooner. One that is for a single event keeps for that event what the event asked
 * of it; the rest is free. A finished one gives nothing more: its tubs are in the book. One that
 * failed gives nothing at all. Whoever plans hands over every make begun, finished ones too until
 * they are eaten, and the ids of those before ({@link PlanRequest#spent}): no id is given twice.
 *
 * @param tasks all its tasks as they stand in the plan in force; a step without one gets its task
 *     worked out, and a last step without one gives tubs dated by their own hold alone
 * @param started codes of the steps started, part done or done
 * @param done codes of the steps done
 * @param failed whether it was lost: it gives nothing, and nothing more is done or needed for it
 * @param stretches whether more of everything can still be weighed into it
 * @param before its size until now, when this plan asks for more of it
 * @param real when its steps started really were, or will be over, by code; empty: as planned
 * @param pace what follows from that, once planned around
 * @param opened labels of the baths that are in use, when somebody enters drops of its run; empty
 *     when nobody does
 * @param promised what steps that are begun elsewhere will take of it, by the code of its output
 */
public record Begun(
    Make make,
    List<Task> tasks,
    SortedSet<String> started,
    SortedSet<String> done,
    boolean failed,
    boolean stretches,
    Optional<Make> before,
    SortedMap<String, Timeline.Span> real,
    Optional<Pace> pace,
    Optional<Set<String>> opened,
    SortedMap<String, Amount> promised) {
  public Begun {
    opened = opened.map(Set::copyOf);
    promised = Collections.unmodifiableNavigableMap(new TreeMap<>(promised));
    tasks = List.copyOf(tasks);
    done = Collections.unmodifiableNavigableSet(new TreeSet<>(done));
    TreeSet<String> all = new TreeSet<>(started);
    all.addAll(done);
    started = Collections.unmodifiableNavigableSet(all);
    real = Collections.unmodifiableNavigableMap(new TreeMap<>(real));
  }

  /** Whether its last step is done: what it gave is in the book's tubs. */
  public boolean finished() {
    return done.contains(lastStep().code());
  }

  /** Whether it is no making but a tub pulled to thaw. */
  boolean isThaw() {
    return tasks.stream().anyMatch(task -> task.kind() == Task.Kind.THAW);
  }

  /** Whether nothing more comes of it. */
  public boolean over() {
    return failed || finished();
  }

  /**
   * Whether a tub is still being made. It then goes by the id of its make, and ids have slashes
   * where the codes of tubs cannot.
   */
  public static boolean isExpected(Lot lot) {
    return lot.code().indexOf('/') >= 0;
  }

  /** This batch with more weighed into it. */
  Begun stretchedTo(Make larger) {
    return new Begun(
        larger,
        tasks,
        started,
        done,
        failed,
        stretches,
        before.or(() -> Optional.of(make)),
        real,
        pace,
        opened,
        promised);
  }

  /** This batch at a pace. */
  Begun at(Pace other) {
    return new Begun(
        make,
        tasks,
        started,
        done,
        failed,
        stretches,
        before,
        real,
        Optional.of(other),
        opened,
        promised);
  }

  /** This batch, of whose run these baths are in use. */
  public Begun dropping(Set<String> baths) {
    return new Begun(
        make,
        tasks,
        started,
        done,
        failed,
        stretches,
        before,
        real,
        pace,
        Optional.of(baths),
        promised);
  }

  /** This batch, of which steps that are begun will take so much, by the code of its output. */
  public Begun promising(SortedMap<String, Amount> taken) {
    return new Begun(
        make, tasks, started, done, failed, stretches, before, real, pace, opened, taken);
  }

  /** This batch as it goes at a moment, with the dates its plan gave it. */
  public Begun at(Instant now) {
    return at(new Pace(Pace.timeline(this, now), make.useBys(), Map.of()));
  }

  /** How it goes; as planned, where nobody has asked. */
  public Pace going() {
    return pace.orElseGet(() -> Pace.asPlanned(make));
  }

  /** What this plan asks for beyond what was begun; zero when it asks for no more. */
  public Amount more() {
    return before
        .map(was -> make.scaled().output(0).minus(was.scaled().output(0)))
        .orElse(Amount.zero(make.version().outputs().get(0).unit()));
  }

  /** The parts that go in at steps not started. */
  List<Worked.Part> open(List<Worked.Part> parts) {
    return parts.stream()
        .filter(
            part -> !failed && !started.contains(make.version().steps().get(part.step()).code()))
        .toList();
  }

  boolean hasDone(Task task) {
    return done.contains(task.step().code());
  }

  /** Whether a task of it will not be done any more, because what it belongs to was lost. */
  boolean isDropped(Task task) {
    return failed && !started.contains(task.step().code());
  }

  /** Whether a step is still to do and has no task. */
  boolean isMissing(Step step) {
    return !failed
        && !done.contains(step.code())
        && tasks.stream().noneMatch(task -> task.step().code().equals(step.code()));
  }

  /** Whether its pieces go into a bath, and have begun to. */
  boolean isInBath() {
    return make.version().dropping().filter(use -> started.contains(use.step())).isPresent();
  }

  Step lastStep() {
    List<Step> steps = make.version().steps();
    return steps.get(steps.size() - 1);
  }

  /** The reference to one of its outputs; the first goes without saying. */
  private ComponentRef ref(int output) {
    FormulaVersion version = make.version();
    return new ComponentRef(
        version.formula(),
        output == 0 ? Optional.empty() : Optional.of(version.outputs().get(output).code()),
        OptionalInt.of(version.number()));
  }

  /** What its last task puts away of an output. */
  Optional<Stored> findStored(String output) {
    return tasks.stream()
        .flatMap(task -> task.stored().stream())
        .filter(stored -> stored.output().code().equals(output))
        .findFirst();
  }

  /** The tubs on the way, one for each output; none when it is over. */
  public List<Stock> expected() {
    List<Stock> stock = new ArrayList<>();
    for (int i = 0; i < make.version().outputs().size() && !over(); i++) {
      if (make.scaled().output(i).isPositive()) {
        stock.add(expected(i));
      }
    }
    return stock;
  }

  private Stock expected(int index) {
    Output output = make.version().outputs().get(index);
    Optional<Stored> stored = findStored(output.code());
    Pace pace = going();
    Instant own = pace.useBys().get(index);
    boolean inherited = stored.flatMap(Stored::useByOf).isPresent();
    Instant useBy = inherited ? stored.map(Stored::useBy).filter(own::isAfter).orElse(own) : own;
    Lot whole =
        new Lot(
            make.id(),
            ref(index),
            make.scaled().output(index),
            pace.ready(make, index),
            useBy,
            output.hold().place(),
            output.container(),
            reserved(index));
    Amount taken = promised.getOrDefault(output.code(), Amount.zero(output.unit()));
    Lot lot = whole.less(taken.atMost(whole.left()), make.event());
    boolean safety = output.hold().reason().isSafety();
    Instant holds = safety ? own : later(own, lastUse(index));
    Instant safe = safety || inherited ? useBy : later(useBy, make.eaten());
    return new Stock(lot, lot.made(), holds, safe, meant(index));
  }

  /** What of an output is made for whom. */
  private Map<String, Stock.Meant> meant(int output) {
    Map<String, Amount> amounts = new HashMap<>();
    make.served().stream()
        .filter(need -> need.output() == output)
        .forEach(need -> amounts.merge(need.user(), need.amount(), Amount::plus));
    Map<String, Stock.Meant> meant = new HashMap<>();
    amounts.forEach(
        (user, amount) -> {
          Pace.Anew anew = going().anew().getOrDefault(user, Pace.Anew.AT_ONCE);
          meant.put(user, new Stock.Meant(amount, anew.ready(), anew.hands()));
        });
    return meant;
  }

  /** The last use it was meant for; past a hold of quality the plan in force said so. */
  private Instant lastUse(int output) {
    return make.served().stream()
        .filter(need -> need.output() == output)
        .map(Need::lastUse)
        .max(Instant::compareTo)
        .orElse(Instant.MIN);
  }

  private static Instant later(Instant one, Instant other) {
    return other.isAfter(one) ? other : one;
  }

  private List<Reservation> reserved(int output) {
    if (make.event().isEmpty()) {
      return List.of();
    }
    Amount sum = Amount.zero(make.version().outputs().get(output).unit());
    for (Need need : make.served()) {
      sum = need.output() == output ? sum.plus(need.amount()) : sum;
    }
    return sum.isPositive()
        ? List.of(new Reservation(make.event().get(), sum.atMost(make.scaled().output(output))))
        : List.of();
  }

  /** What a task waits for that takes from one of its tubs. */
  Task.Link link(Lot lot) {
    Output output =
        make.version().outputs().get(make.version().outputIndex(lot.component().output()));
    Instant end = going().end();
    return new Task.Link(
        make.id() + "/" + lastStep().code(),
        output.rest().min(),
        Optional.of(Duration.between(end, lot.useBy())),
        output.hold().reason());
  }
}
