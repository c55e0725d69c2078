package halfgram.pages.wall;

import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.station.Person;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Which task of a station lies open when nobody has chosen one. */
final class InHand {
  private InHand() {}

  /**
   * The task this cook is on, else the first that can be started, else the first that waits; none
   * that nobody needs any more.
   */
  static Optional<Task> find(Scene scene) {
    List<Task> open = scene.tasks().stream().filter(task -> !scene.isOver(task)).toList();
    String cook = scene.cook().map(Person::code).orElse("");
    return open.stream()
        .filter(
            task -> scene.progress(task).onIt().filter(on -> on.cook().equals(cook)).isPresent())
        .max(Comparator.comparing(task -> scene.progress(task).onIt().orElseThrow().since()))
        .or(() -> needed(scene, open).filter(task -> isFree(scene, task)).findFirst())
        .or(() -> needed(scene, open).findFirst());
  }

  private static Stream<Task> needed(Scene scene, List<Task> open) {
    return open.stream().filter(task -> !scene.isPast(task));
  }

  private static boolean isFree(Scene scene, Task task) {
    TaskState state = scene.progress(task).state();
    return state == TaskState.PART_DONE || (state == TaskState.TO_DO && scene.canStart(task));
  }
}
