package halfgram.lot;

import halfgram.measure.Money;
import java.util.List;

/**
 * What something that was lost had cost, worked out when it was lost: never read off a till.
 *
 * @param cost to four decimals; says nothing when a price was missing
 * @param unpriced codes of the ingredients without a price
 */
public record Loss(Money cost, List<String> unpriced) {
  public Loss {
    unpriced = List.copyOf(unpriced);
  }

  /** Whether every price was known. */
  public boolean isKnown() {
    return cost.complete() && unpriced.isEmpty();
  }
}
