package halfgram.technique;

import halfgram.measure.Exact;
import halfgram.measure.Message;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * A number that a technique works out.
 *
 * @param unit as shown; "1" for a bare number
 * @param why how it came about
 */
public record Figure(String name, double number, String unit, Message why) {
  private static final MathContext SHOWN = new MathContext(4, RoundingMode.HALF_UP);

  /** To be read by a person: four digits, because no input deserves more. */
  public String shown() {
    return unit.equals("1") ? plain(number) : plain(number) + " " + unit;
  }

  /** A number in four digits, without an exponent. */
  public static String plain(double number) {
    if (Double.isNaN(number) || Double.isInfinite(number)) {
      return "-";
    }
    BigDecimal rounded = new BigDecimal(number, SHOWN);
    return rounded.signum() == 0 ? "0" : Exact.plain(rounded, 9);
  }
}
