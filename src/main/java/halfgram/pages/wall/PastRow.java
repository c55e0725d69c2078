package halfgram.pages.wall;

import halfgram.prep.Make;
import halfgram.prep.ServiceRun;
import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.words.Messages;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.LongSupplier;
import java.util.stream.Collectors;

/**
 * Something still open whose services are over: to make all the same, or to leave.
 *
 * @param id of its first open task
 * @param was what it was for, and since when that is over
 * @param hold that what is begun is past its hold; empty when it is not
 * @param open how many tasks are open
 * @param begun whether somebody has begun on it, so that leaving it bins something
 * @param sequence of the press that leaves it
 */
record PastRow(
    String id, String name, String was, String hold, String open, boolean begun, long sequence) {

  /** By make, what is past its hold first; none of the task in hand. */
  static List<PastRow> list(Scene scene, String hand, LongSupplier sequence) {
    Map<String, List<Task>> byMake = new LinkedHashMap<>();
    for (Task task : scene.tasks()) {
      if (scene.isPast(task)) {
        byMake.computeIfAbsent(task.make().id(), any -> new ArrayList<>()).add(task);
      }
    }
    return byMake.values().stream()
        .filter(tasks -> tasks.stream().noneMatch(task -> task.id().equals(hand)))
        .map(tasks -> of(scene, tasks, sequence.getAsLong()))
        .sorted(Comparator.comparing(row -> row.hold().isEmpty()))
        .toList();
  }

  private static PastRow of(Scene scene, List<Task> tasks, long sequence) {
    Messages words = scene.words();
    Task first = tasks.get(0);
    boolean begun = isBegun(scene, first.make());
    return new PastRow(
        first.id(),
        words.text(first.version().name()),
        was(scene, first.make()),
        begun ? hold(scene, first.make()) : "",
        tasks.size() == 1 ? words.say("wall.past-one") : words.say("wall.past-many", tasks.size()),
        begun,
        sequence);
  }

  private static boolean isBegun(Scene scene, Make make) {
    return scene.byId().values().stream()
        .filter(task -> task.make().id().equals(make.id()))
        .anyMatch(task -> scene.progress(task).state() != TaskState.TO_DO);
  }

  private static String was(Scene scene, Make make) {
    List<ServiceRun> runs = scene.past().getOrDefault(make.id(), List.of());
    String names =
        runs.stream()
            .map(run -> scene.words().text(run.name()))
            .distinct()
            .collect(Collectors.joining(", "));
    return runs.stream()
        .map(run -> run.window().end())
        .max(Instant::compareTo)
        .map(end -> scene.words().say("wall.past-since", names, scene.time(end)))
        .orElse(scene.words().say("wall.past-over", scene.names().user(make.service())));
  }

  private static String hold(Scene scene, Make make) {
    return make.useBys().stream()
        .filter(useBy -> !useBy.isAfter(scene.now()))
        .min(Instant::compareTo)
        .map(useBy -> scene.words().say("wall.past-hold", scene.time(useBy)))
        .orElse("");
  }
}
