package halfgram.formula;

import halfgram.measure.Amount;
import halfgram.measure.Exact;
import halfgram.measure.Ratio;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;

/**
 * The mass that goes through a formula's steps, as a straight line in the mass of the basis.
 *
 * <p>Rules. A line goes in at its step. What comes out of a step flows into the first later step
 * that names it in {@code after}, else into the last step. From a step comes
 *
 * <pre>out = (in - residue.fixed) x (1 - residue.share) x yield</pre>
 *
 * so at every step {@code in = slope x basis + offset}, and the output mass can be solved for the
 * basis without iterating.
 *
 * <p>Example: yoghurt 69 and cream 31 as basis, 0.6 % of doses, 60 g + 2.5 % residue: 1000 g of
 * basis give (1006 - 60) x 0.975 = 922.35 g.
 *
 * <p>Source: percent-of-base arithmetic and AP = EP / yield are standard in baking and food-service
 * texts; residue in bag and bowl is common practice.
 */
public final class MassBalance {

  /** in = slope x basis + offset, grams. */
  public record Straight(BigDecimal slope, BigDecimal offset) {
    BigDecimal at(BigDecimal basis) {
      return slope.multiply(basis, Exact.DIGITS).add(offset, Exact.DIGITS);
    }

    BigDecimal solve(BigDecimal value) {
      return value.subtract(offset, Exact.DIGITS).divide(slope, Exact.DIGITS);
    }
  }

  private final List<Straight> into;
  private final Straight output;
  private final Ratio kept;

  /** One over the slope of the output, so that many makes need no division. */
  private final BigDecimal inverse;

  private MassBalance(List<Straight> into, Straight output, Ratio kept) {
    this.into = into;
    this.output = output;
    this.kept = kept;
    this.inverse =
        output.slope().signum() > 0
            ? BigDecimal.ONE.divide(output.slope(), new MathContext(40))
            : BigDecimal.ZERO;
  }

  public static MassBalance of(FormulaVersion version) {
    int count = version.steps().size();
    BigDecimal[] slope = new BigDecimal[count];
    BigDecimal[] offset = new BigDecimal[count];
    java.util.Arrays.fill(slope, BigDecimal.ZERO);
    java.util.Arrays.fill(offset, BigDecimal.ZERO);
    for (Line line : version.lines()) {
      int at = version.stepIndex(line.step());
      slope[at] = slope[at].add(line.contribution().number(), Exact.DIGITS);
    }
    List<Straight> into = new ArrayList<>();
    Straight out = new Straight(BigDecimal.ZERO, BigDecimal.ZERO);
    Ratio kept = Ratio.ONE;
    for (int i = 0; i < count; i++) {
      Straight in = new Straight(slope[i], offset[i]);
      Step step = version.steps().get(i);
      out = through(step, in);
      into.add(in);
      kept = kept.times(step.breakage().rest());
      if (i < count - 1) {
        int next = flowsInto(version.steps(), i);
        slope[next] = slope[next].add(out.slope(), Exact.DIGITS);
        offset[next] = offset[next].add(out.offset(), Exact.DIGITS);
      }
    }
    return new MassBalance(List.copyOf(into), out, kept);
  }

  private static Straight through(Step step, Straight in) {
    if (in.slope().signum() == 0) {
      return in;
    }
    BigDecimal keeps = step.residue().share().rest().times(step.yield()).number();
    BigDecimal less = in.offset().subtract(step.residue().fixed().grams());
    return new Straight(
        in.slope().multiply(keeps, Exact.DIGITS), less.multiply(keeps, Exact.DIGITS));
  }

  private static int flowsInto(List<Step> steps, int from) {
    String code = steps.get(from).code();
    for (int i = from + 1; i < steps.size(); i++) {
      if (steps.get(i).after().stream().anyMatch(lag -> lag.step().equals(code))) {
        return i;
      }
    }
    return steps.size() - 1;
  }

  /** The basis that gives this output mass; never negative. */
  public Amount basisFor(Amount outputMass) {
    BigDecimal above = outputMass.number().subtract(output.offset());
    return above.signum() > 0
        ? Amount.grams(above.multiply(inverse, Exact.DIGITS))
        : Amount.NO_MASS;
  }

  /** The output mass that this basis gives; never negative. */
  public Amount outputOf(Amount basis) {
    return Amount.grams(output.at(basis.number()).max(BigDecimal.ZERO));
  }

  /** The mass in the vessel once a step's lines are in. */
  public Amount into(int step, Amount basis) {
    return Amount.grams(into.get(step).at(basis.number()).max(BigDecimal.ZERO));
  }

  /** The mass in the vessel at a step, as a line in the basis. */
  public Straight straight(int step) {
    return into.get(step);
  }

  /** The basis with which a step holds this mass. */
  public Amount basisForInto(int step, Amount mass) {
    return Amount.grams(into.get(step).solve(mass.number()));
  }

  /** Whether anything comes out at all. */
  public boolean yields() {
    return output.slope().signum() > 0;
  }

  /** Whether anything is in the vessel at a step. */
  public boolean holds(int step) {
    return into.get(step).slope().signum() > 0;
  }

  /** Share of the pieces that survive all steps. */
  public Ratio piecesKept() {
    return kept;
  }
}
