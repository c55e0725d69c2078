package halfgram.prep.crew;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Where a task is in the day: from when, by whom, on what.
 *
 * @param task its id
 * @param handsOff until when hands are on it
 * @param end when what stands unattended is done too
 * @param people codes of those who do it; none where nobody is named, or nobody has to be there
 * @param machines what it occupies
 * @param unload hands that take it out at its end; empty where it needs none that day
 * @param spells of long work by hand, each with its people, from the start until hands are off; one
 *     of everybody where none are given
 */
public record Placed(
    String task,
    Instant start,
    Instant handsOff,
    Instant end,
    List<String> people,
    List<Unit> machines,
    Optional<Hands> unload,
    List<Hands> spells) {
  public Placed {
    people = List.copyOf(people);
    machines = List.copyOf(machines);
    spells = spells.isEmpty() ? List.of(new Hands(start, handsOff, people)) : List.copyOf(spells);
  }

  /** In one spell, and nobody has to come back to it. */
  public Placed(
      String task,
      Instant start,
      Instant handsOff,
      Instant end,
      List<String> people,
      List<Unit> machines) {
    this(task, start, handsOff, end, people, machines, Optional.empty(), List.of());
  }

  /** From when until when somebody is at it. */
  public record Hands(Instant from, Instant to, List<String> people) {
    public Hands {
      people = List.copyOf(people);
    }

    boolean isBySame(Hands other) {
      return Set.copyOf(people).equals(Set.copyOf(other.people));
    }
  }

  /** When hands are on it and whose, until they are off: spells of the same people are one. */
  public List<Hands> turns() {
    List<Hands> turns = new ArrayList<>();
    for (Hands spell : spells) {
      Hands last = turns.isEmpty() ? spell : turns.get(turns.size() - 1);
      if (!turns.isEmpty() && last.to().equals(spell.from()) && last.isBySame(spell)) {
        turns.set(turns.size() - 1, new Hands(last.from(), spell.to(), last.people()));
      } else {
        turns.add(spell);
      }
    }
    return turns;
  }

  /** When hands are on it and whose: in turns, and when it is taken out. */
  public List<Hands> hands() {
    List<Hands> hands = turns();
    unload.ifPresent(hands::add);
    return hands;
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
