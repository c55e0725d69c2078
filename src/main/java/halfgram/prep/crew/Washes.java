package halfgram.prep.crew;

import halfgram.prep.Task;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * When a machine is washed and dried between two tasks.
 *
 * <p>Rules. Sub-batches of one formula follow each other as they are. What carries an allergen that
 * the next goes without is washed away first; so is anything before a step that wants its machine
 * dry, unless what ran before was dry too. Source: common practice; the kitchen's own plan decides.
 */
final class Washes {
  /** What a task leaves on a machine and asks of it. */
  private record Left(String formula, boolean dry, Set<String> allergens) {
    boolean goesBefore(Left next) {
      return formula.equals(next.formula)
          || (next.allergens.containsAll(allergens) && (dry || !next.dry));
    }
  }

  private final Map<Left, Integer> numbers = new LinkedHashMap<>();

  /** Nothing at all: for what runs through no machine. */
  int none() {
    return number(new Left("", true, Set.of()));
  }

  int of(Task task) {
    return number(
        new Left(task.version().formula(), task.step().dry(), new TreeSet<>(task.allergens())));
  }

  private int number(Left left) {
    return numbers.computeIfAbsent(left, one -> numbers.size());
  }

  List<List<Boolean>> cleans() {
    List<Left> all = new ArrayList<>(numbers.keySet());
    return all.stream()
        .map(before -> all.stream().map(next -> !before.goesBefore(next)).toList())
        .toList();
  }
}
