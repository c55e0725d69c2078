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
import java.util.stream.Collectors;

/**
 * What a crew plan comes to, in the numbers by which two of them are compared.
 *
 * @param fit whether the day fits by it
 * @param finish when the last hands are off the last task; empty when nothing is placed
 */
public record Outlook(
    KitchenBook book,
    PrepSheet sheet,
    CrewPlan crew,
    Fit fit,
    Load load,
    Optional<Instant> finish) {
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
    Fit fit = Fit.of(book, sheet, facts, crew);
    Set<String> nowhere = fit.leftOut().stream().map(Task::id).collect(Collectors.toSet());
    return new Outlook(
        book,
        sheet,
        crew,
        fit,
        Load.of(book, sheet, facts, crew),
        crew.placed().values().stream()
            .filter(one -> !nowhere.contains(one.task()))
            .flatMap(one -> one.hands().stream())
            .map(Placed.Hands::to)
            .max(Instant::compareTo));
  }

  /** The service that a task is for in the end; the first is enough. */
  public Optional<ServiceRun> service(Task task) {
    return Levers.service(sheet, task);
  }

  /** Tasks that have no place. */
  public List<Task> leftOut() {
    return fit.leftOut();
  }

  /** Tasks that are late; worst first. */
  public List<Fit.Late> late() {
    return fit.late();
  }

  public List<CrewDifference.Over> overrun() {
    return fit.overrun();
  }

  public List<Plated> shortPlatings() {
    return fit.shortPlatings();
  }

  public boolean fits() {
    return fit.fits();
  }

  public Duration leftOutTime() {
    return fit.leftOutTime();
  }

  public Duration lateTime() {
    return fit.lateTime();
  }

  public Duration overrunTime() {
    return fit.overrunTime();
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
