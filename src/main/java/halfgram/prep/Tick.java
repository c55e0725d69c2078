package halfgram.prep;

import halfgram.measure.Amount;
import java.time.Instant;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * Any entry a cook makes about a task. Ticks are only ever added; what a task has come to is folded
 * from them ({@link TaskProgress}).
 *
 * @param id made by the device, so that a repeat is known as one
 * @param task id of the task
 * @param line why path of the weigh line's mass, for a line weighed; which timer, for one that is
 *     put off, heard or tasted for
 * @param amount for part done what there is so far, for done what was really made, for a line
 *     weighed what the plan asked for then
 * @param minutes for how long a timer is set or put off
 * @param note what the problem is, why it failed, what the chef is called for, what a timer is for
 * @param cook who
 * @param at when it was done: when it came, or as somebody said who entered it later
 * @param undoes id of the tick that an undo takes back
 */
public record Tick(
    UUID id,
    String task,
    Kind kind,
    Optional<String> line,
    Optional<Amount> amount,
    Optional<Integer> minutes,
    Optional<String> note,
    String cook,
    Instant at,
    Optional<UUID> undoes) {

  /** One that sets no timer. */
  public Tick(
      UUID id,
      String task,
      Kind kind,
      Optional<String> line,
      Optional<Amount> amount,
      Optional<String> note,
      String cook,
      Instant at,
      Optional<UUID> undoes) {
    this(id, task, kind, line, amount, Optional.empty(), note, cook, at, undoes);
  }

  /** What an entry says. */
  public enum Kind {
    /** I am on it. */
    START,
    /** One line of the weigh list is weighed. */
    WEIGHED,
    /** Some of it is done, and nobody is on it now. */
    PART_DONE,
    /** All of it is done, what stands alone included. */
    DONE,
    /** It cannot go on. */
    PROBLEM,
    /** A problem is over. */
    SOLVED,
    /** It is lost, with everything that its make has come to. */
    FAILED,
    /** Something to know about it. */
    NOTE,
    /** The chef is wanted there. */
    CALLED,
    /** The chef has come, or somebody for them. */
    ANSWERED,
    /** It stands from now on, or a timer runs that somebody wants beside. */
    TIMED,
    /** A timer that is due rings again a little later. */
    LATER,
    /** A timer that is due was heard. */
    HEARD,
    /** A chef has tasted what stood past its best, and says that it may be used. */
    TASTED,
    /** Another tick is taken back. */
    UNDO;

    private static final Set<Kind> WORDS =
        EnumSet.of(NOTE, CALLED, ANSWERED, TIMED, LATER, HEARD, TASTED);

    private static final Set<Kind> MOVES_TUBS = EnumSet.of(DONE, FAILED, UNDO);

    /** Whether tubs may be filled or emptied by it. */
    public boolean movesTubs() {
      return MOVES_TUBS.contains(this);
    }

    /** Whether it says something about a task and moves it nowhere. */
    public boolean isWord() {
      return WORDS.contains(this);
    }
  }
}
