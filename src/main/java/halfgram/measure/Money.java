package halfgram.measure;

import java.math.BigDecimal;

/**
 * Money in flight, 34 digits, in the kitchen's one currency; shown by {@link Rounding#TO_CENT}. A
 * sum in which a price was missing says so: it is a lower bound, never a total.
 */
public record Money(BigDecimal number, boolean complete) {
  public static final Money ZERO = new Money(BigDecimal.ZERO, true);
  public static final Money UNKNOWN = new Money(BigDecimal.ZERO, false);

  public static Money of(BigDecimal number) {
    return new Money(number, true);
  }

  public Money plus(Money other) {
    return new Money(number.add(other.number, Exact.DIGITS), complete && other.complete);
  }

  public Money times(Ratio ratio) {
    return new Money(number.multiply(ratio.number(), Exact.DIGITS), complete);
  }
}
