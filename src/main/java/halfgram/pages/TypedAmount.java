package halfgram.pages;

import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Exact;
import java.math.BigDecimal;

/** An amount the way one would type it into a field, and the way the book reads it. */
public final class TypedAmount {
  private static final BigDecimal KILOGRAM = BigDecimal.valueOf(1000);

  private TypedAmount() {}

  /** "5.9 kg" to the gram, "250.5 g" to a tenth, "84 piece". */
  public static String of(Amount amount) {
    if (amount.dimension() == Dimension.COUNT) {
      return Exact.plain(amount.number(), 0) + " piece";
    }
    return amount.number().compareTo(KILOGRAM) >= 0
        ? Exact.plain(amount.number().movePointLeft(3), 3) + " kg"
        : Exact.plain(amount.number(), 1) + " g";
  }
}
