package halfgram.prep;

import halfgram.measure.Amount;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/**
 * Any entry a cook makes about a task. Ticks are only ever added; what a task has come to is folded
 * from them ({@link TaskProgress}).
 *
 * @param id made by the device, so that a repeat is known as one
 * @param task id of the task
 * @param line why path of the weigh line's mass, for a line weighed
 * @param amount for part done what there is so far, for done what was really made, for a line
 *     weighed what the plan asked for then
 * @param note what the problem is, or why it failed
 * @param cook who
 * @param at when, by the device's clock as the server corrected it
 * @param undoes id of the tick that an undo takes back
 */
public record Tick(
    UUID id,
    String task,
    Kind kind,
    Optional<String> line,
    Optional<Amount> amount,
    Optional<String> note,
    String cook,
    Instant at,
    Optional<UUID> undoes) {

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
    /** Another tick is taken back. */
    UNDO
  }
}
