package halfgram.pages.wall;

import halfgram.formula.MachineUse;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.station.Breakdown;
import halfgram.station.Cook;
import halfgram.station.Works;
import halfgram.words.Dots;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What an open task lacks by what was said of crew and machines: a machine of its step of which
 * none works when it is to begin; once it is begun, one that may be the broken one, and whoever was
 * on it and went home.
 */
final class Lacking {
  private final Scene scene;
  private final Task task;
  private final TaskState state;

  Lacking(Scene scene, Task task) {
    this.scene = scene;
    this.task = task;
    this.state = scene.progress(task).beneath();
  }

  /** Whether some of every machine of the step works. */
  boolean isReady() {
    Instant at = at();
    return machines().stream().noneMatch(works -> works.units(at) == 0);
  }

  List<String> list() {
    List<String> said = new ArrayList<>();
    if (!scene.isOver(task)) {
      machines().forEach(works -> broken(works).ifPresent(said::add));
      gone().ifPresent(said::add);
    }
    return said;
  }

  private List<Works> machines() {
    return task.step().machines().stream()
        .map(MachineUse::equipment)
        .distinct()
        .flatMap(code -> scene.roll().findMachine(code).stream())
        .toList();
  }

  /** When the machine is wanted: now, or when the task is to begin. */
  private Instant at() {
    Instant start = scene.start(task);
    return state == TaskState.TO_DO && start.isAfter(scene.now()) ? start : scene.now();
  }

  /** "combi oven: 0 of 2 work since 10:00 · no gas". */
  private Optional<String> broken(Works works) {
    Instant at = at();
    int units = works.units(at);
    if (state == TaskState.TO_DO && units > 0) {
      return Optional.empty();
    }
    return works.broken().stream()
        .filter(one -> one.isOn(at))
        .max(Comparator.comparing(Breakdown::start))
        .map(last -> said(works, last, units));
  }

  private String said(Works works, Breakdown last, int units) {
    String name = scene.words().text(works.machine().name());
    String since = scene.time(last.start());
    List<String> parts = new ArrayList<>();
    parts.add(scene.words().say("wall.machine", name, units, works.machine().units(), since));
    last.said().note().ifPresent(parts::add);
    return Dots.join(parts);
  }

  private Optional<String> gone() {
    return scene
        .progress(task)
        .onIt()
        .filter(on -> state == TaskState.ON_IT)
        .map(TaskProgress.OnIt::cook)
        .flatMap(code -> scene.roll().findCook(code))
        .filter(cook -> cook.said().isPresent() && !cook.isIn(scene.now()))
        .map(Cook::person)
        .map(person -> scene.words().say("wall.not-in", person.name()));
  }
}
