package halfgram.desk;

import halfgram.prep.KitchenBook;
import halfgram.prep.PlanStore;
import halfgram.prep.PrepSheet;
import halfgram.prep.ShortBatch;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * The plan in force on a day, with what its tasks have come to.
 *
 * @param book the book it was computed from, tubs included
 * @param progress by task id; a task without any is to do
 */
public record InForce(
    PlanStore.Accepted plan,
    KitchenBook book,
    PrepSheet sheet,
    Map<String, TaskProgress> progress) {

  /** A day ahead that nobody has put in force, as if it were: plan 0 of its day. */
  public static InForce ahead(Plans.Proposal preview, Instant now) {
    LocalDate day = preview.sheet().request().from();
    UUID none = new UUID(0, day.toEpochDay());
    PlanStore.Accepted plan =
        new PlanStore.Accepted(
            none, day, 0, Optional.empty(), none, now, "", "", "", preview.facts(), "", now, 0);
    return new InForce(plan, preview.book(), preview.sheet(), Map.of());
  }

  /** Whether somebody put it in force. */
  public boolean isAccepted() {
    return plan.number() > 0;
  }

  public TaskProgress progress(Task task) {
    return progress.getOrDefault(task.id(), TaskProgress.NONE);
  }

  public Optional<Task> findTask(String id) {
    return sheet.tasks().stream().filter(task -> task.id().equals(id)).findFirst();
  }

  /** Batches that are over and of which less came than is taken of them from now on. */
  public List<ShortBatch> listShort(Instant now) {
    return ShortBatch.list(sheet, book.kitchen().baseTolerance(), this::progress, now);
  }

  /** The tasks of the sheet by id. */
  public Map<String, Task> byId() {
    Map<String, Task> byId = new HashMap<>();
    sheet.tasks().forEach(task -> byId.put(task.id(), task));
    return byId;
  }
}
