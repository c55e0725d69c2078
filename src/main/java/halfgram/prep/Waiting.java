package halfgram.prep;

import halfgram.formula.Reason;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * What a task that nobody has started waits for.
 *
 * <p>Rules. It waits for each earlier task that is not done, and after one that is, until its rest
 * is over. A task that the sheet no longer has is not waited for: it was of an earlier day, or the
 * day was planned again without it.
 */
public sealed interface Waiting permits Waiting.ForTask, Waiting.Until {

  /** The value for whichever of the two it is. */
  <T> T fold(Function<ForTask, ? extends T> task, Function<Until, ? extends T> until);

  /** An earlier task that is not done. */
  record ForTask(Task task, TaskState state) implements Waiting {
    @Override
    public <T> T fold(Function<ForTask, ? extends T> task, Function<Until, ? extends T> until) {
      return task.apply(this);
    }
  }

  /** A rest after an earlier task that is not over. */
  record Until(Task task, Instant moment, Reason reason) implements Waiting {
    @Override
    public <T> T fold(Function<ForTask, ? extends T> task, Function<Until, ? extends T> until) {
      return until.apply(this);
    }
  }

  /**
   * Everything a task waits for at a moment; empty when it can start, or has.
   *
   * @param sheet the tasks of the sheet by id
   * @param progress by task id; a task without any is to do
   */
  static List<Waiting> of(
      Task task, Map<String, Task> sheet, Map<String, TaskProgress> progress, Instant now) {
    List<Waiting> waits = new ArrayList<>();
    if (progress.getOrDefault(task.id(), TaskProgress.NONE).state() != TaskState.TO_DO) {
      return waits;
    }
    for (Task.Link link : task.links()) {
      Task earlier = sheet.get(link.task());
      if (earlier != null) {
        find(earlier, link, progress.getOrDefault(link.task(), TaskProgress.NONE), now)
            .ifPresent(waits::add);
      }
    }
    return waits;
  }

  private static Optional<Waiting> find(
      Task earlier, Task.Link link, TaskProgress progress, Instant now) {
    if (progress.state() != TaskState.DONE) {
      return Optional.of(new ForTask(earlier, progress.state()));
    }
    Instant over = progress.doneAt().orElse(now).plus(link.min());
    return over.isAfter(now)
        ? Optional.of(new Until(earlier, over, link.reason()))
        : Optional.empty();
  }
}
