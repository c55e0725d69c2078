package halfgram.desk;

import halfgram.db.Tx;
import halfgram.prep.PlanStore;
import halfgram.prep.Task;
import halfgram.prep.TaskCode;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** Finds what a code on a printed prep sheet leads to, as long as the plans of its day are kept. */
public final class Printed {

  /**
   * A task that was printed.
   *
   * @param inForce whether the plan in force on that day still has it
   */
  public record Found(LocalDate day, Task task, boolean inForce) {}

  private final Desk desk;
  private final Plans plans;
  private final PlanStore store = new PlanStore();

  public Printed(Desk desk, Plans plans) {
    this.desk = desk;
    this.plans = plans;
  }

  /** The task of a code, by the last plan of its day that has it. */
  public Optional<Found> find(House house, String code) {
    return TaskCode.day(code).flatMap(day -> desk.read(tx -> find(tx, house, day, code)));
  }

  private Optional<Found> find(Tx tx, House house, LocalDate day, String code) {
    List<PlanStore.Accepted> all = store.list(tx, house.id(), day);
    for (int i = all.size() - 1; i >= 0; i--) {
      boolean inForce = i == all.size() - 1;
      Optional<Found> found =
          plans.computed(tx, house, all.get(i)).sheet().tasks().stream()
              .filter(task -> TaskCode.isOf(code, task.id()))
              .findFirst()
              .map(task -> new Found(day, task, inForce));
      if (found.isPresent()) {
        return found;
      }
    }
    return Optional.empty();
  }
}
