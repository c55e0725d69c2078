package halfgram.pages.wall;

import halfgram.desk.Withdrawn;
import halfgram.prep.Task;
import halfgram.prep.Tick;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;

/**
 * A place where a chef is wanted; it stands on every wall until somebody answers.
 *
 * @param what the task, and what it is about when that was said
 * @param who somebody, and since when
 */
record CalledRow(String task, String station, String what, String who, long sequence) {

  /**
   * Calls of the day that nobody has answered, in the order they were made.
   *
   * @param withdrawn tasks that the plan in force does without, and what was told of them
   */
  static List<CalledRow> list(Scene scene, List<Withdrawn.Told> withdrawn, LongSupplier sequence) {
    record Open(Task task, Tick call) {}
    List<Open> open = new ArrayList<>();
    for (Task task : scene.inForce().sheet().tasks()) {
      Optional<Tick> call = scene.progress(task).call();
      call.ifPresent(tick -> open.add(new Open(task, tick)));
    }
    for (Withdrawn.Told told : withdrawn) {
      told.progress().call().ifPresent(tick -> open.add(new Open(told.task(), tick)));
    }
    return open.stream()
        .sorted(
            Comparator.comparing((Open one) -> one.call().at()).thenComparing(o -> o.task().id()))
        .map(
            one ->
                new CalledRow(
                    one.task().id(),
                    scene.stationName(one.task().station()),
                    scene.names().title(one.task())
                        + one.call().note().map(note -> ": " + note).orElse(""),
                    scene.person(one.call().cook()) + ", " + scene.time(one.call().at()),
                    sequence.getAsLong()))
        .toList();
  }
}
