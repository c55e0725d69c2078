package halfgram.prep.timer;

import halfgram.formula.Reason;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.prep.Tick;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The timers of a day, folded from its ticks: every device that knows the ticks shows the same, and
 * one that starts anew has lost none.
 *
 * <p>Rules. What goes on by itself runs from the task's start over its planned time, or from the
 * moment somebody says it stands; saying that it is done ends it. A rest runs from done to its
 * least; a hold from when it waits to its most, rings a little before and again at the limit, and
 * when a chef's taste does not count any more. Both end when everything they are for has begun; a
 * rest as soon as some of it has begun with what had rested, for then it is known. A timer that a
 * cook sets ends when it is heard, and with its make when that has failed. A problem stops none:
 * what is in the oven stays there. Nor does it that somebody else takes over. One that rings is put
 * off by minutes, never past what follows from it: a hold never past its limit, a rest or a stand
 * never past the hold behind it, and never more than a quarter of an hour where there is none
 * (common practice).
 */
public final class Timers {
  /** What is left of a hold when it rings for the first time: a quarter of it, at most this. */
  private static final Duration WARNED = Duration.ofMinutes(10);

  private static final Duration PUT_OFF = Duration.ofMinutes(15);

  /** The name of the timer of a task that goes on by itself. */
  public static final String STANDS = "stands";

  private static final String OWN = "own/";

  private final Map<String, TaskProgress> progress;
  private final Map<String, List<Waiter>> waiters = new LinkedHashMap<>();
  private final Set<String> failed = new HashSet<>();
  private final List<Timer> found = new ArrayList<>();

  /** A task that comes after another, and how. */
  private record Waiter(Task task, Task.Link link) {}

  private Timers(Collection<Task> tasks, Map<String, TaskProgress> progress) {
    this.progress = progress;
    for (Task task : tasks) {
      if (state(task) == TaskState.FAILED) {
        failed.add(task.make().id());
      }
      for (Task.Link link : task.links()) {
        waiters.computeIfAbsent(link.task(), of -> new ArrayList<>()).add(new Waiter(task, link));
      }
    }
  }

  /**
   * The timers of some tasks that are not met, by the moment they are due.
   *
   * @param tasks the sheet's
   * @param progress by task id; a task without any is to do
   */
  public static List<Timer> list(Collection<Task> tasks, Map<String, TaskProgress> progress) {
    Timers timers = new Timers(tasks, progress);
    tasks.forEach(timers::add);
    timers.found.sort(
        Comparator.comparing(Timer::due)
            .thenComparing(timer -> timer.task().id())
            .thenComparing(Timer::name));
    return List.copyOf(timers.found);
  }

  private void add(Task task) {
    TaskProgress of = progress.getOrDefault(task.id(), TaskProgress.NONE);
    if (!failed.contains(task.make().id())) {
      addOwn(task, of);
    }
    if (of.beneath() == TaskState.ON_IT && task.unattended().compareTo(Duration.ZERO) > 0) {
      addStand(task, of);
    }
    List<Waiter> open =
        waiters.getOrDefault(task.id(), List.of()).stream()
            .filter(one -> state(one.task()) == TaskState.TO_DO)
            .toList();
    if (of.beneath() == TaskState.DONE) {
      addRests(task, of, of.doneAt().orElseThrow(), open);
    }
    if (of.beneath() != TaskState.FAILED) {
      of.waitsSince(task).ifPresent(since -> addHolds(task, of, since, open));
    }
  }

  private TaskState state(Task task) {
    return progress.getOrDefault(task.id(), TaskProgress.NONE).beneath();
  }

  private void addStand(Task task, TaskProgress of) {
    Optional<Tick> set = findStand(of);
    Instant since = set.map(Tick::at).orElse(of.onIt().orElseThrow().worked());
    Duration whole = set.isPresent() ? stand(task, of) : Duration.between(task.start(), task.end());
    Instant due = since.plus(whole);
    List<Waiter> all = waiters.getOrDefault(task.id(), List.of());
    Instant latest = due.plus(room(all, Duration.ZERO));
    put(task, of, new Shape(STANDS, Timer.Kind.STANDS, since, due, latest, tasks(all)));
  }

  /** When somebody who is on it said that it stands from then on. */
  private static Optional<Tick> findStand(TaskProgress of) {
    return of.words(Tick.Kind.TIMED).stream()
        .filter(word -> word.line().filter(STANDS::equals).isPresent())
        .filter(word -> of.onIt().filter(on -> !word.at().isBefore(on.worked())).isPresent())
        .reduce((before, last) -> last);
  }

  /** The moment from which somebody said that a task stands by itself. */
  public static Optional<Instant> findStandsSince(TaskProgress of) {
    return findStand(of).map(Tick::at);
  }

  /** How long a task stands by itself: as somebody said, else as planned. */
  public static Duration stand(Task task, TaskProgress of) {
    return findStand(of)
        .flatMap(Tick::minutes)
        .map(minutes -> Duration.ofMinutes(minutes.longValue()))
        .orElseGet(task::unattended);
  }

  private void addRests(Task task, TaskProgress of, Instant done, List<Waiter> open) {
    Map<Duration, List<Waiter>> byRest = new LinkedHashMap<>();
    open.stream()
        .filter(one -> !one.link().min().isZero())
        .forEach(
            one -> byRest.computeIfAbsent(one.link().min(), key -> new ArrayList<>()).add(one));
    byRest.forEach(
        (rest, all) -> {
          Instant due = done.plus(rest);
          Instant latest = due.plus(room(all, rest));
          if (!hasBegun(task, rest, due)) {
            put(
                task,
                of,
                new Shape("rests/" + rest, Timer.Kind.RESTS, done, due, latest, tasks(all)));
          }
        });
  }

  /** Whether something that waited for such a rest has begun once it was over. */
  private boolean hasBegun(Task task, Duration rest, Instant due) {
    return waiters.getOrDefault(task.id(), List.of()).stream()
        .filter(one -> one.link().min().equals(rest))
        .map(one -> progress.getOrDefault(one.task().id(), TaskProgress.NONE))
        .flatMap(one -> one.begun().or(one::doneAt).stream())
        .anyMatch(begun -> !begun.isBefore(due));
  }

  /** By how much something may be put off: what its shortest hold leaves after a rest. */
  private static Duration room(List<Waiter> waiters, Duration rest) {
    Duration least =
        waiters.stream()
            .flatMap(one -> Holds.most(one.link()).stream())
            .map(hold -> hold.minus(rest))
            .min(Comparator.naturalOrder())
            .filter(more -> more.compareTo(PUT_OFF) < 0)
            .orElse(PUT_OFF);
    return least.isNegative() ? Duration.ZERO : least;
  }

  private void addHolds(Task task, TaskProgress of, Instant since, List<Waiter> open) {
    Map<String, List<Waiter>> byHold = new LinkedHashMap<>();
    open.stream()
        .filter(one -> Holds.most(one.link()).isPresent())
        .forEach(
            one -> byHold.computeIfAbsent(hold(one.link()), key -> new ArrayList<>()).add(one));
    byHold.forEach(
        (name, all) -> {
          Task.Link link = all.get(0).link();
          Instant limit = Holds.limit(link, task, of).orElseThrow();
          Optional<Holds.Taste> taste = Holds.taste(link, of, limit);
          put(
              task,
              of,
              new Shape(name, Timer.Kind.HOLD, since, limit, limit, tasks(all)),
              taste.map(Holds.Taste::until).orElse(warned(limit, Duration.between(since, limit))),
              link.reason(),
              taste);
        });
  }

  private static String hold(Task.Link link) {
    return (link.reason().isSafety() ? "safe/" : "hold/") + link.max().orElseThrow();
  }

  private static Instant warned(Instant limit, Duration hold) {
    Duration quarter = hold.dividedBy(4);
    return limit.minus(quarter.compareTo(WARNED) < 0 ? quarter : WARNED);
  }

  private static List<Task> tasks(List<Waiter> waiters) {
    return waiters.stream().map(Waiter::task).toList();
  }

  private void addOwn(Task task, TaskProgress of) {
    for (Tick word : of.words(Tick.Kind.TIMED)) {
      boolean own = word.line().filter(STANDS::equals).isEmpty();
      if (own && word.minutes().isPresent()) {
        Instant due = word.at().plus(Duration.ofMinutes(word.minutes().get()));
        put(
            task,
            of,
            new Shape(
                OWN + word.id(), Timer.Kind.OWN, word.at(), due, due.plus(PUT_OFF), List.of()));
      }
    }
  }

  /** What a timer is before anybody heard it. */
  private record Shape(
      String name, Timer.Kind kind, Instant since, Instant due, Instant latest, List<Task> then) {}

  private void put(Task task, TaskProgress of, Shape shape) {
    put(task, of, shape, shape.due(), Reason.NONE, Optional.empty());
  }

  private void put(
      Task task,
      TaskProgress of,
      Shape shape,
      Instant first,
      Reason reason,
      Optional<Holds.Taste> tasted) {
    Optional<Tick> heard =
        of.words().stream()
            .filter(word -> word.kind() == Tick.Kind.HEARD || word.kind() == Tick.Kind.LATER)
            .filter(word -> word.line().filter(shape.name()::equals).isPresent())
            .filter(word -> shape.kind() == Timer.Kind.OWN || !word.at().isBefore(first))
            .reduce((before, last) -> last);
    Optional<Instant> rings =
        heard.isEmpty() ? Optional.of(first) : after(heard.get(), shape, first);
    boolean over = shape.kind() == Timer.Kind.OWN && rings.isEmpty();
    if (!over) {
      found.add(
          new Timer(
              task,
              shape.name(),
              shape.kind(),
              shape.since(),
              shape.due(),
              rings,
              shape.latest(),
              reason,
              shape.then(),
              said(of, shape),
              tasted));
    }
  }

  /** When a timer rings that was heard or put off: a hold that was only warned of, at its limit. */
  private static Optional<Instant> after(Tick word, Shape shape, Instant first) {
    boolean warned = first.isBefore(shape.due()) && word.at().isBefore(shape.due());
    if (word.kind() == Tick.Kind.LATER) {
      Instant put = word.at().plus(Duration.ofMinutes(word.minutes().orElse(0)));
      return Optional.of(put.isAfter(shape.latest()) ? shape.latest() : put);
    }
    return warned ? Optional.of(shape.due()) : Optional.empty();
  }

  private static Optional<String> said(TaskProgress of, Shape shape) {
    return of.words(Tick.Kind.TIMED).stream()
        .filter(word -> shape.name().equals(OWN + word.id()))
        .findFirst()
        .flatMap(Tick::note);
  }
}
