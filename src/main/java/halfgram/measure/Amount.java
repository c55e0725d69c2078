package halfgram.measure;

import java.math.BigDecimal;
import java.util.List;

/**
 * How much of something, in flight: grams, millilitres or pieces with 34 digits. Amounts of
 * different dimensions never meet.
 *
 * <p>Example: {@code Amount.grams(300).dividedBy(Ratio.percent(75))} is 400 g.
 */
public record Amount(BigDecimal number, Dimension dimension) implements Comparable<Amount> {
  public static final Amount NO_MASS = new Amount(BigDecimal.ZERO, Dimension.MASS);

  public static Amount grams(BigDecimal grams) {
    return new Amount(grams, Dimension.MASS);
  }

  public static Amount grams(long grams) {
    return grams(BigDecimal.valueOf(grams));
  }

  public static Amount of(Mass mass) {
    return grams(mass.grams());
  }

  public static Amount pieces(long pieces) {
    return new Amount(BigDecimal.valueOf(pieces), Dimension.COUNT);
  }

  public static Amount zero(Dimension dimension) {
    return new Amount(BigDecimal.ZERO, dimension);
  }

  public Amount plus(Amount other) {
    return new Amount(number.add(same(other).number, Exact.DIGITS), dimension);
  }

  public Amount minus(Amount other) {
    return new Amount(number.subtract(same(other).number, Exact.DIGITS), dimension);
  }

  public Amount times(Ratio ratio) {
    return new Amount(number.multiply(ratio.number(), Exact.DIGITS), dimension);
  }

  /**
   * As {@link #times}, keeping every digit: for a product that is summed and rounded once after.
   */
  public Amount timesExactly(Ratio ratio) {
    return new Amount(number.multiply(ratio.number()), dimension);
  }

  /** The sum of amounts, at least one, rounded to 34 digits once. */
  public static Amount sum(List<Amount> amounts) {
    Amount first = amounts.get(0);
    BigDecimal sum = first.number;
    for (int i = 1; i < amounts.size(); i++) {
      sum = sum.add(first.same(amounts.get(i)).number);
    }
    return new Amount(sum.round(Exact.DIGITS), first.dimension);
  }

  public Amount times(long factor) {
    return new Amount(number.multiply(BigDecimal.valueOf(factor), Exact.DIGITS), dimension);
  }

  public Amount dividedBy(Ratio ratio) {
    if (ratio.isOne()) {
      return this;
    }
    return new Amount(number.divide(ratio.number(), Exact.DIGITS), dimension);
  }

  public Amount dividedBy(long parts) {
    return new Amount(number.divide(BigDecimal.valueOf(parts), Exact.DIGITS), dimension);
  }

  /** This amount over another of the same dimension. */
  public Ratio over(Amount other) {
    return new Ratio(number.divide(same(other).number, Exact.DIGITS));
  }

  public Amount rounded(Rounding rounding) {
    return new Amount(rounding.round(number), dimension);
  }

  public Amount atMost(Amount other) {
    return compareTo(other) <= 0 ? this : other;
  }

  public Amount atLeast(Amount other) {
    return compareTo(other) >= 0 ? this : other;
  }

  public boolean isZero() {
    return number.signum() == 0;
  }

  public boolean isPositive() {
    return number.signum() > 0;
  }

  /** The mass at rest; throws IllegalArgumentException when this is not a mass. */
  public Mass mass(Rounding rounding) {
    if (dimension != Dimension.MASS) {
      throw new IllegalArgumentException("not a mass: " + this);
    }
    return Mass.of(number, rounding);
  }

  /** Whole pieces; throws IllegalArgumentException when this is not a whole count. */
  public long pieces() {
    if (dimension != Dimension.COUNT) {
      throw new IllegalArgumentException("not a count: " + this);
    }
    return Rounding.UP_TO_WHOLE.round(number).longValueExact();
  }

  @Override
  public int compareTo(Amount other) {
    return number.compareTo(same(other).number);
  }

  private Amount same(Amount other) {
    if (dimension != other.dimension) {
      throw new IllegalArgumentException(dimension + " and " + other.dimension + " cannot meet");
    }
    return other;
  }
}
