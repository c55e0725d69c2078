package halfgram.prep;

import halfgram.formula.AllergenTrace;
import halfgram.formula.Cost;
import halfgram.measure.Money;
import halfgram.measure.Ratio;
import halfgram.menu.PlateItem;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;

/** What is on a plate, carried up from everything in it: its cost and its allergens. */
public final class Plated {
  private Plated() {}

  /** Food cost of one plate; incomplete when a price is missing. */
  public static Money cost(KitchenBook book, List<PlateItem> plate) {
    Cost cost = new Cost(book.formulary(), book::ingredient);
    Money sum = Money.ZERO;
    for (PlateItem item : plate) {
      sum = sum.plus(cost.of(item.item(), item.amount(), Ratio.ONE));
    }
    return sum;
  }

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
