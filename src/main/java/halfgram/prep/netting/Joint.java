package halfgram.prep.netting;

import halfgram.measure.Amount;
import halfgram.measure.Ratio;
import halfgram.measure.Rounding;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * Needs of several outputs that come out of one mix, as needs of the mix: one making of egg yolks
 * leaves whites, and whites that still hold are not separated again.
 *
 * <p>Rule. In the order of the needs, each takes first what earlier needs of other outputs left
 * over, oldest first, as long as it still holds at this need's last use; the rest asks for more
 * mix. Pieces are left over and taken whole.
 */
public final class Joint {

  /**
   * One output of the mix.
   *
   * @param share of the mix's output mass
   * @param grams of one piece formed; 1 for a mass
   * @param kept share of the pieces formed that survive; 1 for a mass
   * @param whole whether only whole ones count
   */
  public record Part(Ratio share, Duration hold, Ratio grams, Ratio kept, boolean whole) {

    /** The mix's output mass that gives so much of this. */
    public Amount mixFor(Amount amount) {
      if (!whole) {
        return share.compareTo(Ratio.ONE) == 0 ? amount : amount.dividedBy(share);
      }
      Ratio formed = new Ratio(amount.number()).dividedBy(kept);
      Ratio counted = new Ratio(Rounding.UP_TO_WHOLE.round(formed.number()));
      return Amount.grams(counted.times(grams).dividedBy(share).number());
    }

    /** What of this so much of the mix gives. */
    private Amount from(Amount mix, Amount like) {
      Ratio formed = new Ratio(mix.number()).times(share).dividedBy(grams);
      return new Amount(floor(floor(formed).times(kept)).number(), like.dimension());
    }

    private Ratio floor(Ratio number) {
      return whole ? new Ratio(Rounding.DOWN_TO_WHOLE.round(number.number())) : number;
    }
  }

  /**
   * A need of the mix.
   *
   * @param outputMass of all outputs together; zero when leftovers cover the need
   * @param oldest earliest moment of being ready from which all that this increment serves, later
   *     needs of other outputs included, still holds to its last use
   */
  public record Increment(Amount outputMass, Instant oldest) {}

  private Joint() {}

  /**
   * Each need as more mix, or as none.
   *
   * @param needs in order
   * @param ready when something made for each need alone would be ready
   */
  public static List<Increment> increments(
      List<Need> needs, List<Part> parts, List<Instant> ready) {
    List<Increment> increments = new ArrayList<>();
    List<Leftover> leftovers = new ArrayList<>();
    for (int i = 0; i < needs.size(); i++) {
      Need need = needs.get(i);
      Instant oldest = need.lastUse().minus(parts.get(need.output()).hold());
      Amount open = need.amount();
      for (Leftover leftover : leftovers) {
        if (leftover.output == need.output()
            && open.isPositive()
            && leftover.amount.isPositive()
            && !ready.get(leftover.increment).isBefore(oldest)) {
          Amount taken = leftover.amount.atMost(open);
          leftover.amount = leftover.amount.minus(taken);
          open = open.minus(taken);
          Increment source = increments.get(leftover.increment);
          if (oldest.isAfter(source.oldest())) {
            increments.set(leftover.increment, new Increment(source.outputMass(), oldest));
          }
        }
      }
      Amount mix = open.isPositive() ? parts.get(need.output()).mixFor(open) : Amount.NO_MASS;
      increments.add(new Increment(mix, oldest));
      for (int other = 0; other < parts.size() && mix.isPositive(); other++) {
        if (other != need.output()) {
          leftovers.add(new Leftover(i, other, parts.get(other).from(mix, like(parts.get(other)))));
        }
      }
    }
    return increments;
  }

  private static Amount like(Part part) {
    return part.whole() ? Amount.pieces(0) : Amount.NO_MASS;
  }

  /** What one need's mix leaves of another output. */
  private static final class Leftover {
    private final int increment;
    private final int output;
    private Amount amount;

    private Leftover(int increment, int output, Amount amount) {
      this.increment = increment;
      this.output = output;
      this.amount = amount;
    }
  }
}
