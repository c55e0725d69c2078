package halfgram.desk;

import halfgram.db.Tx;
import halfgram.measure.Message;
import halfgram.prep.GateStore;
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
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;

/**
 * Takes what was done on paper: several ticks, and what was said at gates, with their real times,
 * all of them or none.
 *
 * <p>Rules. They are taken in the order of their times, so that a tub that one task fills is there
 * for the next, whichever was written first. When one is not taken, nothing is; then all that is
 * wrong is told at once, and what stands only on something that was asked about is not asked about
 * too.
 */
public final class EnteringLater {

  private static final Set<TaskState> OVER = EnumSet.of(TaskState.DONE, TaskState.FAILED);

  /** One thing that was written down. */
  public sealed interface Line permits OfTask, AtGate {
    String task();

    Said said();

    Line saying(Said other);

    /** The value for whichever of the two it is. */
    <T> T fold(
        Function<Ticking.Entry, ? extends T> ofTask, Function<Gating.Entry, ? extends T> atGate);
  }

  /** What became of a task. */
  public record OfTask(Ticking.Entry entry) implements Line {
    @Override
    public String task() {
      return entry.task();
    }

    @Override
    public Said said() {
      return entry.said().orElseThrow();
    }

    @Override
    public Line saying(Said other) {
      return new OfTask(entry.saying(other));
    }

    @Override
    public <T> T fold(
        Function<Ticking.Entry, ? extends T> ofTask, Function<Gating.Entry, ? extends T> atGate) {
      return ofTask.apply(entry);
    }
  }

  /** What was said at its gate. */
  public record AtGate(Gating.Entry entry) implements Line {
    @Override
    public String task() {
      return entry.task();
    }

    @Override
    public Said said() {
      return entry.when().orElseThrow();
    }

    @Override
    public Line saying(Said other) {
      return new AtGate(entry.saying(other));
    }

    @Override
    public <T> T fold(
        Function<Ticking.Entry, ? extends T> ofTask, Function<Gating.Entry, ? extends T> atGate) {
      return atGate.apply(entry);
    }
  }

  /**
   * What became of one line.
   *
   * @param index its place in the list
   * @param because why it is not taken
   * @param asks what speaks against its time
   * @param change its number; zero for one that is not in, or was before
   */
  public record Answer(int index, Optional<Message> because, List<Message> asks, long change) {

    /** Whether it is in, or would be if the others were. */
    public boolean isTaken() {
      return because.isEmpty() && asks.isEmpty();
    }

    private static Answer refused(int index, Message because) {
      return new Answer(index, Optional.of(because), List.of(), 0);
    }

    private static Answer taken(int index, long change, boolean repeated) {
      return new Answer(index, Optional.empty(), List.of(), repeated ? 0 : change);
    }
  }

  private final Desk desk;
  private final Plans plans;
  private final Ticking ticking;
  private final Gating gating;
  private final PlanStore planStore = new PlanStore();
  private final TickStore ticks = new TickStore();
  private final GateStore gates = new GateStore();

  public EnteringLater(Desk desk, Plans plans, Ticking ticking, Gating gating) {
    this.desk = desk;
    this.plans = plans;
    this.ticking = ticking;
    this.gating = gating;
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

  /** What was entered later of gates on a day, and was not taken back; the last first. */
  public List<GateStore.Entered> listAtGates(House house, LocalDate day) {
    Instant begin = house.book().kitchen().clock().start(day);
    Instant end = house.book().kitchen().clock().start(day.plusDays(1));
    List<GateStore.Entered> all = desk.read(tx -> gates.listSince(tx, house.id(), begin));
    Set<UUID> undone = new HashSet<>();
    all.forEach(one -> one.entry().undoes().ifPresent(undone::add));
    List<GateStore.Entered> later =
        new ArrayList<>(
            all.stream()
                .filter(one -> one.later().isPresent() && !undone.contains(one.entry().id()))
                .filter(one -> !one.entry().at().isBefore(begin) && one.entry().at().isBefore(end))
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
   * Takes lines that all say a time; those of one time stay in their order.
   *
   * @return for each what became of it; when any was not taken, none is in
   */
  public List<Answer> enter(House house, LocalDate day, List<Line> lines) {
    try {
      return desk.write(house, tx -> all(tx, house, day, lines), EnteringLater::change);
    } catch (NotAll e) {
      return e.answers;
    }
  }

  private List<Answer> all(Tx tx, House house, LocalDate day, List<Line> lines) {
    List<Integer> order = new ArrayList<>();
    lines.forEach(line -> order.add(order.size()));
    order.sort(Comparator.comparing(index -> lines.get(index).said().at()));
    List<Answer> answers = new ArrayList<>();
    Set<String> refused = new HashSet<>();
    for (int index : order) {
      Line line = lines.get(index);
      if (refused.contains(line.task())) {
        continue;
      }
      Answer answer = enter(tx, house, day, index, line);
      answers.add(answer);
      if (!answer.asks().isEmpty()) {
        // As if they were sure: what comes after it is judged by what it would be then.
        answer = enter(tx, house, day, index, sure(line));
        if (!answer.isTaken()) {
          answers.add(answer);
        }
      }
      if (!answer.isTaken()) {
        refused.add(line.task());
      }
    }
    if (!answers.stream().allMatch(Answer::isTaken)) {
      throw new NotAll(answers);
    }
    return answers;
  }

  private Answer enter(Tx tx, House house, LocalDate day, int index, Line line) {
    return line.fold(
        tick -> answer(index, line.task(), ticking.tick(tx, house, day, tick)),
        word -> answer(index, gating.enter(tx, house, day, word)));
  }

  private static Answer answer(int index, String task, Ticking.Outcome outcome) {
    if (outcome instanceof Ticking.Taken taken) {
      return Answer.taken(index, taken.change(), taken.repeated());
    }
    if (outcome instanceof Ticking.Asks asks) {
      return new Answer(index, Optional.empty(), asks.because(), 0);
    }
    return Answer.refused(
        index,
        outcome instanceof Ticking.Refused refused
            ? refused.because()
            : Message.of("web.not-found", task));
  }

  private static Answer answer(int index, Gating.Outcome outcome) {
    if (outcome instanceof Gating.Taken taken) {
      return Answer.taken(index, taken.change(), taken.repeated());
    }
    return Answer.refused(
        index,
        outcome instanceof Gating.Refused refused
            ? refused.because()
            : Message.of("web.not-found", ((Gating.Unknown) outcome).what()));
  }

  private static Line sure(Line line) {
    return line.saying(new Said(line.said().at(), line.said().by(), true));
  }

  private static long change(List<Answer> answers) {
    return answers.stream().mapToLong(Answer::change).max().orElse(0);
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
