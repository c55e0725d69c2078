package halfgram.prep.crew;

import halfgram.measure.Window;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What is known of a day beside its book and its sheet.
 *
 * @param now nothing that has not begun starts earlier
 * @param progress by task id; a task without any is to do
 * @param more how much longer than planned somebody said a task takes, by task id
 * @param hours who is there when, where that is not as their shift says
 * @param broken machines that do not work
 * @param pins where the chef wants tasks, by task id
 * @param before where the plan in force has tasks, by task id
 * @param plated when somebody said that all of a plating is plated, by its id
 */
public record DayFacts(
    Instant now,
    Map<String, TaskProgress> progress,
    Map<String, Duration> more,
    List<Hours> hours,
    List<Broken> broken,
    Map<String, Pin> pins,
    Map<String, Placed> before,
    Map<String, Instant> plated) {
  public DayFacts {
    more = Map.copyOf(more);
    hours = List.copyOf(hours);
    broken = List.copyOf(broken);
    pins = Map.copyOf(pins);
    before = Map.copyOf(before);
    plated = Map.copyOf(plated);
  }

  /** Nothing but the hour. */
  public static DayFacts at(Instant now) {
    return new DayFacts(
        now, Map.of(), Map.of(), List.of(), List.of(), Map.of(), Map.of(), Map.of());
  }

  /**
   * When somebody is there on a business day.
   *
   * @param windows none: not at all
   */
  public record Hours(String person, LocalDate day, List<Window> windows) {
    public Hours {
      windows = List.copyOf(windows);
    }
  }

  /** Machines that do not work. */
  public record Broken(String equipment, int units, Window window) {}

  /**
   * Where the chef wants a task.
   *
   * @param people empty: whoever can
   */
  public record Pin(Instant start, List<String> people) {
    public Pin {
      people = List.copyOf(people);
    }
  }

  /** These facts with another plan in force. */
  public DayFacts after(Map<String, Placed> other) {
    return new DayFacts(now, progress, more, hours, broken, pins, other, plated);
  }

  /** These facts with other words on how much longer tasks take. */
  public DayFacts longer(Map<String, Duration> other) {
    return new DayFacts(now, progress, other, hours, broken, pins, before, plated);
  }

  /** These facts with other pins. */
  public DayFacts pinned(Map<String, Pin> other) {
    return new DayFacts(now, progress, more, hours, broken, other, before, plated);
  }

  /** These facts with other hours and other machines broken. */
  public DayFacts with(List<Hours> people, List<Broken> machines) {
    return new DayFacts(now, progress, more, people, machines, pins, before, plated);
  }

  /** These facts with other progress. */
  public DayFacts progressed(Map<String, TaskProgress> other) {
    return new DayFacts(now, other, more, hours, broken, pins, before, plated);
  }

  /** These facts with other platings that are over. */
  public DayFacts platedAt(Map<String, Instant> other) {
    return new DayFacts(now, progress, more, hours, broken, pins, before, other);
  }

  /** What a task has come to. */
  public TaskState state(String task) {
    return progress.getOrDefault(task, TaskProgress.NONE).state();
  }

  /** Who is on a task, if anybody is. */
  public Optional<TaskProgress.OnIt> onIt(String task) {
    return progress.getOrDefault(task, TaskProgress.NONE).onIt();
  }

  public Optional<Instant> doneAt(String task) {
    return progress.getOrDefault(task, TaskProgress.NONE).doneAt();
  }

  /** Whether it is done, or will not be. */
  public boolean isOver(String task) {
    return state(task) == TaskState.DONE || state(task) == TaskState.FAILED;
  }

  /** Whether it is neither over nor is anybody on it: it can still be moved. */
  public boolean isToDo(String task) {
    return !isOver(task) && onIt(task).isEmpty();
  }
}
