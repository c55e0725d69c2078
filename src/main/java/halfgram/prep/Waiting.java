package halfgram.prep;

import halfgram.formula.Reason;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * What a task that nobody has started waits for, under an open problem too.
 *
 * <p>Rules. It waits for each earlier task that is not done, and after one that is, until its rest
 * is over. A task that the sheet no longer has is not waited for: it was of an earlier day, or the
 * day was planned again without it. It waits for a delivery until that is here and checked in.
 */
public sealed interface Waiting permits Waiting.ForTask, Waiting.Until, Waiting.ForDelivery {

  /** The value for whichever of the three it is. */
  <T> T fold(
      Function<ForTask, ? extends T> task,
      Function<Until, ? extends T> until,
      Function<ForDelivery, ? extends T> delivery);

  /** An earlier task that is not done. */
  record ForTask(Task task, TaskState state) implements Waiting {
    @Override
    public <T> T fold(
        Function<ForTask, ? extends T> task,
        Function<Until, ? extends T> until,
        Function<ForDelivery, ? extends T> delivery) {
      return task.apply(this);
    }
  }

  /** A rest after an earlier task that is not over. */
  record Until(Task task, Instant moment, Reason reason) implements Waiting {
    @Override
    public <T> T fold(
        Function<ForTask, ? extends T> task,
        Function<Until, ? extends T> until,
        Function<ForDelivery, ? extends T> delivery) {
      return until.apply(this);
    }
  }

  /** A delivery that is not here, or not checked in. */
  record ForDelivery(Awaited awaited) implements Waiting {
    @Override
    public <T> T fold(
        Function<ForTask, ? extends T> task,
        Function<Until, ? extends T> until,
        Function<ForDelivery, ? extends T> delivery) {
      return delivery.apply(this);
    }
  }

  /**
   * Everything a task waits for at a moment; empty when it can start, or has.
   *
   * @param sheet the tasks of the sheet by id
   * @param progress by task id; a task without any is to do
   * @param awaited tasks that weigh what a delivery brings, by the deliveries of now
   */
  static List<Waiting> of(
      Task task,
      Map<String, Task> sheet,
      Map<String, TaskProgress> progress,
      List<Awaited> awaited,
      Instant now) {
    List<Waiting> waits = new ArrayList<>();
    if (progress.getOrDefault(task.id(), TaskProgress.NONE).beneath() != TaskState.TO_DO) {
      return waits;
    }
    for (Task.Link link : task.links()) {
      Task earlier = sheet.get(link.task());
      if (earlier != null) {
        find(earlier, link, progress.getOrDefault(link.task(), TaskProgress.NONE), now)
            .ifPresent(waits::add);
      }
    }
    awaited.stream()
        .filter(one -> one.task().id().equals(task.id()) && one.holds(now))
        .forEach(one -> waits.add(new ForDelivery(one)));
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
