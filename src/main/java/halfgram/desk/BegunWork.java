package halfgram.desk;

import halfgram.prep.Begun;
import halfgram.prep.Pace;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** What has begun of a plan by its ticks, and what is lost of it. */
final class BegunWork {
  private BegunWork() {}

  /** Where a task has failed, the rest of its make is lost with it. */
  static void lose(PrepSheet sheet, Map<String, TaskProgress> progress) {
    Map<String, TaskProgress> failed = new HashMap<>();
    for (Task task : sheet.tasks()) {
      TaskProgress own = progress.getOrDefault(task.id(), TaskProgress.NONE);
      if (own.state() == TaskState.FAILED) {
        failed.put(task.make().id(), own);
      }
    }
    if (failed.isEmpty()) {
      return;
    }
    for (Task task : sheet.tasks()) {
      TaskProgress cause = failed.get(task.make().id());
      if (cause != null) {
        TaskProgress own = progress.getOrDefault(task.id(), TaskProgress.NONE);
        progress.put(task.id(), own.lost(cause.problem()));
      }
    }
  }

  /**
   * The makes of a plan on which work has begun, as far as anybody can still want them; and what
   * somebody is on, whatever will come of it, as long as its day lasts.
   */
  static List<Begun> of(InForce inForce, Instant asOf) {
    Map<String, BegunJson.Steps> makes = new LinkedHashMap<>();
    Set<String> shut = new TreeSet<>();
    Set<String> inHand = new TreeSet<>();
    boolean sameDay = inForce.book().kitchen().clock().of(asOf).equals(inForce.plan().day());
    List<Task> all = new ArrayList<>(inForce.sheet().tasks());
    inForce.sheet().begun().forEach(one -> all.addAll(one.tasks()));
    Map<String, List<Task>> tasks = new HashMap<>();
    for (Task task : all) {
      tasks.computeIfAbsent(task.make().id(), make -> new ArrayList<>()).add(task);
      TaskState state = inForce.progress(task).state();
      if (isBegun(task, inForce.progress(task))) {
        makes.merge(task.make().id(), steps(task, state), BegunWork::both);
        if (task.kind() == Task.Kind.THAW
            || (!task.weigh().isEmpty() && isShut(inForce.progress(task), task, asOf))) {
          shut.add(task.make().id());
        }
        if (sameDay && isInHand(task, inForce.progress(task))) {
          inHand.add(task.make().id());
        }
      }
    }
    List<Begun> begun = new ArrayList<>();
    makes.forEach(
        (make, steps) -> {
          BegunJson.Steps going =
              steps
                  .stretching(!shut.contains(make))
                  .at(Pace.real(tasks.getOrDefault(make, List.of()), inForce::progress, asOf));
          Begun one = BegunJson.of(inForce.sheet(), make, going);
          if (isWanted(one, asOf) || inHand.contains(make)) {
            begun.add(one);
          }
        });
    return begun;
  }

  /**
   * Whether a task has been begun: a tub that has a problem before anybody has pulled it is still
   * to be pulled.
   */
  static boolean isBegun(Task task, TaskProgress progress) {
    boolean said = progress.state() != TaskState.TO_DO && progress.last().isPresent();
    boolean waits = progress.beneath() == TaskState.TO_DO;
    return said && !(task.kind() == Task.Kind.THAW && waits);
  }

  /** Whether somebody has taken a task up and neither finished nor lost it. */
  static boolean isInHand(Task task, TaskProgress progress) {
    boolean begun = progress.onIt().isPresent() || progress.begun().isPresent();
    return task.kind() == Task.Kind.STEP
        && begun
        && progress.dones().isEmpty()
        && progress.state() != TaskState.FAILED;
  }

  private static BegunJson.Steps steps(Task task, TaskState state) {
    // What is out of the freezer is among the tubs, whoever is still on it.
    boolean done =
        task.kind() == Task.Kind.THAW || (state == TaskState.DONE && task.kind() == Task.Kind.STEP);
    Set<String> step = Set.of(task.step().code());
    return new BegunJson.Steps(
        new TreeSet<>(step),
        new TreeSet<>(done ? step : Set.of()),
        state == TaskState.FAILED,
        true,
        Collections.emptySortedMap());
  }

  /**
   * Whether nothing more can be weighed into a task: unless somebody is on it, and for no longer
   * than hands are on it by the plan. After that it stands or cooks.
   */
  private static boolean isShut(TaskProgress progress, Task task, Instant asOf) {
    return progress.state() != TaskState.ON_IT
        || progress
            .onIt()
            .filter(
                on ->
                    on.worked().plus(Duration.between(task.start(), task.handsOff())).isAfter(asOf))
            .isEmpty();
  }

  private static BegunJson.Steps both(BegunJson.Steps one, BegunJson.Steps other) {
    one.started().addAll(other.started());
    one.done().addAll(other.done());
    return new BegunJson.Steps(
        one.started(), one.done(), one.failed() || other.failed(), true, one.real());
  }

  /** Finished work until it is eaten, unfinished work until what it gives is past its hold. */
  private static boolean isWanted(Begun one, Instant asOf) {
    Instant last = one.make().eaten();
    if (!one.over()) {
      for (Instant useBy : one.make().useBys()) {
        last = useBy.isAfter(last) ? useBy : last;
      }
    }
    return last.isAfter(asOf);
  }
}
