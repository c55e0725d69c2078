package halfgram.prep;

import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Exact;
import halfgram.measure.Mass;
import halfgram.measure.Ratio;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;

/** How values are written in derivations: plainly, with their unit, in no language. */
final class Notes {
  private Notes() {}

  static String grams(BigDecimal grams) {
    return Exact.plain(grams, 6) + " g";
  }

  static String grams(Amount amount) {
    return grams(amount.number());
  }

  static String grams(Mass mass) {
    return grams(mass.grams());
  }

  static String amount(Amount amount) {
    return amount.dimension() == Dimension.COUNT
        ? Exact.plain(amount.number(), 4) + " pc"
        : grams(amount);
  }

  static String percent(Ratio ratio) {
    return Exact.plain(ratio.percent(), 4) + " %";
  }

  static String minutes(Duration duration) {
    return duration.toMinutes() + " min";
  }

  static String time(KitchenBook book, Instant instant) {
    return instant.atZone(book.kitchen().clock().zone()).toLocalDateTime().toString();
  }
}
