package halfgram.pages.wall;

import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.web.Visit;
import java.util.List;
import java.util.Locale;

/**
 * One task in a list of the wall.
 *
 * @param href where it is worked on, within the kitchen
 * @param amount what it gives, while it is free to be begun; else empty, and its state is said
 * @param late since when it should be begun; empty while it need not be, and once somebody has
 */
record NextRow(
    String href,
    String time,
    String name,
    String step,
    String sub,
    String late,
    String amount,
    String state,
    String look) {

  static NextRow of(Scene scene, Task task) {
    TaskState state = scene.progress(task).state();
    List<String> waits = scene.waitsFor(task);
    boolean free = state == TaskState.TO_DO && waits.isEmpty();
    String gives = task.stored().isEmpty() ? "" : scene.names().amount(task.stored().get(0).made());
    String sub =
        waits.isEmpty() || (scene.hasNoPlace(task) && !scene.isOver(task))
            ? scene
                .progress(task)
                .onIt()
                .map(on -> scene.words().say("wall.has-it", scene.person(on.cook())))
                .orElseGet(() -> scene.isOver(task) ? "" : scene.planned(task))
            : waits.get(0);
    String name = scene.words().text(task.version().name());
    return new NextRow(
        "wall/" + scene.station() + "?task=" + Visit.encoded(task.id()),
        scene.time(scene.start(task)),
        name,
        scene.step(task).equals(name) ? "" : scene.step(task),
        sub,
        scene.late(task),
        free ? gives : "",
        scene.state(task),
        free ? "to-do" : waits.isEmpty() ? lower(state) : "waits");
  }

  private static String lower(TaskState state) {
    return state.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
