package halfgram.desk;

import halfgram.prep.Task;
import halfgram.prep.Tick;
import java.util.List;
import java.util.Optional;

/** Ticks after which the plan can no longer be right. */
final class Unplanned {
  private Unplanned() {}

  /** Whether the plan can no longer be right: something failed, or gave less than planned. */
  static boolean isFact(Task task, Tick tick, List<Tick> history) {
    return switch (tick.kind()) {
      case FAILED -> true;
      case DONE -> isShort(task, tick);
      case UNDO ->
          history.stream()
              .filter(one -> tick.undoes().equals(Optional.of(one.id())))
              .anyMatch(one -> ends(task, one));
      case START, WEIGHED, PART_DONE, PROBLEM, SOLVED -> false;
      case NOTE, CALLED, ANSWERED, TIMED, LATER, HEARD, TASTED -> false;
    };
  }

  /** Whether a tick changes what is there, so that taking it back does too. */
  private static boolean ends(Task task, Tick tick) {
    return tick.kind() == Tick.Kind.FAILED
        || (task.kind() == Task.Kind.THAW && !tick.kind().isWord())
        || isShort(task, tick);
  }

  private static boolean isShort(Task task, Tick tick) {
    return tick.kind() == Tick.Kind.DONE
        && !task.stored().isEmpty()
        && tick.amount()
            .filter(made -> made.compareTo(task.stored().get(0).made()) < 0)
            .isPresent();
  }
}
