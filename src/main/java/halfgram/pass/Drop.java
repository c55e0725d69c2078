package halfgram.pass;

import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import java.util.Comparator;
import java.util.Map;
import java.util.Optional;

/**
 * The next drop into a bath.
 *
 * @param task the run it belongs to
 * @param perDrop pieces of one drop
 * @param left drops still to come, by what was entered as part done
 */
public record Drop(Task task, int perDrop, long left) {

  /** Of the run that is on, else of the next to start; none when all are over. */
  public static Optional<Drop> findNext(PrepSheet sheet, Map<String, TaskProgress> progress) {
    return sheet.runs().stream()
        .flatMap(run -> of(sheet, run, progress).stream())
        .filter(drop -> isOpen(drop, progress))
        .min(Comparator.comparing(drop -> drop.task().start()));
  }

  private static Optional<Drop> of(
      PrepSheet sheet, PrepSheet.BathRun run, Map<String, TaskProgress> progress) {
    String step = run.make().version().technique().map(use -> use.step()).orElse("");
    String id = run.make().id() + "/" + step;
    long out =
        progress
            .getOrDefault(id, TaskProgress.NONE)
            .amount()
            .filter(amount -> amount.dimension() == Dimension.COUNT)
            .map(Amount::pieces)
            .orElse(0L);
    long pieces = Math.max(0, run.make().scaled().formed() - out);
    return sheet.tasks().stream()
        .filter(task -> task.id().equals(id))
        .findFirst()
        .map(task -> new Drop(task, run.bath().perDrop(), run.bath().drops(pieces)));
  }

  private static boolean isOpen(Drop drop, Map<String, TaskProgress> progress) {
    TaskState state = progress.getOrDefault(drop.task().id(), TaskProgress.NONE).state();
    return state != TaskState.DONE && state != TaskState.FAILED;
  }
}
