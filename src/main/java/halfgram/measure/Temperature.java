package halfgram.measure;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

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

  private static final Pattern FORM = Pattern.compile("(-?\\d{1,3}(?:\\.\\d)?) °?([CF])");

  /** "4 °C" or "39.2 °F"; the degree sign may be left out. */
  public static Optional<Temperature> parse(String text) {
    Matcher form = FORM.matcher(text.strip());
    if (!form.matches()) {
      return Optional.empty();
    }
    Scale scale = form.group(2).equals("C") ? Scale.CELSIUS : Scale.FAHRENHEIT;
    return Optional.of(new Temperature(new BigDecimal(form.group(1)), scale));
  }

  public static Temperature celsius(String degrees) {
    return new Temperature(new BigDecimal(degrees), Scale.CELSIUS);
  }

  public static Temperature fahrenheit(String degrees) {
    return new Temperature(new BigDecimal(degrees), Scale.FAHRENHEIT);
  }

  public boolean isCelsius() {
    return scale == Scale.CELSIUS;
  }

  /** In degrees Fahrenheit, for showing beside the typed value; t_F = 1.8 t_C + 32 (definition). */
  public BigDecimal inFahrenheit() {
    return scale == Scale.FAHRENHEIT
        ? degrees
        : degrees.multiply(new BigDecimal("1.8")).add(BigDecimal.valueOf(32));
  }

  /** In degrees Celsius, for showing beside the typed value; t_F = 1.8 t_C + 32 (definition). */
  public BigDecimal inCelsius() {
    return scale == Scale.CELSIUS
        ? degrees
        : degrees.subtract(BigDecimal.valueOf(32)).divide(new BigDecimal("1.8"), Exact.DIGITS);
  }

  @Override
  public String toString() {
    return degrees.toPlainString() + (scale == Scale.CELSIUS ? " °C" : " °F");
  }
}
