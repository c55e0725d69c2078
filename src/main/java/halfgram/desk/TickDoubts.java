package halfgram.desk;

import halfgram.measure.Amount;
import halfgram.measure.Message;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.prep.Tick;
import halfgram.prep.timer.Timers;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * What speaks against a tick, so that whoever enters it is asked before it is taken.
 *
 * <p>Rules. Who is on a task is taken off it by nobody else without being told so: neither by a
 * start nor by saying that it is done, or partly. How much there is so far only grows; less than
 * was said before may be true, since some was spilt, but more often it is what came on top. Nothing
 * is done of which the parts are not: either they were made and nobody said so, or it is a slip of
 * the hand. What stands by itself is not done before it has stood, counted from when somebody was
 * first on it or said that it stands, else from when all it takes was done; a tenth less is not
 * asked about. Where nobody knows when it can have begun, only a stand of two hours or more is
 * (common practice).
 */
public final class TickDoubts {
  private static final Set<Tick.Kind> TAKES_OFF =
      EnumSet.of(Tick.Kind.START, Tick.Kind.PART_DONE, Tick.Kind.DONE);

  private static final Set<Tick.Kind> COUNTS = EnumSet.of(Tick.Kind.PART_DONE, Tick.Kind.DONE);

  /** From so long a stand on it is asked when it began. */
  private static final Duration LONG = Duration.ofHours(2);

  private static final int TENTHS = 10;
  private static final int ENOUGH = 9;

  private TickDoubts() {}

  /** What is entered later says who did it, and is asked about with its time. */
  static Optional<Ticking.Outcome> asks(
      House house, FoundTask found, Ticking.Entry tick, History said, Instant now) {
    if (tick.sure() || tick.said().isPresent()) {
      return Optional.empty();
    }
    List<Message> doubts = of(house, found.task(), found.before(), said::progress, tick, now);
    return doubts.isEmpty() ? Optional.empty() : Optional.of(new Ticking.Asks(doubts));
  }

  /**
   * Everything that speaks against a tick.
   *
   * @param before the tasks that it comes after
   * @param known what a task has come to before it
   */
  public static List<Message> of(
      House house,
      Task task,
      List<Task> before,
      Function<String, TaskProgress> known,
      Ticking.Entry tick,
      Instant now) {
    TaskProgress progress = known.apply(task.id());
    List<Message> doubts = new ArrayList<>();
    progress
        .onIt()
        .filter(on -> TAKES_OFF.contains(tick.kind()) && !on.cook().equals(tick.cook()))
        .map(
            on ->
                Message.of(
                    "tick.asks.on-it", house.book().personName(on.cook()), time(house, on.since())))
        .ifPresent(doubts::add);
    less(progress, tick.kind(), tick.amount()).ifPresent(doubts::add);
    if (tick.kind() == Tick.Kind.DONE && progress.dones().isEmpty()) {
      doubts.addAll(notThere(before, known));
      stands(task, before, known, now).ifPresent(doubts::add);
    }
    return doubts;
  }

  /** That what it takes, or what comes before it, is neither done nor partly. */
  private static List<Message> notThere(List<Task> before, Function<String, TaskProgress> known) {
    return before.stream()
        .filter(one -> !isThere(known.apply(one.id())))
        .map(one -> Message.of("tick.asks.not-done", SaidTimes.name(one)))
        .toList();
  }

  private static boolean isThere(TaskProgress progress) {
    return progress.doneAt().isPresent() || progress.state() == TaskState.PART_DONE;
  }

  /** That it cannot have stood for as long as it has to. */
  private static Optional<Message> stands(
      Task task, List<Task> before, Function<String, TaskProgress> known, Instant now) {
    TaskProgress progress = known.apply(task.id());
    Duration stand = Timers.stand(task, progress);
    if (stand.isZero() || task.kind() == Task.Kind.THAW) {
      return Optional.empty();
    }
    Optional<Instant> since = since(progress, before, known);
    if (since.isEmpty()) {
      return stand.compareTo(LONG) < 0
          ? Optional.empty()
          : Optional.of(Message.of("tick.asks.stands", stand));
    }
    Duration stood = Duration.between(since.get(), now);
    if (stood.multipliedBy(TENTHS).compareTo(stand.multipliedBy(ENOUGH)) >= 0) {
      return Optional.empty();
    }
    return Optional.of(
        floor(stood).isZero()
            ? Message.of("tick.asks.stands-just", stand)
            : Message.of("tick.asks.stands-since", stand, floor(stood)));
  }

  /** From when on it can have stood; empty where nothing that was entered says. */
  private static Optional<Instant> since(
      TaskProgress progress, List<Task> before, Function<String, TaskProgress> known) {
    return Timers.findStandsSince(progress)
        .or(progress::begun)
        .or(
            () ->
                before.stream()
                    .flatMap(one -> known.apply(one.id()).doneAt().stream())
                    .max(Comparator.naturalOrder()));
  }

  private static Duration floor(Duration time) {
    return Duration.ofMinutes(Math.max(0, time.toMinutes()));
  }

  /** That there was more before. */
  static Optional<Message> less(TaskProgress progress, Tick.Kind kind, Optional<Amount> amount) {
    boolean counts = COUNTS.contains(kind);
    return progress
        .amount()
        .filter(before -> counts && progress.dones().isEmpty())
        .filter(
            before ->
                amount
                    .filter(now -> now.dimension() == before.dimension())
                    .filter(now -> now.compareTo(before) < 0)
                    .isPresent())
        .map(before -> Message.of("tick.asks.less", before));
  }

  /** By the kitchen's clock. */
  private static LocalTime time(House house, Instant at) {
    return at.atZone(house.book().kitchen().clock().zone()).toLocalTime();
  }
}
