package halfgram.ingredient;

import halfgram.measure.Exact;
import halfgram.measure.Mass;
import halfgram.measure.Money;
import halfgram.measure.Ratio;

/** A pack as bought: its mass and price. */
public record Pack(Mass mass, Money price) {

  /** What one gram costs. */
  public Money perGram() {
    return price.times(new Ratio(java.math.BigDecimal.ONE.divide(mass.grams(), Exact.DIGITS)));
  }
}
