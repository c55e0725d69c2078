package halfgram.measure;

import java.math.BigDecimal;

/** A pure number in flight, 34 digits: a percentage, a yield, a factor. */
public record Ratio(BigDecimal number) implements Comparable<Ratio> {
  public static final Ratio ZERO = new Ratio(BigDecimal.ZERO);
  public static final Ratio ONE = new Ratio(BigDecimal.ONE);

  public static Ratio percent(BigDecimal percent) {
    return new Ratio(percent.movePointLeft(2));
  }

  public static Ratio percent(long percent) {
    return percent(BigDecimal.valueOf(percent));
  }

  public static Ratio of(String number) {
    return new Ratio(new BigDecimal(number));
  }

  public Ratio plus(Ratio other) {
    return new Ratio(number.add(other.number, Exact.DIGITS));
  }

  public Ratio minus(Ratio other) {
    return new Ratio(number.subtract(other.number, Exact.DIGITS));
  }

  public Ratio times(Ratio other) {
    return new Ratio(number.multiply(other.number, Exact.DIGITS));
  }

  public Ratio dividedBy(Ratio other) {
    return new Ratio(number.divide(other.number, Exact.DIGITS));
  }

  /** One less this: what is left when this share is lost. */
  public Ratio rest() {
    return ONE.minus(this);
  }

  public BigDecimal percent() {
    return number.movePointRight(2);
  }

  public boolean isOne() {
    return number.compareTo(BigDecimal.ONE) == 0;
  }

  public boolean isZero() {
    return number.signum() == 0;
  }

  @Override
  public int compareTo(Ratio other) {
    return number.compareTo(other.number);
  }
}
