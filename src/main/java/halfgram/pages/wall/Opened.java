package halfgram.pages.wall;

import halfgram.desk.Withdrawn;
import halfgram.prep.Task;
import halfgram.words.Messages;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;

/**
 * The task that lies open on a wall.
 *
 * <p>Rules. Who has opened a task keeps it open when a plan withdraws it: with its weights of then,
 * and told what to do with what is in the bowl. What is entered on it counts.
 *
 * @param scene the station as the plan has it that knows the task: the one in force, else the last
 *     that had it
 * @param isWithdrawn whether the plan in force does without it
 */
record Opened(Scene scene, Optional<Task> task, boolean isWithdrawn) {

  /**
   * What lies open at a station.
   *
   * @param wanted the task that was asked for; empty for the one that comes first
   * @return empty when no plan of the day has that task
   */
  static Optional<Opened> find(Scene scene, String wanted, Withdrawn withdrawn) {
    Optional<Task> asked = Optional.ofNullable(scene.byId().get(wanted));
    if (asked.isPresent()) {
      return Optional.of(new Opened(scene, asked, false));
    }
    if (wanted.isEmpty()) {
      return Optional.of(new Opened(scene, InHand.find(scene), false));
    }
    return withdrawn
        .find(scene.house(), scene.day(), wanted)
        .map(scene::under)
        .map(then -> new Opened(then, Optional.ofNullable(then.byId().get(wanted)), true));
  }

  /** The task as the plan in force has it. */
  Optional<Task> inForce() {
    return isWithdrawn ? Optional.empty() : task;
  }

  /** Ids of the tasks of the plan in force, and of this one. */
  Set<String> beside(Scene now) {
    Set<String> ids = new HashSet<>(now.byId().keySet());
    task.map(Task::id).ifPresent(ids::add);
    return ids;
  }

  /**
   * That the task is withdrawn, and what to do; empty for one that is not.
   *
   * @param now the station as the plan in force has it
   */
  String said(Scene now) {
    return task.filter(of -> isWithdrawn).map(of -> said(now, of)).orElse("");
  }

  private String said(Scene now, Task withdrawn) {
    Messages words = now.words();
    String since = words.say("wall.withdrawn", now.time(now.inForce().plan().at()));
    return since
        + " "
        + words.say(
            scene.isOver(withdrawn)
                ? "wall.withdrawn-over"
                : scene.progress(withdrawn).last().isPresent()
                    ? "wall.withdrawn-begun"
                    : "wall.withdrawn-idle");
  }
}
