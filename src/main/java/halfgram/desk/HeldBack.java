package halfgram.desk;

import halfgram.measure.Amount;
import halfgram.prep.GateEntry;
import halfgram.prep.GateProgress;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.prep.WeighGroup;
import halfgram.prep.WeighLine;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Part of a line that was weighed and held back to taste, of which nobody has said what became.
 *
 * @param day of the plan it belongs to
 * @param amount of all fills together
 */
public record HeldBack(LocalDate day, Task task, WeighLine line, Amount amount) {

  /**
   * The parts of a plan that are held back.
   *
   * @param entries what was said at its tasks, by task
   */
  public static List<HeldBack> list(InForce inForce, Map<String, List<GateEntry>> entries) {
    List<HeldBack> held = new ArrayList<>();
    for (Task task : inForce.sheet().tasks()) {
      TaskProgress progress = inForce.progress(task);
      List<GateEntry> said = entries.getOrDefault(task.id(), List.of());
      for (WeighGroup group : task.weigh()) {
        for (WeighLine line : group.lines()) {
          boolean there =
              progress.state() != TaskState.FAILED
                  && (progress.state() == TaskState.DONE
                      || progress.weighed().containsKey(line.path()));
          if (there
              && !line.heldBack().isZero()
              && GateProgress.heldBack(said, line.path()).isEmpty()) {
            Amount amount = Amount.of(line.heldBack()).times(task.fill().count());
            held.add(new HeldBack(inForce.plan().day(), task, line, amount));
          }
        }
      }
    }
    return held;
  }
}
