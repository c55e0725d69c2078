package halfgram.prep;

import halfgram.kitchen.Text;
import java.time.Instant;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;

/**
 * What a thing carries of what went through it.
 *
 * <p>Rules. A use leaves the allergens of its task in the thing, from its first tick on. A wash
 * takes away what was left by uses whose last tick lies before it: what goes on afterwards leaves
 * it again. A task that was said to be done with another kit has not used this one. An undone entry
 * counts as never said.
 *
 * @param by code of the allergen: where it is from
 * @param washed the last wash that counts
 */
public record Carrying(String thing, SortedMap<String, Use> by, Optional<Wash> washed) {

  /**
   * A task that a thing was used for.
   *
   * @param name of what was made
   * @param first when somebody first entered something of it
   * @param last when somebody last did
   */
  public record Use(
      String thing, String task, Text name, Set<String> allergens, Instant first, Instant last) {}

  public boolean isClean() {
    return by.isEmpty();
  }

  /**
   * What one thing carries.
   *
   * @param uses of all things
   * @param said of all things, in the order it was said
   */
  public static Carrying of(String thing, List<Use> uses, List<Wash> said) {
    List<Wash> counts = counting(said);
    Optional<Wash> washed =
        counts.stream()
            .filter(wash -> wash.cleans() && wash.thing().equals(thing))
            .max(Comparator.comparing(Wash::at));
    SortedMap<String, Use> by = new TreeMap<>();
    uses.stream()
        .filter(use -> isOf(use, thing, counts))
        .filter(use -> washed.filter(wash -> !use.last().isAfter(wash.at())).isEmpty())
        .sorted(Comparator.comparing(Use::first))
        .forEach(use -> use.allergens().forEach(code -> by.putIfAbsent(code, use)));
    return new Carrying(thing, by, washed);
  }

  /** Whether a use was of a thing; one done with another kit was of that, when the book has it. */
  private static boolean isOf(Use use, String thing, List<Wash> counts) {
    Optional<String> instead = instead(use.task(), use.thing(), counts);
    return instead.map(Things::machine).orElse(use.thing()).equals(thing);
  }

  /** What a task is done with in place of a thing. */
  public static Optional<String> instead(String task, String thing, List<Wash> said) {
    return counting(said).stream()
        .filter(one -> one.task().filter(task::equals).isPresent() && one.thing().equals(thing))
        .map(Wash::how)
        .reduce((one, other) -> other);
  }

  /** What was said and nobody has undone. */
  public static List<Wash> counting(List<Wash> said) {
    Set<UUID> undone = new HashSet<>();
    said.forEach(one -> one.undoes().ifPresent(undone::add));
    return said.stream()
        .filter(one -> one.undoes().isEmpty() && !undone.contains(one.id()))
        .toList();
  }
}
