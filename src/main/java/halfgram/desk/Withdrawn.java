package halfgram.desk;

import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.prep.TickStore;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** Tasks of a day that its plan in force does without, and what was entered on them. */
public final class Withdrawn {
  private final Desk desk;
  private final Plans plans;
  private final TaskFinder finder;
  private final TickStore ticks = new TickStore();

  /** Something about a task that somebody has to know: a chef is wanted, or there is a problem. */
  public record Told(Task task, TaskProgress progress) {}

  public Withdrawn(Desk desk, Plans plans) {
    this.desk = desk;
    this.plans = plans;
    this.finder = new TaskFinder(plans);
  }

  /** The last plan of a day that had a task which the one in force has withdrawn. */
  public Optional<InForce> find(House house, LocalDate day, String task) {
    return desk.read(
        tx ->
            finder.find(tx, house, day, task).map(found -> plans.inForce(tx, house, found.plan())));
  }

  /** What somebody has to know of such tasks: where a chef is wanted, what has a problem. */
  public List<Told> listTold(House house, InForce inForce) {
    if (inForce.plan().number() == 1) {
      return List.of();
    }
    LocalDate day = inForce.plan().day();
    return desk.read(tx -> ticks.listTold(tx, house.id(), day, inForce.plan().number())).stream()
        .filter(task -> inForce.findTask(task).isEmpty())
        .flatMap(task -> find(house, day, task).stream().flatMap(of -> told(of, task).stream()))
        .toList();
  }

  private static Optional<Told> told(InForce then, String id) {
    return then.findTask(id)
        .map(task -> new Told(task, then.progress(task)))
        .filter(
            one ->
                one.progress().call().isPresent() || one.progress().state() == TaskState.PROBLEM);
  }
}
