package halfgram.book;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;

/**
 * Numbers of a book within bounds. JSON allows 1e-999999999, and adding 1 to that would take a
 * number of a thousand million digits; so what is finer than 18 decimals is rounded away here,
 * where no kitchen notices it.
 */
final class Numbers {
  private static final int DECIMALS = 18;

  private Numbers() {}

  /** The number if it is one from least to most, both included. */
  static Optional<BigDecimal> between(JsonNode value, BigDecimal least, BigDecimal most) {
    if (!value.isNumber()) {
      return Optional.empty();
    }
    BigDecimal number = value.decimalValue();
    boolean inside = number.compareTo(least) >= 0 && number.compareTo(most) <= 0;
    return inside ? Optional.of(rounded(number)) : Optional.empty();
  }

  /** Whether a number of the book has no decimals. */
  static boolean isWhole(BigDecimal number) {
    return number.stripTrailingZeros().scale() <= 0;
  }

  private static BigDecimal rounded(BigDecimal number) {
    long leading = (long) number.precision() - number.scale();
    if (leading < -DECIMALS) {
      return BigDecimal.ZERO;
    }
    return number.scale() > DECIMALS ? number.setScale(DECIMALS, RoundingMode.HALF_EVEN) : number;
  }
}
