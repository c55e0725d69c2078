package halfgram.desk;

import halfgram.db.Tx;
import halfgram.prep.PlanStore;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * Finds a task in the plan in force or, when that has withdrawn it, in the last that had it: of the
 * same day, or of the day before, whose work and walls do not end with the clock.
 */
final class TaskFinder {
  private final Plans plans;
  private final PlanStore store = new PlanStore();

  TaskFinder(Plans plans) {
    this.plans = plans;
  }

  Optional<FoundTask> find(Tx tx, House house, LocalDate day, String task) {
    return find(tx, house, day, task, Optional.empty());
  }

  /**
   * As above.
   *
   * @param known the day as it stands, when it is known
   */
  Optional<FoundTask> find(
      Tx tx, House house, LocalDate day, String task, Optional<KnownDay> known) {
    Optional<FoundTask> inForce =
        known
            .map(of -> of.inForce().plan())
            .or(() -> plans.inForce(tx, house, day))
            .flatMap(plan -> find(tx, house, plan, task));
    if (inForce.isPresent()) {
      return inForce;
    }
    List<PlanStore.Accepted> before = new ArrayList<>(store.list(tx, house.id(), day.minusDays(1)));
    before.addAll(store.list(tx, house.id(), day));
    Collections.reverse(before);
    return before.stream().flatMap(plan -> find(tx, house, plan, task).stream()).findFirst();
  }

  private Optional<FoundTask> find(Tx tx, House house, PlanStore.Accepted plan, String task) {
    PrepSheet sheet = plans.computed(tx, house, plan).sheet();
    return sheet.tasks().stream()
        .filter(one -> one.id().equals(task))
        .findFirst()
        .map(
            one ->
                new FoundTask(
                    plan,
                    one,
                    sheet.before(one),
                    after(sheet.tasks(), one),
                    others(sheet.tasks(), one)));
  }

  private static List<Task> after(List<Task> all, Task task) {
    return all.stream()
        .filter(other -> other.links().stream().anyMatch(link -> link.task().equals(task.id())))
        .toList();
  }

  private static List<Task> others(List<Task> all, Task task) {
    return all.stream()
        .filter(other -> other.make().id().equals(task.make().id()) && !other.equals(task))
        .toList();
  }
}
