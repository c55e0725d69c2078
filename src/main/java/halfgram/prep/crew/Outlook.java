package halfgram.prep.crew;

import halfgram.prep.KitchenBook;
import halfgram.prep.PrepSheet;
import halfgram.prep.ServiceRun;
import halfgram.prep.Task;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What a crew plan comes to, in the numbers by which two of them are compared.
 *
 * @param leftOut tasks that have no place
 * @param late tasks that start or end later than their lags allow, and by how much; worst first
 * @param overrun what stands longer than it may; worst first
 * @param finish when the last hands are off the last task; empty when nothing is placed
 */
public record Outlook(
    KitchenBook book,
    PrepSheet sheet,
    CrewPlan crew,
    List<Task> leftOut,
    List<Late> late,
    List<CrewDifference.Over> overrun,
    Load load,
    Optional<Instant> finish) {
  public Outlook {
    leftOut = List.copyOf(leftOut);
    late = List.copyOf(late);
    overrun = List.copyOf(overrun);
  }

  /** A task that starts or ends too late. */
  public record Late(Task task, Duration by) {}

  /** Where a task was and will be; empty on the side where it is not. */
  public record Move(String task, Optional<Placed> from, Optional<Placed> to) {
    /** How much later it starts; negative when earlier, zero when it comes or goes. */
    public Duration by() {
      return from.isPresent() && to.isPresent()
          ? Duration.between(from.get().start(), to.get().start())
          : Duration.ZERO;
    }

    public boolean isOtherPeople() {
      return from.isPresent()
          && to.isPresent()
          && !new HashSet<>(from.get().people()).equals(Set.copyOf(to.get().people()));
    }
  }

  public static Outlook of(KitchenBook book, PrepSheet sheet, DayFacts facts, CrewPlan crew) {
    Map<String, Task> tasks = new HashMap<>();
    sheet.tasks().forEach(task -> tasks.put(task.id(), task));
    List<Late> late = new ArrayList<>();
    for (Placed placed : crew.placed().values()) {
      Task task = tasks.get(placed.task());
      if (task == null) {
        continue;
      }
      late(task, placed).ifPresent(late::add);
    }
    List<CrewDifference.Over> overrun = new ArrayList<>(CrewDifference.over(sheet, facts, crew));
    late.sort(Comparator.comparing(Late::by).reversed());
    overrun.sort(Comparator.comparing(CrewDifference.Over::by).reversed());
    return new Outlook(
        book,
        sheet,
        crew,
        sheet.tasks().stream().filter(task -> crew.leftOut().contains(task.id())).toList(),
        late,
        overrun,
        Load.of(book, sheet, facts, crew),
        crew.placed().values().stream()
            .flatMap(one -> one.hands().stream())
            .map(Placed.Hands::to)
            .max(Instant::compareTo));
  }

  /** By how much a task starts or ends too late by its lags; less than a slot is none. */
  public static Optional<Late> late(Task task, Placed placed) {
    Duration start = Duration.between(task.start(), placed.start());
    Duration end = Duration.between(task.end(), placed.end());
    Duration by = start.compareTo(end) > 0 ? start : end;
    return by.compareTo(Slots.SLOT) >= 0 ? Optional.of(new Late(task, by)) : Optional.empty();
  }

  /** The service that a task is for in the end; the first is enough. */
  public Optional<ServiceRun> service(Task task) {
    return Levers.service(sheet, task);
  }

  /** Dishes that there are too few to plate. */
  public List<Plated> shortPlatings() {
    return crew.platings().stream().filter(line -> line.missing() > 0).toList();
  }

  /** Whether everything has a place and its hands, in time, and nothing stands too long. */
  public boolean fits() {
    return sheet.fits()
        && leftOut.isEmpty()
        && late.isEmpty()
        && overrun.isEmpty()
        && shortPlatings().isEmpty();
  }

  /** Hands-on minutes of what is left out. */
  public Duration leftOutTime() {
    return leftOut.stream().map(Task::handsOn).reduce(Duration.ZERO, Duration::plus);
  }

  /** How late all late tasks are together. */
  public Duration lateTime() {
    return late.stream().map(Late::by).reduce(Duration.ZERO, Duration::plus);
  }

  /** How long all that stands too long does so, together. */
  public Duration overrunTime() {
    return overrun.stream().map(CrewDifference.Over::by).reduce(Duration.ZERO, Duration::plus);
  }

  /**
   * What moves from another plan to this one: what comes and goes, then the farthest first. The
   * same step of the same formula made for another service is the same work, the earliest first.
   */
  public List<Move> moves(Map<String, Placed> before) {
    List<Move> moves = new ArrayList<>();
    Map<String, Placed> after = crew.placed();
    Map<String, Deque<Placed>> gone = new HashMap<>();
    before.values().stream()
        .filter(from -> !after.containsKey(from.task()))
        .sorted(Comparator.comparing(Placed::start).thenComparing(Placed::task))
        .forEach(from -> gone.computeIfAbsent(work(from), key -> new ArrayDeque<>()).add(from));
    after.values().stream()
        .sorted(Comparator.comparing(Placed::start).thenComparing(Placed::task))
        .forEach(
            to -> {
              Optional<Placed> from =
                  Optional.ofNullable(before.get(to.task()))
                      .or(() -> Optional.ofNullable(gone.get(work(to))).map(Deque::poll));
              moves.add(new Move(to.task(), from, Optional.of(to)));
            });
    gone.values()
        .forEach(
            left ->
                left.forEach(
                    from -> moves.add(new Move(from.task(), Optional.of(from), Optional.empty()))));
    moves.removeIf(
        move ->
            move.from().isPresent()
                && move.to().isPresent()
                && move.by().isZero()
                && !move.isOtherPeople());
    moves.sort(
        Comparator.comparing((Move move) -> move.from().isPresent() && move.to().isPresent())
            .thenComparing(move -> move.by().abs(), Comparator.reverseOrder()));
    return moves;
  }

  /** Formula and step of a task, whatever it is made for: its id without the two in between. */
  private static String work(Placed placed) {
    String[] parts = placed.task().split("/", 4);
    return parts.length < 4 ? placed.task() : parts[0] + "/" + parts[3];
  }
}
