package halfgram.desk;

import halfgram.prep.PlanStore;
import halfgram.prep.Task;
import java.util.List;

/**
 * A task, in the plan in force or, when that has withdrawn it, in the last that had it.
 *
 * @param before the tasks of that plan that it comes after
 * @param after the tasks of that plan that come after it
 * @param others the other tasks of its make
 */
record FoundTask(
    PlanStore.Accepted plan, Task task, List<Task> before, List<Task> after, List<Task> others) {

  List<String> otherIds() {
    return others.stream().map(Task::id).toList();
  }
}
