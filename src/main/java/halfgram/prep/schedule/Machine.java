package halfgram.prep.schedule;

import java.util.List;

/**
 * A machine, or several alike.
 *
 * @param units how many there are
 * @param wash slots to wash and dry one between what does not go together
 * @param out units that do not work for a while
 */
public record Machine(String id, int units, int wash, List<Out> out) {
  public Machine {
    out = List.copyOf(out);
  }

  /**
   * Broken, or lent.
   *
   * @param units how many, the last ones
   */
  public record Out(int units, Cook.Span span) {}
}
