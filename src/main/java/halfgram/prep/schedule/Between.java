package halfgram.prep.schedule;

import java.util.OptionalInt;

/**
 * The time between the end of one job and the start of another.
 *
 * @param from index of the earlier job
 * @param to index of the later one
 * @param min slots at least
 * @param max slots at most; empty: as long as you like
 * @param yields whether its longest time may be overrun, at a price, when nothing else helps
 * @param dear cost of each slot that what waits stands longer than it must
 * @param holds slots of the later one for which what the earlier one stands on stays taken, and
 *     until it begins: somebody takes it out; {@link #FREE}: free at its own end
 */
public record Between(
    int from, int to, int min, OptionalInt max, boolean yields, int dear, int holds) {
  /** Nobody has to empty it. */
  public static final int FREE = -1;

  public Between {
    if (max.isPresent() && max.getAsInt() < min) {
      throw new IllegalArgumentException("at most " + max.getAsInt() + ", at least " + min);
    }
  }

  /** Time between two jobs that have nothing to do with each other's machines. */
  public Between(int from, int to, int min, OptionalInt max, boolean yields, int dear) {
    this(from, to, min, max, yields, dear, FREE);
  }

  boolean isHeld() {
    return holds != FREE;
  }

  /** Right after, or any time later. */
  public static Between after(int from, int to) {
    return new Between(from, to, 0, OptionalInt.empty(), false, 0);
  }
}
