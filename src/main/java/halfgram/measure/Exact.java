package halfgram.measure;

import java.math.BigDecimal;
import java.math.MathContext;

/** The one number format of values in flight: 34 decimal digits (IEEE 754 decimal128). */
public final class Exact {
  public static final MathContext DIGITS = MathContext.DECIMAL128;
  public static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

  /** Powers of ten as doubles, for {@link #approximately}. */
  private static final double[] TENTHS = new double[64];

  static {
    for (int i = 0; i < TENTHS.length; i++) {
      TENTHS[i] = Double.parseDouble("1e-" + i);
    }
  }

  private Exact() {}

  /**
   * The number as a double, to a few units in the last place: for physics and for weighing costs,
   * never back into a mass. Much quicker than {@link BigDecimal#doubleValue}.
   */
  public static double approximately(BigDecimal number) {
    int scale = number.scale();
    return scale >= 0 && scale < TENTHS.length
        ? number.unscaledValue().doubleValue() * TENTHS[scale]
        : number.doubleValue();
  }

  /** The next whole number, a millionth allowed for binary rounding: 300000.0000001 is 300000. */
  public static long ceiling(double number) {
    return (long) Math.ceil(number - 1e-6);
  }

  /**
   * The number as a person would write it: no exponent, no trailing zeros, at most so many decimals
   * (half up).
   *
   * <p>Example: {@code plain(2.4500, 3)} is "2.45" and {@code plain(1E+3, 3)} is "1000".
   */
  public static String plain(BigDecimal number, int decimals) {
    BigDecimal shown =
        number.scale() > decimals
            ? number.setScale(decimals, java.math.RoundingMode.HALF_UP)
            : number;
    BigDecimal stripped = shown.stripTrailingZeros();
    return (stripped.scale() < 0 ? stripped.setScale(0) : stripped).toPlainString();
  }
}
