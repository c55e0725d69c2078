package halfgram.pages;

import halfgram.measure.Money;
import halfgram.measure.Rounding;
import halfgram.words.Messages;
import java.math.BigDecimal;
import java.util.Collection;

/** What something had cost, in words: never nought for want of a price. */
public final class CostWords {
  private CostWords() {}

  /**
   * "2.40 EUR", "2.40 EUR; no price for dill", or "no price for dill" alone.
   *
   * @param cost of what had a price
   * @param unpriced codes of what had none
   */
  public static String said(
      Messages words, Money cost, Collection<String> unpriced, String currency) {
    if (unpriced.isEmpty() && cost.complete()) {
      return words.say("stock.cost", amount(words, cost, currency));
    }
    String none =
        unpriced.isEmpty()
            ? words.say("stock.no-cost")
            : words.say("stock.no-price", String.join(", ", unpriced));
    return cost.number().signum() > 0
        ? words.say("stock.cost-and", amount(words, cost, currency), none)
        : none;
  }

  private static String amount(Messages words, Money cost, String currency) {
    BigDecimal cents = Rounding.TO_CENT.round(cost.number());
    return cents.signum() == 0 && cost.number().signum() > 0
        ? words.say("stock.under-cent", currency)
        : cents.toPlainString() + " " + currency;
  }
}
