package halfgram.formula;

import halfgram.measure.Ratio;
import java.util.Optional;

/**
 * One line of a formula, in the order it goes in.
 *
 * @param code unique in its version
 * @param trim usable share of what is bought for its cut; 1 without a cut
 * @param weighed whether the written weight is before or after trim
 * @param holdBack share of the line held back to taste
 * @param vessel container code it is weighed into
 * @param step code of the step it goes in at
 * @param tolerance relative weighing error allowed, when it differs from the house rule
 * @param carrier code of the line that carries this one when it is too small to weigh
 * @param wholePacks whether the batch is raised until this line is whole packs
 * @param aside whether it is set out beside the mix and stays out of it: ice to cool in, a pot of
 *     water to blanch in
 */
public record Line(
    String code,
    Item item,
    Ratio trim,
    Weighed weighed,
    Dose dose,
    Ratio holdBack,
    Optional<String> vessel,
    String step,
    Optional<Ratio> tolerance,
    Optional<String> carrier,
    boolean wholePacks,
    boolean aside) {

  /** What the written weight is the weight of. */
  public enum Weighed {
    PREPARED,
    PURCHASED
  }

  /** What reaches the mix, per gram of basis. */
  public Ratio contribution() {
    if (aside) {
      return Ratio.ZERO;
    }
    return weighed == Weighed.PURCHASED ? dose.counted().times(trim) : dose.counted();
  }

  /** What has to be pulled or bought, per gram of basis. AP = EP / yield. */
  public Ratio purchased() {
    return weighed == Weighed.PREPARED ? dose.setOut().dividedBy(trim) : dose.setOut();
  }

  /** This line with another dose. */
  public Line withDose(Dose other) {
    return new Line(
        code,
        item,
        trim,
        weighed,
        other,
        holdBack,
        vessel,
        step,
        tolerance,
        carrier,
        wholePacks,
        aside);
  }
}
