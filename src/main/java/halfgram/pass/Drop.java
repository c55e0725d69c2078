package halfgram.pass;

import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.technique.bath.LiveBaths;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The next drop into a bath.
 *
 * <p>Rules. Of a run whose drops are entered at the bath it comes one turn of hands and baths after
 * the last one, and so many are left as put right what burst. Of any other run it comes when its
 * task starts, and what somebody entered as part done is out.
 *
 * @param task the run it belongs to
 * @param at when it is due
 * @param perDrop pieces of one drop
 * @param left drops still to come
 */
public record Drop(Task task, Instant at, int perDrop, long left) {

  /** Those to come of a sheet, one for each run that is not over, the first due first. */
  public static List<Drop> list(
      PrepSheet sheet, Map<String, TaskProgress> progress, List<LiveBaths> baths) {
    return sheet.runs().stream()
        .flatMap(run -> of(sheet, run, progress, baths).stream())
        .filter(drop -> drop.left() > 0)
        .sorted(Comparator.comparing(Drop::at))
        .toList();
  }

  private static Optional<Drop> of(
      PrepSheet sheet,
      PrepSheet.BathRun run,
      Map<String, TaskProgress> progress,
      List<LiveBaths> baths) {
    String step = run.make().version().dropping().map(use -> use.step()).orElse("");
    String id = run.make().id() + "/" + step;
    TaskProgress done = progress.getOrDefault(id, TaskProgress.NONE);
    if (done.state() == TaskState.DONE || done.state() == TaskState.FAILED) {
      return Optional.empty();
    }
    return sheet.tasks().stream()
        .filter(task -> task.id().equals(id))
        .findFirst()
        .map(task -> entered(run, task, baths).orElseGet(() -> ticked(run, task, done)));
  }

  private static Optional<Drop> entered(PrepSheet.BathRun run, Task task, List<LiveBaths> baths) {
    String id = run.make().id();
    return baths.stream()
        .filter(live -> !live.dropsOf(id).isEmpty())
        .findFirst()
        .flatMap(
            live ->
                live.findRun(id)
                    .map(
                        of -> {
                          Instant last =
                              live.dropsOf(id).stream()
                                  .map(LiveBaths.Drop::at)
                                  .max(Comparator.naturalOrder())
                                  .orElse(task.start());
                          long left = of.bath().drops(live.count(of).toDrop());
                          Instant at = last.plus(of.bath().interval());
                          return new Drop(task, at, of.bath().perDrop(), left);
                        }));
  }

  private static Drop ticked(PrepSheet.BathRun run, Task task, TaskProgress done) {
    long out =
        done.amount()
            .filter(amount -> amount.dimension() == Dimension.COUNT)
            .map(Amount::pieces)
            .orElse(0L);
    long pieces = Math.max(0, run.make().scaled().formed() - out);
    return new Drop(task, task.start(), run.bath().perDrop(), run.bath().drops(pieces));
  }
}
