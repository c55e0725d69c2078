package halfgram.desk;

import halfgram.db.Tx;
import halfgram.prep.PlanStore;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.prep.Tick;
import halfgram.prep.TickStore;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

/**
 * Takes what was done on paper: several ticks with their real times, all of them or none.
 *
 * <p>Rules. They are taken in the order of their times, so that a tub that one task fills is there
 * for the next, whichever was written first. When one is not taken, nothing is; then all that is
 * wrong is told at once, and what stands only on something that was asked about is not asked about
 * too.
 */
public final class EnteringLater {

  private static final Set<TaskState> OVER = EnumSet.of(TaskState.DONE, TaskState.FAILED);

  /**
   * What became of one entry.
   *
   * @param index its place in the list
   */
  public record Answer(int index, Ticking.Outcome outcome) {

    /** Whether it is in, or would be if the others were. */
    public boolean isTaken() {
      return outcome instanceof Ticking.Taken;
    }
  }

  private final Desk desk;
  private final Plans plans;
  private final Ticking ticking;
  private final PlanStore planStore = new PlanStore();
  private final TickStore ticks = new TickStore();

  public EnteringLater(Desk desk, Plans plans, Ticking ticking) {
    this.desk = desk;
    this.plans = plans;
    this.ticking = ticking;
  }

  /** What was entered later on a day, is in, and was not taken back; the last first. */
  public List<TickStore.Entered> list(House house, LocalDate day) {
    Instant begin = house.book().kitchen().clock().start(day);
    Instant end = house.book().kitchen().clock().start(day.plusDays(1));
    List<TickStore.Entered> all = desk.read(tx -> ticks.listSince(tx, house.id(), begin));
    Set<UUID> undone = new HashSet<>();
    all.forEach(one -> one.tick().undoes().ifPresent(undone::add));
    List<TickStore.Entered> later =
        new ArrayList<>(
            all.stream()
                .filter(one -> one.later().isPresent() && !undone.contains(one.tick().id()))
                .filter(one -> !one.tick().at().isBefore(begin) && one.tick().at().isBefore(end))
                .toList());
    Collections.reverse(later);
    return later;
  }

  /**
   * Tasks that an earlier plan of the day had and the one in force has not, and that are not over:
   * somebody may have worked from the paper of that plan.
   */
  public List<Task> listWithdrawn(House house, InForce inForce) {
    return desk.read(tx -> withdrawn(tx, house, inForce));
  }

  private List<Task> withdrawn(Tx tx, House house, InForce inForce) {
    Map<String, Task> gone = new LinkedHashMap<>();
    List<PlanStore.Accepted> all = planStore.list(tx, house.id(), inForce.plan().day());
    for (PlanStore.Accepted plan : all.subList(0, Math.max(0, all.size() - 1))) {
      plans.computed(tx, house, plan).sheet().tasks().forEach(task -> gone.put(task.id(), task));
    }
    inForce.sheet().tasks().forEach(task -> gone.remove(task.id()));
    Map<String, List<Tick>> said = ticks.listOfTasks(tx, house.id(), gone.keySet());
    return gone.values().stream()
        .filter(
            task -> {
              List<Tick> own = said.getOrDefault(task.id(), List.of());
              return !OVER.contains(TaskProgress.fold(own).state());
            })
        .toList();
  }

  /**
   * Takes entries that all say a time; those of one task at one time stay in their order.
   *
   * @return for each what became of it; when any was not taken, none is in
   */
  public List<Answer> enter(House house, LocalDate day, List<Ticking.Entry> entries) {
    try {
      return desk.write(house, tx -> all(tx, house, day, entries), EnteringLater::change);
    } catch (NotAll e) {
      return e.answers;
    }
  }

  private List<Answer> all(Tx tx, House house, LocalDate day, List<Ticking.Entry> entries) {
    List<Integer> order = new ArrayList<>();
    entries.forEach(entry -> order.add(order.size()));
    order.sort(Comparator.comparing(index -> said(entries.get(index)).at()));
    List<Answer> answers = new ArrayList<>();
    Set<String> refused = new HashSet<>();
    for (int index : order) {
      Ticking.Entry entry = entries.get(index);
      if (refused.contains(entry.task())) {
        continue;
      }
      Ticking.Outcome outcome = ticking.tick(tx, house, day, entry);
      answers.add(new Answer(index, outcome));
      if (outcome instanceof Ticking.Asks) {
        // As if they were sure: what comes after it is judged by what it would be then.
        outcome = ticking.tick(tx, house, day, sure(entry));
        if (!(outcome instanceof Ticking.Taken)) {
          answers.add(new Answer(index, outcome));
        }
      }
      if (!(outcome instanceof Ticking.Taken)) {
        refused.add(entry.task());
      }
    }
    if (!answers.stream().allMatch(Answer::isTaken)) {
      throw new NotAll(answers);
    }
    return answers;
  }

  private static Said said(Ticking.Entry entry) {
    return entry.said().orElseThrow();
  }

  private static Ticking.Entry sure(Ticking.Entry entry) {
    Said said = said(entry);
    return entry.saying(new Said(said.at(), said.by(), true));
  }

  private static long change(List<Answer> answers) {
    return answers.stream()
        .map(Answer::outcome)
        .filter(Ticking.Taken.class::isInstance)
        .map(Ticking.Taken.class::cast)
        .filter(taken -> !taken.repeated())
        .mapToLong(Ticking.Taken::change)
        .max()
        .orElse(0);
  }

  /** Takes back what was taken before the one that was not. */
  private static final class NotAll extends RuntimeException {
    private static final long serialVersionUID = 1;
    private final transient List<Answer> answers;

    private NotAll(List<Answer> answers) {
      super("not all of them", null, false, false);
      this.answers = List.copyOf(answers);
    }
  }
}
