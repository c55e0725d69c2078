package halfgram.prep;

import halfgram.measure.Message;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * The one table of what a tick does to a task in a state. Everything that takes ticks looks it up
 * here, and a device that must do so without the server gets {@link #CELLS} as data.
 *
 * <p>Rules. Weighing a line is being on it. What comes late, such as a line weighed or a second
 * done after the first, is kept and harms nothing. While there is a problem only lines and parts
 * are noted; it must be over before the task starts again or is done, and is then where it would be
 * without. What failed stays failed until that is undone, and is timed no more. A word about a task
 * moves it nowhere.
 */
public final class TickTable {

  /** What a kind of tick does in a state. */
  public sealed interface Cell permits To, Back, Refused {
    /** The value for whichever of the three it is. */
    <T> T fold(
        Function<TaskState, ? extends T> to,
        Supplier<? extends T> back,
        Function<Message, ? extends T> refused);
  }

  /** The task goes to a state, or stays in it. */
  public record To(TaskState state) implements Cell {
    @Override
    public <T> T fold(
        Function<TaskState, ? extends T> to,
        Supplier<? extends T> back,
        Function<Message, ? extends T> refused) {
      return to.apply(state);
    }
  }

  /** The task goes where it would be without the tick that is undone, or without the problem. */
  public record Back() implements Cell {
    @Override
    public <T> T fold(
        Function<TaskState, ? extends T> to,
        Supplier<? extends T> back,
        Function<Message, ? extends T> refused) {
      return back.get();
    }
  }

  /** The tick is not taken, and why. */
  public record Refused(Message because) implements Cell {
    @Override
    public <T> T fold(
        Function<TaskState, ? extends T> to,
        Supplier<? extends T> back,
        Function<Message, ? extends T> refused) {
      return refused.apply(because);
    }
  }

  /** Every kind of tick in every state. */
  public static final Map<Tick.Kind, Map<TaskState, Cell>> CELLS = cells();

  private TickTable() {}

  public static Cell get(Tick.Kind kind, TaskState state) {
    return java.util.Objects.requireNonNull(
        java.util.Objects.requireNonNull(CELLS.get(kind)).get(state));
  }

  private static Map<Tick.Kind, Map<TaskState, Cell>> cells() {
    Cell onIt = new To(TaskState.ON_IT);
    Cell part = new To(TaskState.PART_DONE);
    Cell done = new To(TaskState.DONE);
    Cell problem = new To(TaskState.PROBLEM);
    Cell back = new Back();
    Cell over = new Refused(Message.of("tick.refused.done"));
    Cell stuck = new Refused(Message.of("tick.refused.problem"));
    Cell fine = new Refused(Message.of("tick.refused.no-problem"));
    Cell failed = new To(TaskState.FAILED);
    Cell lost = new Refused(Message.of("tick.refused.failed"));
    Map<Tick.Kind, Map<TaskState, Cell>> cells = new EnumMap<>(Tick.Kind.class);
    // TO_DO, ON_IT, PART_DONE, DONE, PROBLEM, FAILED
    cells.put(Tick.Kind.START, row(onIt, onIt, onIt, over, stuck, lost));
    cells.put(Tick.Kind.WEIGHED, row(onIt, onIt, onIt, done, problem, failed));
    cells.put(Tick.Kind.PART_DONE, row(part, part, part, over, problem, lost));
    cells.put(Tick.Kind.DONE, row(done, done, done, done, stuck, lost));
    cells.put(Tick.Kind.PROBLEM, row(problem, problem, problem, problem, problem, lost));
    cells.put(Tick.Kind.SOLVED, row(fine, fine, fine, fine, back, fine));
    cells.put(Tick.Kind.FAILED, row(failed, failed, failed, failed, failed, failed));
    for (Tick.Kind kind : Tick.Kind.values()) {
      if (kind.isWord()) {
        Cell last = kind == Tick.Kind.TIMED ? lost : failed;
        cells.put(kind, row(new To(TaskState.TO_DO), onIt, part, done, problem, last));
      }
    }
    cells.put(Tick.Kind.UNDO, row(back, back, back, back, back, back));
    return Collections.unmodifiableMap(cells);
  }

  private static Map<TaskState, Cell> row(Cell... inOrder) {
    Map<TaskState, Cell> row = new EnumMap<>(TaskState.class);
    int at = 0;
    for (TaskState state : TaskState.values()) {
      row.put(state, inOrder[at++]);
    }
    return Collections.unmodifiableMap(row);
  }
}
