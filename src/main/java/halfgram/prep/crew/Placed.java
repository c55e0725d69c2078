package halfgram.prep.crew;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * Where a task is in the day: from when, by whom, on what.
 *
 * @param task its id
 * @param handsOff until when hands are on it
 * @param end when what stands unattended is done too
 * @param people codes of those who do it; none where nobody is named, or nobody has to be there
 * @param machines what it occupies
 * @param unload hands that take it out at its end; empty where it needs none that day
 */
public record Placed(
    String task,
    Instant start,
    Instant handsOff,
    Instant end,
    List<String> people,
    List<Unit> machines,
    Optional<Hands> unload) {
  public Placed {
    people = List.copyOf(people);
    machines = List.copyOf(machines);
  }

  /** Nobody has to come back to it. */
  public Placed(
      String task,
      Instant start,
      Instant handsOff,
      Instant end,
      List<String> people,
      List<Unit> machines) {
    this(task, start, handsOff, end, people, machines, Optional.empty());
  }

  /** From when until when somebody is at it. */
  public record Hands(Instant from, Instant to, List<String> people) {
    public Hands {
      people = List.copyOf(people);
    }
  }

  /** When hands are on it and whose: first, and when it is taken out. */
  public List<Hands> hands() {
    Hands first = new Hands(start, handsOff, people);
    return unload.map(last -> List.of(first, last)).orElse(List.of(first));
  }

  /** Whether somebody has a hand in it. */
  public boolean isBy(String person) {
    return hands().stream().anyMatch(one -> one.people().contains(person));
  }

  /**
   * One of several machines alike.
   *
   * @param number from 1
   */
  public record Unit(String equipment, int number) {}
}
