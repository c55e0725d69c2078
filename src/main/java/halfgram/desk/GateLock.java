package halfgram.desk;

import halfgram.db.Tx;
import halfgram.formula.Gate;
import halfgram.formula.Step;
import halfgram.measure.Message;
import halfgram.prep.GateProgress;
import halfgram.prep.GateStore;
import halfgram.prep.Make;
import halfgram.prep.Task;
import halfgram.prep.Tick;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Holds a batch back until the gates of its steps are passed.
 *
 * <p>Rules. A step with a gate is not done, and no later step is started, before somebody has said
 * go. The test piece of a run through baths stands before the run: until it is passed nothing is
 * dropped. Weighing ahead is nobody's harm.
 */
public final class GateLock {
  private static final Set<Tick.Kind> HELD =
      EnumSet.of(Tick.Kind.START, Tick.Kind.PART_DONE, Tick.Kind.DONE);

  private final GateStore store = new GateStore();

  /** A gate of a batch, and the task at which it stands. */
  public record At(Step step, Gate gate, String task) {}

  /** The gates of a batch in the order of its steps. */
  public static List<At> list(Make make) {
    return make.version().steps().stream()
        .flatMap(
            step -> step.gate().stream().map(gate -> new At(step, gate, task(make, step, gate))))
        .toList();
  }

  /** The gate that stands at a task. */
  public static Optional<At> find(Task task) {
    return list(task.make()).stream().filter(at -> at.task().equals(task.id())).findFirst();
  }

  private static String task(Make make, Step step, Gate gate) {
    boolean before = gate.kind() == Step.Check.TEST_PIECE && isInBath(make, step);
    return make.id() + "/" + step.code() + (before ? "/test-piece" : "");
  }

  private static boolean isInBath(Make make, Step step) {
    return make.version().dropping().filter(use -> use.step().equals(step.code())).isPresent();
  }

  /** Why a tick has to wait for a gate. */
  Optional<Message> refuses(Tx tx, House house, Task task, Tick.Kind kind) {
    if (!HELD.contains(kind) || task.kind() == Task.Kind.FRESH_BATH) {
      return Optional.empty();
    }
    return list(task.make()).stream()
        .filter(at -> holds(task, at, kind))
        .filter(at -> !GateProgress.fold(store.listOfTask(tx, house.id(), at.task())).isPassed())
        .findFirst()
        .map(
            at ->
                Message.of("gate.refused.open", Message.of(kindKey(at.gate())), at.step().name()));
  }

  /** The key of what is tried at a gate. */
  public static String kindKey(Gate gate) {
    return switch (gate.kind()) {
      case TASTING -> "gate.tasting";
      case TEST_PIECE -> "gate.test-piece";
    };
  }

  /** Whether a gate stands before what a tick says. */
  static boolean holds(Task task, At at, Tick.Kind kind) {
    if (task.id().equals(at.task())) {
      return kind == Tick.Kind.DONE;
    }
    Make make = task.make();
    int gate = make.version().stepIndex(at.step().code());
    int own = make.version().stepIndex(task.step().code());
    // The drops follow their test piece within one step.
    boolean drops = own == gate && task.kind() == Task.Kind.STEP;
    return own > gate || drops;
  }
}
