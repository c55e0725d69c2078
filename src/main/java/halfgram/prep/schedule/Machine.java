package halfgram.prep.schedule;

import java.util.List;

/**
 * A machine, or several alike.
 *
 * @param units how many there are
 * @param wash slots to wash and dry one between what does not go together
 * @param scrub slots of that with hands on it; afterwards it dries
 * @param washers the cooks that can wash it, by index
 * @param out units that do not work for a while
 */
public record Machine(
    String id, int units, int wash, int scrub, List<Integer> washers, List<Out> out) {
  public Machine {
    washers = List.copyOf(washers);
    out = List.copyOf(out);
    if (scrub < 0 || scrub > wash) {
      throw new IllegalArgumentException(id + " is washed longer than it is washed and dried");
    }
  }

  /** One that nobody has to wash by hand. */
  public Machine(String id, int units, int wash, List<Out> out) {
    this(id, units, wash, 0, List.of(), out);
  }

  /**
   * Broken, or lent.
   *
   * @param units how many, the last ones
   */
  public record Out(int units, Cook.Span span) {}
}
