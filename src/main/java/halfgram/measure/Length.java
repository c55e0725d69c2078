package halfgram.measure;

import java.math.BigDecimal;

/** A length inside a vessel, in millimetres: a level, a depth, a skin. */
public record Length(BigDecimal millimetres) {
  /** One inch, exactly (the international inch of 1959). */
  public static final BigDecimal INCH = new BigDecimal("25.4");

  public static Length millimetres(double millimetres) {
    return new Length(BigDecimal.valueOf(millimetres));
  }
}
