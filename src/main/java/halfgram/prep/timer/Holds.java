package halfgram.prep.timer;

import halfgram.formula.Reason;
import halfgram.measure.Message;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.prep.Tick;
import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Whether a task may still begin with what has waited for it.
 *
 * <p>Rules. What waits longer than its safety limit is not worked on any more: it is binned. What
 * waits longer than it is at its best is tasted by a chef, who says so after that moment; then it
 * may be used for half an hour, or for as long as it was to wait at most where that is shorter
 * (common practice), and then it is tasted again. What is done in parts waits as {@link
 * TaskProgress#waitsSince} says. That it was done is not taken back when its safety limit is past.
 * A task said to be done that nobody said to have begun is taken to have begun its planned time
 * before. A start that is already there is not asked again, and a problem on either side changes
 * nothing. What keeps for longer than half a day has a label with a date, and is judged by that.
 */
public final class Holds {
  private static final Set<Tick.Kind> BEGINS =
      EnumSet.of(Tick.Kind.START, Tick.Kind.WEIGHED, Tick.Kind.PART_DONE, Tick.Kind.DONE);

  static final Duration LONGEST = Duration.ofHours(12);

  /** For how long a taste counts, at most. */
  static final Duration TASTED = Duration.ofMinutes(30);

  /**
   * A chef's word that what is past its best may be used.
   *
   * @param until when it is tasted again
   */
  public record Taste(String cook, Instant at, Instant until) {
    boolean counts(Instant moment) {
      return !moment.isAfter(until);
    }
  }

  private Holds() {}

  /** Whether a tick begins a task that something may have waited for. */
  public static boolean asks(Task task, TaskProgress of, Tick tick) {
    return of.beneath() == TaskState.TO_DO
        && BEGINS.contains(tick.kind())
        && !waited(task).isEmpty();
  }

  /** The tasks whose ticks have to be known to say whether one may begin. */
  public static List<String> waited(Task task) {
    return task.links().stream()
        .filter(link -> most(link).isPresent())
        .map(Task.Link::task)
        .toList();
  }

  /**
   * Why a task cannot begin any more.
   *
   * @param of what it has come to before
   * @param earlier the tasks it comes after
   * @param ticks of those, by their ids
   */
  public static Optional<Message> refused(
      Task task,
      TaskProgress of,
      Tick tick,
      Collection<Task> earlier,
      Map<String, List<Tick>> ticks) {
    if (!asks(task, of, tick)) {
      return Optional.empty();
    }
    Instant began =
        tick.kind() == Tick.Kind.DONE || tick.kind() == Tick.Kind.PART_DONE
            ? tick.at().minus(Duration.between(task.start(), task.end()))
            : tick.at();
    Optional<Message> worst = Optional.empty();
    for (Task.Link link : task.links()) {
      TaskProgress before = TaskProgress.fold(ticks.getOrDefault(link.task(), List.of()));
      Optional<Instant> limit =
          earlier.stream()
              .filter(one -> one.id().equals(link.task()))
              .findFirst()
              .flatMap(one -> limit(link, one, before))
              .filter(began::isAfter);
      if (limit.isPresent() && link.reason().isSafety()) {
        return Optional.of(said("tick.refused.hold-over", limit.get(), link.reason()));
      }
      Optional<Taste> taste = limit.flatMap(at -> taste(link, before, at));
      if (limit.isPresent() && taste.isEmpty()) {
        worst = Optional.of(said("tick.refused.hold-taste", limit.get(), link.reason()));
      } else if (taste.filter(one -> !one.counts(began)).isPresent()) {
        Taste last = taste.orElseThrow();
        worst = Optional.of(Message.of("tick.refused.hold-again", last.at(), last.until()));
      }
    }
    return worst;
  }

  /**
   * Why it cannot be taken back that something was done: its safety limit is past, and nobody could
   * see any more how long it has waited.
   *
   * @param link of what waits for it
   * @param after what it would come to
   */
  public static Optional<Message> hidden(
      Task.Link link, Task task, TaskProgress before, TaskProgress after, Instant now) {
    return limit(link, task, before)
        .filter(limit -> link.reason().isSafety() && now.isAfter(limit))
        .filter(limit -> !limit(link, task, after).equals(Optional.of(limit)))
        .map(limit -> said("tick.refused.hold-back", limit, link.reason()));
  }

  private static Message said(String key, Instant limit, Reason reason) {
    return Message.of(key, limit, reason.source());
  }

  /** Until when what an earlier task gave may wait; empty while it gave nothing. */
  static Optional<Instant> limit(Task.Link link, Task earlier, TaskProgress of) {
    return most(link)
        .filter(most -> of.beneath() != TaskState.FAILED)
        .flatMap(most -> of.waitsSince(earlier).map(at -> at.plus(most)));
  }

  static Optional<Duration> most(Task.Link link) {
    return link.max().filter(most -> most.compareTo(LONGEST) <= 0);
  }

  /** A chef's last word on what a task gave, after the limit; empty without one. */
  static Optional<Taste> taste(Task.Link link, TaskProgress of, Instant limit) {
    Duration counts = most(link).filter(most -> most.compareTo(TASTED) < 0).orElse(TASTED);
    return of.words(Tick.Kind.TASTED).stream()
        .filter(word -> !word.at().isBefore(limit))
        .max(Comparator.comparing(Tick::at))
        .map(word -> new Taste(word.cook(), word.at(), word.at().plus(counts)));
  }
}
