package halfgram.prep.timer;

import halfgram.formula.Reason;
import halfgram.prep.Task;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * A time that somebody in the kitchen has to keep, as it follows from the ticks.
 *
 * @param task whose ticks it follows from, and on which it is heard and put off
 * @param name which of that task's; the same on every device
 * @param since when it began
 * @param due when it is over; of a hold, the limit
 * @param rings when it sounds next, or has since; empty when that was heard
 * @param latest as late as it may be put off
 * @param reason why the limit is there, and who says so
 * @param then what it lets begin, and of a hold what has to begin by then
 * @param said what it was set for, when somebody said
 * @param tasted a chef's last word on it past its best
 */
public record Timer(
    Task task,
    String name,
    Kind kind,
    Instant since,
    Instant due,
    Optional<Instant> rings,
    Instant latest,
    Reason reason,
    List<Task> then,
    Optional<String> said,
    Optional<Holds.Taste> tasted) {

  /** What is timed. */
  public enum Kind {
    /** A task that goes on by itself. */
    STANDS,
    /** The least rest after a task. */
    RESTS,
    /** How long something may wait for its next step. */
    HOLD,
    /** One that a cook has set beside. */
    OWN
  }

  /** How far it is. */
  public enum State {
    RUNS,
    /** It sounds, until somebody says that it was heard. */
    RINGS,
    /** Over, and heard. */
    OVER,
    /** A hold whose best is past: a chef tastes it. */
    TASTE,
    /** A hold whose best is past, tasted and good for a while. */
    TASTED,
    /** A hold whose safety limit is past: it goes in the bin. */
    BIN
  }

  /** How far it is at a moment. */
  public State state(Instant now) {
    if (kind == Kind.HOLD && now.isAfter(due)) {
      boolean good = tasted.filter(one -> one.counts(now)).isPresent();
      return reason.isSafety() ? State.BIN : good ? State.TASTED : State.TASTE;
    }
    if (isRinging(now)) {
      return State.RINGS;
    }
    return rings.isPresent() || now.isBefore(due) ? State.RUNS : State.OVER;
  }

  public boolean isRinging(Instant now) {
    return rings.filter(at -> !at.isAfter(now)).isPresent();
  }

  /** Minutes by which it may be put off now, of some to choose from. */
  public List<Integer> laters(Instant now, List<Integer> choices) {
    return choices.stream()
        .filter(minutes -> !now.plus(Duration.ofMinutes(minutes)).isAfter(latest))
        .toList();
  }
}
