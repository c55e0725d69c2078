package halfgram.prep;

import halfgram.formula.AllergenTrace;
import halfgram.formula.Cost;
import halfgram.measure.Money;
import halfgram.measure.Ratio;
import halfgram.menu.Diet;
import halfgram.menu.PlateItem;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;

/** What is on a plate, carried up from everything in it: its cost and its allergens. */
public final class Plated {
  private Plated() {}

  /** Food cost of one plate; incomplete when a price is missing. */
  public static Money cost(Cost cost, List<PlateItem> plate) {
    Money sum = Money.ZERO;
    for (PlateItem item : plate) {
      sum = sum.plus(cost.of(item.item(), item.amount(), Ratio.ONE));
    }
    return sum;
  }

  /** Whether nothing on a plate breaches any of the diets. */
  public static boolean suits(
      KitchenBook book, AllergenTrace trace, List<PlateItem> plate, SortedSet<String> diets) {
    return findBreach(book, trace, plate, diets).isEmpty();
  }

  /** The first thing on a plate that one of the diets forbids, with the way it came in. */
  public static Optional<Breach> findBreach(
      KitchenBook book, AllergenTrace trace, List<PlateItem> plate, SortedSet<String> diets) {
    for (String code : diets) {
      Diet diet = book.diets().get(code);
      for (PlateItem item : plate) {
        Optional<String> breach =
            diet == null ? Optional.empty() : diet.findBreach(trace.of(item.item()));
        if (diet != null && breach.isPresent()) {
          return Optional.of(new Breach(diet, breach.get()));
        }
      }
    }
    return Optional.empty();
  }

  /** What a diet forbids and a plate has. */
  public record Breach(Diet diet, String way) {}

  /** Codes of the allergens on one plate. */
  public static SortedSet<String> allergens(KitchenBook book, List<PlateItem> plate) {
    AllergenTrace trace = new AllergenTrace(book.formulary(), book::ingredient);
    SortedSet<String> codes = new TreeSet<>();
    for (PlateItem item : plate) {
      codes.addAll(trace.of(item.item()).allergenCodes());
    }
    return codes;
  }
}
