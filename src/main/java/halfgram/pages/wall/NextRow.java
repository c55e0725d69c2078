package halfgram.pages.wall;

import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.web.Visit;
import halfgram.words.Figures;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * One task in a list of the wall.
 *
 * @param href where it is worked on, within the kitchen
 * @param time when it is planned to start; of a late one the latest start
 * @param who has it, or is to do it
 * @param sub what it waits for, or that the plan has no place for it
 * @param late a word where nobody has begun what should be begun; else empty
 * @param amount what it gives, while it is free to be begun; else its state is said
 */
record NextRow(
    String href,
    String time,
    String name,
    String step,
    String who,
    String sub,
    String late,
    Optional<Figures.Shown> amount,
    String state,
    String look) {

  static NextRow of(Scene scene, Task task) {
    TaskState state = scene.progress(task).state();
    List<String> waits = scene.waitsFor(task);
    boolean free = state == TaskState.TO_DO && scene.canStart(task);
    boolean leftOut = scene.hasNoPlace(task) && !scene.isOver(task);
    boolean late = !scene.late(task).isEmpty();
    String name = scene.words().text(task.version().name());
    return new NextRow(
        "wall/" + scene.station() + "?task=" + Visit.encoded(task.id()),
        scene.time(late ? task.start() : scene.start(task)),
        name,
        scene.step(task).equals(name) ? "" : scene.step(task),
        waits.isEmpty() && !leftOut ? who(scene, task) : "",
        leftOut ? scene.planned(task) : waits.stream().findFirst().orElse(""),
        late ? scene.words().say("wall.state.late") : "",
        free && !task.stored().isEmpty()
            ? Optional.of(scene.words().shown(task.stored().get(0).made()))
            : Optional.empty(),
        scene.state(task),
        state == TaskState.TO_DO && !free ? "waits" : lower(state));
  }

  private static String who(Scene scene, Task task) {
    return scene
        .progress(task)
        .onIt()
        .map(on -> scene.person(on.cook()))
        .orElseGet(() -> scene.isOver(task) ? "" : scene.planned(task));
  }

  private static String lower(TaskState state) {
    return state.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
