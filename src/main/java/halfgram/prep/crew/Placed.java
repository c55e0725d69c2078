package halfgram.prep.crew;

import java.time.Instant;
import java.util.List;

/**
 * Where a task is in the day: from when, by whom, on what.
 *
 * @param task its id
 * @param handsOff until when hands are on it
 * @param end when what stands unattended is done too
 * @param people codes of those who do it; none where nobody is named, or nobody has to be there
 * @param machines what it occupies
 */
public record Placed(
    String task,
    Instant start,
    Instant handsOff,
    Instant end,
    List<String> people,
    List<Unit> machines) {
  public Placed {
    people = List.copyOf(people);
    machines = List.copyOf(machines);
  }

  /**
   * One of several machines alike.
   *
   * @param number from 1
   */
  public record Unit(String equipment, int number) {}
}
