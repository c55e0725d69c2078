package halfgram.pages.today;

import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * A stretch of a group: what is done and what comes later lie folded where the group is long, so
 * that what comes next is in sight.
 *
 * @param key of the stretch, for its place on the page
 * @param said what lies folded in it; empty when it lies open
 */
record Fold(String key, String said, List<Row> rows) {
  /** A group with so many tasks or fewer lies open. */
  private static final int SHORT = 8;

  /** So many of a long one lie open: those on which somebody is, and the next. */
  private static final int NEXT = 5;

  /** Fewer than this are not worth folding. */
  private static final int FEW = 3;

  /** The tasks of a group by their start. */
  static List<Fold> of(Shown shown, Rows rows, List<Task> tasks, String key, boolean elsewhere) {
    List<Task> sorted = tasks.stream().sorted(Comparator.comparing(shown::start)).toList();
    if (sorted.size() <= SHORT) {
      return List.of(new Fold(key + "-all", "", rows(rows, sorted, elsewhere)));
    }
    List<Task> done = sorted.stream().filter(task -> isOver(shown, task)).toList();
    List<Task> open = sorted.stream().filter(task -> !isOver(shown, task)).toList();
    long busy = open.stream().filter(task -> isBusy(shown, task)).count();
    long idle = Math.max(0, NEXT - busy);
    List<Task> next = new ArrayList<>();
    List<Task> later = new ArrayList<>();
    for (Task task : open) {
      boolean first = !isBusy(shown, task) && idle-- > 0;
      (first || isBusy(shown, task) ? next : later).add(task);
    }
    if (later.size() < FEW) {
      next = open;
      later = List.of();
    }
    Messages words = shown.words();
    List<Fold> folds = new ArrayList<>();
    if (!done.isEmpty()) {
      String said = words.say("today.fold-done", done.size());
      folds.add(new Fold(key + "-done", said, rows(rows, done, elsewhere)));
    }
    if (!next.isEmpty()) {
      folds.add(new Fold(key + "-next", "", rows(rows, next, elsewhere)));
    }
    if (!later.isEmpty()) {
      folds.add(new Fold(key + "-later", later(shown, later), rows(rows, later, elsewhere)));
    }
    return folds;
  }

  private static List<Row> rows(Rows rows, List<Task> tasks, boolean elsewhere) {
    return tasks.stream().map(task -> rows.row(task, elsewhere)).toList();
  }

  private static String later(Shown shown, List<Task> later) {
    long late = later.stream().filter(task -> !StateWords.late(shown, task).isEmpty()).count();
    String first = shown.time(shown.start(later.get(0)));
    return late == 0
        ? shown.words().say("today.fold-later", later.size(), first)
        : shown.words().say("today.fold-late", later.size(), first, late);
  }

  private static boolean isOver(Shown shown, Task task) {
    TaskState state = shown.progress(task).state();
    return state == TaskState.DONE || state == TaskState.FAILED;
  }

  /** Whether somebody is on it, or has left it in the middle. */
  private static boolean isBusy(Shown shown, Task task) {
    TaskState state = shown.progress(task).state();
    return !isOver(shown, task) && state != TaskState.TO_DO;
  }
}
