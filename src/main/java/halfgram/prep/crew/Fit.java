package halfgram.prep.crew;

import halfgram.prep.KitchenBook;
import halfgram.prep.PastWork;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.prep.TaskState;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Whether a day fits people and machines by a crew plan, as of now: the one verdict of every page.
 *
 * <p>Rules. What is over is neither late nor without a place, nor is what is for nothing any more.
 * What should have been begun would be begun now; what somebody is on ends as it goes. Where
 * whoever was to do it is not there, or its machine does not work, it has no place by now. A day
 * that is over is told as it was planned.
 *
 * @param byTimes whether the sheet itself fits, whoever does it
 * @param leftOut tasks that have no place
 * @param late tasks that start or end later than their lags allow, and by how much; worst first
 * @param overrun what stands longer than it may; worst first
 * @param shortPlatings dishes that there are too few to plate
 */
public record Fit(
    boolean byTimes,
    List<Task> leftOut,
    List<Late> late,
    List<CrewDifference.Over> overrun,
    List<Plated> shortPlatings) {
  public Fit {
    leftOut = List.copyOf(leftOut);
    late = List.copyOf(late);
    overrun = List.copyOf(overrun);
    shortPlatings = List.copyOf(shortPlatings);
  }

  /** A task that starts or ends too late. */
  public record Late(Task task, Duration by) {}

  public static Fit of(KitchenBook book, PrepSheet sheet, DayFacts facts, CrewPlan crew) {
    return new Reckoning(book, sheet, facts, crew).fit();
  }

  /** By how much a task starts or ends too late by its lags; less than a slot is none. */
  public static Optional<Late> late(Task task, Placed placed) {
    return late(task, placed.start(), placed.end());
  }

  private static Optional<Late> late(Task task, Instant from, Instant to) {
    Duration start = Duration.between(task.start(), from);
    Duration end = Duration.between(task.end(), to);
    Duration by = start.compareTo(end) > 0 ? start : end;
    return by.compareTo(Slots.SLOT) >= 0 ? Optional.of(new Late(task, by)) : Optional.empty();
  }

  /** Whether everything has a place and its hands, in time, and nothing stands too long. */
  public boolean fits() {
    return byTimes
        && leftOut.isEmpty()
        && late.isEmpty()
        && overrun.isEmpty()
        && shortPlatings.isEmpty();
  }

  /** By how much a task is late, if it is. */
  public Optional<Duration> late(String task) {
    return late.stream().filter(one -> one.task().id().equals(task)).map(Late::by).findFirst();
  }

  /** Hands-on minutes of what is left out. */
  public Duration leftOutTime() {
    return leftOut.stream().map(Task::handsOn).reduce(Duration.ZERO, Duration::plus);
  }

  /** How late the latest of the late tasks is. */
  public Duration mostLate() {
    return late.stream().map(Late::by).max(Duration::compareTo).orElse(Duration.ZERO);
  }

  /** By how much that stands too long which does so the most. */
  public Duration longestOverrun() {
    return overrun.stream()
        .map(CrewDifference.Over::by)
        .max(Duration::compareTo)
        .orElse(Duration.ZERO);
  }

  /** How late all late tasks are together. */
  public Duration lateTime() {
    return late.stream().map(Late::by).reduce(Duration.ZERO, Duration::plus);
  }

  /** How long all that stands too long does so, together. */
  public Duration overrunTime() {
    return overrun.stream().map(CrewDifference.Over::by).reduce(Duration.ZERO, Duration::plus);
  }

  private record Reckoning(KitchenBook book, PrepSheet sheet, DayFacts facts, CrewPlan crew) {
    private Fit fit() {
      boolean runs = !book.kitchen().clock().of(facts.now()).isAfter(sheet.request().from());
      Set<String> past =
          runs
              ? PastWork.of(sheet, facts.now(), task -> facts.state(task.id()) != TaskState.TO_DO)
                  .keySet()
              : Set.of();
      List<Task> leftOut = new ArrayList<>();
      List<Late> late = new ArrayList<>();
      for (Task task : sheet.tasks()) {
        Optional<Placed> placed = crew.find(task.id());
        if (facts.isOver(task.id()) || past.contains(task.make().id())) {
          continue;
        }
        if (crew.leftOut().contains(task.id())
            || (runs && facts.isToDo(task.id()) && !holds(placed))) {
          leftOut.add(task);
        } else if (placed.isPresent()) {
          (runs ? asItGoes(task, placed.get()) : late(task, placed.get())).ifPresent(late::add);
        }
      }
      late.sort(Comparator.comparing(Late::by).reversed());
      List<CrewDifference.Over> overrun = new ArrayList<>(CrewDifference.over(sheet, facts, crew));
      overrun.sort(Comparator.comparing(CrewDifference.Over::by).reversed());
      List<Plated> few =
          crew.platings().stream().filter(line -> isShort(line) || (runs && isLeft(line))).toList();
      return new Fit(sheet.fits(), leftOut, late, overrun, few);
    }

    /** Whether there is still a place for what is to do: its people and its machine. */
    private boolean holds(Optional<Placed> placed) {
      return placed
          .filter(one -> Adrift.missing(book, facts, one, wait(one)).isEmpty())
          .filter(one -> Adrift.broken(book, facts, crew, one).isEmpty())
          .isPresent();
    }

    /** How much later than planned something can only be begun by now. */
    private Duration wait(Placed placed) {
      boolean waits = facts.state(placed.task()) == TaskState.TO_DO;
      return waits && placed.start().isBefore(facts.now())
          ? Duration.between(placed.start(), facts.now())
          : Duration.ZERO;
    }

    private Optional<Late> asItGoes(Task task, Placed placed) {
      Duration wait = wait(placed);
      return Underway.of(task, facts)
          .map(on -> late(task, on.since(), on.end()))
          .orElseGet(() -> late(task, placed.start().plus(wait), placed.end().plus(wait)));
    }

    private static boolean isShort(Plated line) {
      return line.missing() > 0;
    }

    /** Whether somebody who was to plate it is not there. */
    private boolean isLeft(Plated line) {
      return line.to().isAfter(facts.now())
          && !facts.plated().containsKey(line.id())
          && Adrift.missing(book, facts, line.hands()).isPresent();
    }
  }
}
