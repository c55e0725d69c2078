package halfgram.desk;

import halfgram.formula.Cost;
import halfgram.formula.FormulaVersion;
import halfgram.lot.Loss;
import halfgram.lot.Lot;
import halfgram.measure.Amount;
import halfgram.measure.Money;
import halfgram.measure.Ratio;
import halfgram.measure.Rounding;
import halfgram.prep.KitchenBook;
import java.util.List;
import java.util.SortedSet;

/** What is lost out of a tub had cost, by the version it was made by and the prices of now. */
final class Losses {
  /** More names than these nobody reads. */
  private static final int MOST_NAMED = 16;

  private Losses() {}

  static Loss of(KitchenBook book, Lot lot, Amount lost) {
    FormulaVersion version = book.formulary().get(lot.component());
    Cost cost = book.cost();
    SortedSet<String> unpriced = cost.unpriced(version);
    if (!unpriced.isEmpty()) {
      return new Loss(Money.UNKNOWN, unpriced.stream().limit(MOST_NAMED).toList());
    }
    int output = version.outputIndex(lot.component().output());
    Money spent = cost.perUnit(version, output).times(new Ratio(lost.number()));
    return new Loss(Money.of(Rounding.MONEY_AT_REST.round(spent.number())), List.of());
  }
}
