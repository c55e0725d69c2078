package halfgram.prep;

import halfgram.formula.Line;
import halfgram.ingredient.Weighing;
import halfgram.kitchen.Text;
import halfgram.measure.Exact;
import halfgram.measure.Mass;
import halfgram.measure.Quantity;
import halfgram.measure.Rounding;
import halfgram.prep.netting.Draw;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * One weight to weigh, of one fill.
 *
 * @param path why path of the mass
 * @param weighing the target, the display and the scale, or the dilution
 * @param apart weighed in a cup of its own, because the scale does not carry the vessel
 * @param heldBack part of it kept aside, to taste
 * @param atLeast for a from-to line, where to start looking
 * @param carries what a dilution of another line brings of this one, already taken off
 * @param carrier code of the line that carries a dilution of this one
 * @param counted pieces or bunches to count out instead of weighing
 * @param lookAlikes names of what it is easily taken for
 * @param pulled before trim, for all fills together
 * @param tubs from which tubs, for a component on hand
 */
public record WeighLine(
    String path,
    Line line,
    Text name,
    Weighing weighing,
    boolean apart,
    Mass heldBack,
    Optional<Mass> atLeast,
    Mass carries,
    Optional<String> carrier,
    Optional<Quantity> counted,
    List<Text> lookAlikes,
    Mass pulled,
    List<Draw> tubs) {

  /**
   * What is still to be weighed of it when less is in than is asked for now.
   *
   * @param in what was asked for when it was weighed
   * @return empty when all of it is in
   */
  public Optional<WeighLine> lacking(Mass in) {
    if (in.isZero() || in.compareTo(weighing.target()) >= 0) {
      return Optional.empty();
    }
    Weighing more = weighing.lacking(in);
    BigDecimal part = more.target().grams().divide(weighing.target().grams(), Exact.DIGITS);
    return Optional.of(
        new WeighLine(
            path,
            line,
            name,
            more,
            apart,
            heldBack,
            atLeast,
            carries,
            carrier,
            counted.map(
                of -> new Quantity(Rounding.toStep(of.number().multiply(part), HALF), of.unit())),
            lookAlikes,
            pulled,
            tubs));
  }

  private static final BigDecimal HALF = new BigDecimal("0.5");
}
