package halfgram.desk;

import halfgram.prep.TaskProgress;
import halfgram.prep.Tick;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A plan in force with every tick on its tasks, as {@link Memory} keeps it.
 *
 * @param ticks by task of the plan, in the order they were entered
 * @param folded what each task has come to by its own ticks alone
 */
record KnownDay(InForce inForce, Map<String, List<Tick>> ticks, Map<String, TaskProgress> folded) {

  /**
   * As read from the database.
   *
   * @param made the plan, its book and its sheet
   */
  static KnownDay of(InForce made, Map<String, List<Tick>> ticks) {
    Map<String, TaskProgress> folded = new HashMap<>();
    ticks.forEach((task, all) -> folded.put(task, TaskProgress.fold(all)));
    return new KnownDay(with(made, folded), ticks, folded);
  }

  private static InForce with(InForce made, Map<String, TaskProgress> folded) {
    Map<String, TaskProgress> progress = new HashMap<>(folded);
    BegunWork.lose(made.sheet(), progress);
    return new InForce(made.plan(), made.book(), made.sheet(), progress);
  }

  /** The ticks on one of its tasks; empty when the plan has no such task. */
  Optional<List<Tick>> findTicks(String task) {
    return isOurs(task) ? Optional.of(ticks.getOrDefault(task, List.of())) : Optional.empty();
  }

  /** What one of its tasks has come to by its own ticks alone; empty as for them. */
  Optional<TaskProgress> findProgress(String task) {
    return isOurs(task)
        ? Optional.of(folded.getOrDefault(task, TaskProgress.NONE))
        : Optional.empty();
  }

  private boolean isOurs(String task) {
    return ticks.containsKey(task) || inForce.findTask(task).isPresent();
  }

  /** The same after one more tick. */
  KnownDay after(Tick tick) {
    Optional<List<Tick>> before = findTicks(tick.task());
    if (before.isEmpty()) {
      return this;
    }
    List<Tick> all = new ArrayList<>(before.get());
    all.add(tick);
    Map<String, List<Tick>> more = new HashMap<>(ticks);
    more.put(tick.task(), List.copyOf(all));
    Map<String, TaskProgress> progress = new HashMap<>(folded);
    progress.put(tick.task(), TaskProgress.fold(all));
    return new KnownDay(with(inForce, progress), more, progress);
  }
}
