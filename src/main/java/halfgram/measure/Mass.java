package halfgram.measure;

import java.math.BigDecimal;

/**
 * A mass at rest: an exact count of micrograms (so numeric(18,6) in grams), at most 9.2e12 g. A
 * mass in flight is an {@link Amount} of grams.
 *
 * <p>Example: {@code Mass.grams("37.0").plus(Mass.grams("0.000001")).micrograms()} is 37000001.
 */
public record Mass(long micrograms) implements Comparable<Mass> {
  public static final Mass ZERO = new Mass(0);

  /** Exactly these grams; throws ArithmeticException when finer than a microgram. */
  public static Mass grams(String grams) {
    return exactly(new BigDecimal(grams));
  }

  /** Exactly these grams; throws ArithmeticException when finer than a microgram. */
  public static Mass exactly(BigDecimal grams) {
    return new Mass(grams.movePointRight(6).longValueExact());
  }

  /** These grams, rounded as named. */
  public static Mass of(BigDecimal grams, Rounding rounding) {
    return exactly(rounding.round(grams));
  }

  public BigDecimal grams() {
    return BigDecimal.valueOf(micrograms, 6);
  }

  public Mass plus(Mass other) {
    return new Mass(Math.addExact(micrograms, other.micrograms));
  }

  public Mass minus(Mass other) {
    return new Mass(Math.subtractExact(micrograms, other.micrograms));
  }

  public boolean isZero() {
    return micrograms == 0;
  }

  @Override
  public int compareTo(Mass other) {
    return Long.compare(micrograms, other.micrograms);
  }
}
