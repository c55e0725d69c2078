package halfgram.measure;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;

/** A length inside a vessel, in millimetres: a level, a depth, a skin; or of what is cut. */
public record Length(BigDecimal millimetres) {
  /** One inch, exactly (the international inch of 1959). */
  public static final BigDecimal INCH = new BigDecimal("25.4");

  private static final Map<String, BigDecimal> UNITS =
      Map.of("mm", BigDecimal.ONE, "cm", BigDecimal.TEN, "in", INCH);

  public static Length millimetres(double millimetres) {
    return new Length(BigDecimal.valueOf(millimetres));
  }

  /** The length that was typed, "8 mm" or "0.5 in"; empty when it is none. */
  public static Optional<Length> find(Quantity typed) {
    return Optional.ofNullable(UNITS.get(typed.unit()))
        .map(factor -> new Length(typed.number().multiply(factor)));
  }
}
