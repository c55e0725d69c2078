package halfgram.prep.crew;

import halfgram.formula.Reason;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.prep.TaskState;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What another crew plan would change for the work that has not begun.
 *
 * @param moved tasks that start at another time, by the same people or by others
 * @param given tasks that others do at the same time, or take out
 * @param added tasks that had no place and have one
 * @param leftOut ids of tasks that had a place and have none
 * @param waiting ids of tasks that have a place in neither
 * @param plated platings by others than now
 * @param over what stands longer than it may
 */
public record CrewDifference(
    List<Change> moved,
    List<Change> given,
    List<Placed> added,
    List<String> leftOut,
    List<String> waiting,
    List<Plated> plated,
    List<Over> over) {
  public CrewDifference {
    moved = List.copyOf(moved);
    given = List.copyOf(given);
    added = List.copyOf(added);
    leftOut = List.copyOf(leftOut);
    waiting = List.copyOf(waiting);
    plated = List.copyOf(plated);
    over = List.copyOf(over);
  }

  /** One task, as it was and as it would be. */
  public record Change(Placed was, Placed is) {
    public String task() {
      return is.task();
    }
  }

  /**
   * Something that stands too long.
   *
   * @param task that makes it
   * @param user id of the task that it waits for; empty when it is eaten
   * @param by how much longer than it may
   */
  public record Over(String task, Optional<String> user, Duration by, Reason reason) {}

  /** Whether nothing that has not begun would be elsewhere. */
  public boolean isEmpty() {
    return count() == 0;
  }

  /** How many tasks and platings are touched. */
  public int count() {
    return moved.size() + given.size() + added.size() + leftOut.size() + plated.size();
  }

  /** The difference for what the facts say has not begun. */
  public static CrewDifference of(
      PrepSheet sheet, DayFacts facts, CrewPlan before, CrewPlan after) {
    List<Change> moved = new ArrayList<>();
    List<Change> given = new ArrayList<>();
    List<Placed> added = new ArrayList<>();
    List<String> leftOut = new ArrayList<>();
    List<String> waiting = new ArrayList<>();
    for (Task task : sheet.tasks()) {
      if (!facts.isToDo(task.id())) {
        continue;
      }
      Optional<Placed> was = before.find(task.id());
      Optional<Placed> is = after.find(task.id());
      if (is.isEmpty()) {
        (was.isPresent() ? leftOut : waiting).add(task.id());
      } else if (was.isEmpty()) {
        added.add(is.get());
      } else if (!was.get().start().equals(is.get().start())) {
        moved.add(new Change(was.get(), is.get()));
      } else if (!was.get().people().equals(is.get().people())
          || !takers(was.get()).equals(takers(is.get()))) {
        given.add(new Change(was.get(), is.get()));
      }
    }
    return new CrewDifference(
        moved, given, added, leftOut, waiting, plated(before, after), over(sheet, facts, after));
  }

  private static List<Plated> plated(CrewPlan before, CrewPlan after) {
    return after.platings().stream()
        .filter(
            line ->
                before.platings().stream()
                    .anyMatch(
                        was -> was.id().equals(line.id()) && !was.people().equals(line.people())))
        .toList();
  }

  /** Those who take it out at its end. */
  private static List<String> takers(Placed placed) {
    return placed.unload().map(Placed.Hands::people).orElse(List.of());
  }

  /** Holds of quality that a plan overruns by more than a slot, and of safety by anything. */
  public static List<Over> over(PrepSheet sheet, DayFacts facts, CrewPlan plan) {
    List<Over> over = new ArrayList<>();
    Set<String> makes = new HashSet<>();
    sheet.tasks().forEach(task -> makes.add(task.make().id()));
    for (Task task : sheet.tasks()) {
      Optional<Placed> placed = plan.find(task.id());
      if (placed.isEmpty() || facts.state(task.id()) == TaskState.DONE) {
        continue;
      }
      for (Task.Link link : task.links()) {
        Optional<Instant> end = facts.doneAt(link.task());
        if (end.isEmpty()) {
          end = plan.find(link.task()).map(Placed::end);
        }
        if (link.max().isPresent() && end.isPresent()) {
          Duration by = Duration.between(end.get(), placed.get().start()).minus(link.max().get());
          add(over, new Over(link.task(), Optional.of(task.id()), by, link.reason()));
        }
      }
      eaten(task, placed.get(), makes).forEach(one -> add(over, one));
    }
    return over;
  }

  /** What a make on the sheet takes is told of its task. */
  private static List<Over> eaten(Task task, Placed placed, Set<String> makes) {
    List<Over> over = new ArrayList<>();
    for (int i = 0; i < (task.stored().isEmpty() ? 0 : task.make().useBys().size()); i++) {
      int output = i;
      Duration early = Duration.between(placed.end(), task.end());
      Optional<Instant> use =
          task.make().served().stream()
              .filter(need -> need.output() == output && !makes.contains(need.user()))
              .map(halfgram.prep.netting.Need::lastUse)
              .max(Instant::compareTo);
      Reason reason = task.make().version().outputs().get(output).hold().reason();
      use.ifPresent(
          last -> {
            Duration by = Duration.between(task.make().useBy(output).minus(early), last);
            over.add(new Over(task.id(), Optional.empty(), by, reason));
          });
    }
    return over;
  }

  private static void add(List<Over> all, Over one) {
    Duration let = one.reason().isSafety() ? Duration.ZERO : Slots.SLOT;
    if (one.by().compareTo(let) > 0) {
      all.add(one);
    }
  }
}
