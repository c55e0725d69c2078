package halfgram.prep;

import java.math.BigDecimal;
import java.math.BigInteger;

/** An exact rational number, for answers that owe nothing to 34 digits. */
record Fraction(BigInteger top, BigInteger bottom) implements Comparable<Fraction> {
  static final Fraction ZERO = new Fraction(BigInteger.ZERO, BigInteger.ONE);
  static final Fraction ONE = new Fraction(BigInteger.ONE, BigInteger.ONE);

  Fraction {
    BigInteger common = top.gcd(bottom);
    if (bottom.signum() < 0) {
      common = common.negate();
    }
    top = top.divide(common);
    bottom = bottom.divide(common);
  }

  static Fraction of(BigDecimal number) {
    return number.scale() >= 0
        ? new Fraction(number.unscaledValue(), BigInteger.TEN.pow(number.scale()))
        : new Fraction(number.toBigIntegerExact(), BigInteger.ONE);
  }

  Fraction plus(Fraction other) {
    return new Fraction(
        top.multiply(other.bottom).add(other.top.multiply(bottom)), bottom.multiply(other.bottom));
  }

  Fraction minus(Fraction other) {
    return plus(new Fraction(other.top.negate(), other.bottom));
  }

  Fraction times(Fraction other) {
    return new Fraction(top.multiply(other.top), bottom.multiply(other.bottom));
  }

  Fraction over(Fraction other) {
    return new Fraction(top.multiply(other.bottom), bottom.multiply(other.top));
  }

  Fraction least(Fraction other) {
    return compareTo(other) <= 0 ? this : other;
  }

  /** The next whole number at or above. */
  Fraction up() {
    BigInteger[] whole = top.divideAndRemainder(bottom);
    BigInteger next = whole[1].signum() > 0 ? whole[0].add(BigInteger.ONE) : whole[0];
    return new Fraction(next, BigInteger.ONE);
  }

  boolean isPositive() {
    return top.signum() > 0;
  }

  @Override
  public int compareTo(Fraction other) {
    return top.multiply(other.bottom).compareTo(other.top.multiply(bottom));
  }

  @Override
  public String toString() {
    return new BigDecimal(top).divide(new BigDecimal(bottom), java.math.MathContext.DECIMAL64) + "";
  }
}
