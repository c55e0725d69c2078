package halfgram.prep.crew;

import halfgram.formula.Reason;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.prep.netting.Need;
import halfgram.prep.schedule.Between;
import halfgram.prep.schedule.Job;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * What ties the jobs of tasks to each other, and to when what they make is eaten.
 *
 * <p>Rules. A task is over a little before its last slot is, and what stands after it stands from
 * then on. For safety that much less of its longest time is left in slots; one shorter than that
 * means at once. A hold of quality is counted in slots, and may be under one slot too long.
 */
final class TaskTies {
  private final PrepSheet sheet;
  private final TaskJobs made;
  private final Map<Integer, Integer> uses = new HashMap<>();
  private final Map<String, Set<String>> users = new HashMap<>();

  TaskTies(PrepSheet sheet, TaskJobs made) {
    this.sheet = sheet;
    this.made = made;
  }

  void link(Task task) {
    Integer to = made.jobOf.get(task.id());
    if (to == null || isDone(task)) {
      return;
    }
    for (Task.Link link : task.links()) {
      Integer from = made.lastOf.get(link.task());
      if (from == null) {
        continue;
      }
      if (task.kind() == Task.Kind.FRESH_BATH) {
        during(task, to);
        continue;
      }
      Duration slack = made.slack.getOrDefault(link.task(), Duration.ZERO);
      int min = Math.max(0, Slots.up(link.min().minus(slack)));
      OptionalInt max =
          link.max().isPresent()
              ? OptionalInt.of(Math.max(min, most(link.max().get(), slack, link.reason())))
              : OptionalInt.empty();
      made.lags.add(new Between(from, to, min, max, !link.reason().isSafety(), 0));
    }
  }

  private boolean isDone(Task task) {
    return made.facts.progress().getOrDefault(task.id(), TaskProgress.NONE).state()
        == TaskState.DONE;
  }

  /** A fresh bath is mixed at its moment of the run, wherever the run is. */
  private void during(Task fresh, int to) {
    String run = fresh.make().id() + "/" + fresh.step().code();
    Integer from = made.jobOf.get(run);
    if (from == null) {
      return;
    }
    for (Task task : sheet.tasks()) {
      if (task.id().equals(run)) {
        int offset = Slots.down(Duration.between(task.start(), fresh.start()));
        int spell = from;
        while (offset > made.jobs.get(spell).length()
            && spell < made.lastOf.getOrDefault(run, spell)) {
          offset -= made.jobs.get(spell).length();
          spell++;
        }
        int apart = offset - made.jobs.get(spell).length();
        made.lags.add(new Between(spell, to, apart, OptionalInt.of(apart), true, 0));
      }
    }
  }

  /** What is eaten later than it keeps is made too early: the last use ties its end. */
  void holds(Task task) {
    Integer last = made.lastOf.get(task.id());
    if (last == null || task.stored().isEmpty() || isDone(task)) {
      return;
    }
    for (int i = 0; i < task.make().version().outputs().size(); i++) {
      int output = i;
      Optional<Instant> use =
          task.make().served().stream()
              .filter(need -> need.output() == output)
              .map(Need::lastUse)
              .max(Instant::compareTo);
      if (use.isEmpty() || isOnSheet(task, output)) {
        continue;
      }
      Duration keeps = Duration.between(task.end(), task.make().useBy(output));
      if (keeps.compareTo(Duration.ofDays(30)) > 0) {
        continue;
      }
      Reason reason = task.make().version().outputs().get(output).hold().reason();
      int to = useAt(made.slots.up(use.get()));
      Duration slack = made.slack.getOrDefault(task.id(), Duration.ZERO);
      int max = Math.max(0, most(keeps, slack, reason));
      made.lags.add(new Between(last, to, -ANY, OptionalInt.of(max), !reason.isSafety(), 0));
    }
  }

  private static final int ANY = 1_000_000;

  /** What is left of a longest time in slots: one of quality may be overrun by less than a slot. */
  private static int most(Duration max, Duration slack, Reason reason) {
    Duration lost = reason.isSafety() ? slack : Slots.length(Slots.down(slack));
    return Slots.down(max.minus(lost));
  }

  /** Whether all that use an output are tasks with a link to it. */
  private boolean isOnSheet(Task task, int output) {
    Set<String> users = users(task);
    return task.make().served().stream()
        .filter(need -> need.output() == output)
        .allMatch(need -> users.contains(need.user()));
  }

  /** Ids of the makes whose tasks have a link to one. */
  private Set<String> users(Task task) {
    if (users.isEmpty()) {
      for (Task other : sheet.tasks()) {
        for (Task.Link link : other.links()) {
          users.computeIfAbsent(link.task(), any -> new HashSet<>()).add(other.make().id());
        }
      }
    }
    return users.getOrDefault(task.id(), Set.of());
  }

  /** A moment at which something is eaten, as a job that does not move. */
  private int useAt(int slot) {
    return uses.computeIfAbsent(
        slot,
        any -> {
          made.jobs.add(
              new Job(
                  "use@" + slot,
                  0,
                  0,
                  0,
                  1,
                  List.of(),
                  List.of(),
                  List.of(),
                  made.washes.none(),
                  Optional.empty(),
                  Optional.empty(),
                  Optional.of(Job.Spot.of(Math.max(0, slot), List.of()))));
          return made.jobs.size() - 1;
        });
  }
}
