package halfgram.ingredient;

import halfgram.kitchen.Text;
import halfgram.measure.Exact;
import halfgram.measure.Mass;
import halfgram.measure.Ratio;
import halfgram.measure.Rounding;
import halfgram.measure.Unit;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;

/**
 * A scale: its displayed step, its capacity (bowl included) and accuracy class.
 *
 * @param verification step it is verified in, g; the displayed one where there is no finer digit
 * @param reads the unit of its display: grams, or the ounces or pounds its step is written in
 * @param station where it stands; empty when it is shared
 */
public record Scale(
    String code,
    Text name,
    BigDecimal step,
    BigDecimal verification,
    Mass max,
    AccuracyClass accuracy,
    Unit reads,
    Optional<String> station) {

  /** Steps as written are no finer; what a microgram takes from an ounce is gone at that. */
  private static final int STEP_DECIMALS = 4;

  /** The least load the class recommends, g. Class III, step 1 g: 20 g. */
  public BigDecimal leastLoad() {
    return step.multiply(BigDecimal.valueOf(accuracy.leastSteps(verification)));
  }

  /** The error in service at a net load, relative to it. */
  public Ratio relativeError(BigDecimal grams) {
    BigDecimal counted = accuracy.isInDisplayedSteps() ? step : verification;
    BigDecimal steps = grams.divide(counted, Exact.DIGITS);
    BigDecimal error = counted.multiply(BigDecimal.valueOf(accuracy.toleranceSteps(steps)));
    return new Ratio(error.divide(grams, Exact.DIGITS));
  }

  /** Whether a net load weighs well enough here, with what already stands on the scale. */
  public boolean weighs(BigDecimal grams, Mass onScale, Ratio tolerance) {
    return grams.signum() > 0
        && grams.compareTo(leastLoad()) >= 0
        && grams.add(onScale.grams()).compareTo(max.grams()) <= 0
        && relativeError(grams).compareTo(tolerance) <= 0;
  }

  /** The number on its display for a mass it shows, with all its decimals: 4.5 oz for 127.57 g. */
  public BigDecimal display(BigDecimal grams) {
    BigDecimal one =
        step.divide(reads.factor(), Exact.DIGITS)
            .setScale(STEP_DECIMALS, RoundingMode.HALF_UP)
            .stripTrailingZeros();
    BigDecimal number = Rounding.toStep(grams.divide(reads.factor(), Exact.DIGITS), one);
    return number.setScale(Math.max(0, one.scale()), RoundingMode.HALF_UP);
  }

  /** What the display should read. */
  public Mass shown(BigDecimal grams) {
    return Mass.exactly(Rounding.toStep(grams, step));
  }
}
