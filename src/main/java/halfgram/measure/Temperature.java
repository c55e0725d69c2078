package halfgram.measure;

import java.math.BigDecimal;

/**
 * A temperature in the unit it was typed or read in. A limit is judged in that unit and never
 * converted: codes print rounded pairs (57 °C and 135 °F are not the same temperature).
 */
public record Temperature(BigDecimal degrees, Scale scale) {
  /** Degrees Celsius or Fahrenheit. */
  public enum Scale {
    CELSIUS,
    FAHRENHEIT
  }

  public static Temperature celsius(String degrees) {
    return new Temperature(new BigDecimal(degrees), Scale.CELSIUS);
  }

  public static Temperature fahrenheit(String degrees) {
    return new Temperature(new BigDecimal(degrees), Scale.FAHRENHEIT);
  }

  /** In degrees Celsius, for showing beside the typed value; t_F = 1.8 t_C + 32 (definition). */
  public BigDecimal inCelsius() {
    return scale == Scale.CELSIUS
        ? degrees
        : degrees.subtract(BigDecimal.valueOf(32)).divide(new BigDecimal("1.8"), Exact.DIGITS);
  }
}
