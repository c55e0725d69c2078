package halfgram.measure;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Every rounding the program makes, by name. */
public enum Rounding {
  /** A mass comes to rest: to the nearest microgram, ties to even. */
  TO_MICROGRAM(6, RoundingMode.HALF_EVEN),
  /** A share worked out in binary physics comes back: nine decimals, ties to even. */
  FROM_PHYSICS(9, RoundingMode.HALF_EVEN),
  /** Covers, plates, pieces, fills and containers: up to the next whole one. */
  UP_TO_WHOLE(0, RoundingMode.CEILING),
  /** Pieces that a mass gives: only whole ones count. */
  DOWN_TO_WHOLE(0, RoundingMode.FLOOR),
  /** Money comes to rest: to a millionth, ties to even. */
  MONEY_AT_REST(6, RoundingMode.HALF_EVEN),
  /** Money shown: to the cent, ties to even. */
  TO_CENT(2, RoundingMode.HALF_EVEN);

  private final int scale;
  private final RoundingMode mode;

  Rounding(int scale, RoundingMode mode) {
    this.scale = scale;
    this.mode = mode;
  }

  /**
   * Rounds a number in flight. What 34 digits cannot hold (an error below 1e-20 of a unit) is
   * dropped first, so that 100 / (1/3 x 3) is not rounded up to 101.
   */
  public BigDecimal round(BigDecimal number) {
    return number.setScale(20, RoundingMode.HALF_EVEN).setScale(scale, mode);
  }

  /** The next multiple of a step at or above the number, as machines and packs ask. */
  public static BigDecimal upToStep(BigDecimal number, BigDecimal step) {
    return UP_TO_WHOLE.round(number.divide(step, Exact.DIGITS)).multiply(step);
  }

  /** The nearest multiple of a step, half up: what a scale of that step can show. */
  public static BigDecimal toStep(BigDecimal number, BigDecimal step) {
    return number.divide(step, Exact.DIGITS).setScale(0, RoundingMode.HALF_UP).multiply(step);
  }
}
