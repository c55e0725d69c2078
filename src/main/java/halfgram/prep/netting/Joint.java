package halfgram.prep.netting;

import halfgram.measure.Amount;
import halfgram.measure.Ratio;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/**
 * Needs of several outputs that come out of one mix, as needs of the mix: one making of egg yolks
 * leaves whites, and whites that still hold are not separated again.
 *
 * <p>Rule. In the order of the needs, each takes first what earlier needs of other outputs left
 * over, oldest first, as long as it still holds at this need's last use; the rest asks for more
 * mix.
 */
public final class Joint {

  /** A share of the mix's output mass, and how long it holds. */
  public record Part(Ratio share, Duration hold) {}

  /**
   * A need of the mix.
   *
   * @param outputMass of all outputs together; zero when leftovers cover the need
   * @param lastUse the latest use of anything this increment leaves over
   */
  public record Increment(Need need, Amount outputMass, java.time.Instant lastUse) {}

  private Joint() {}

  /**
   * Each need as more mix, or as none.
   *
   * @param needs in order, amounts as output mass in grams
   */
  public static List<Increment> increments(List<Need> needs, List<Part> parts) {
    List<Increment> increments = new ArrayList<>();
    List<Leftover> leftovers = new ArrayList<>();
    for (Need need : needs) {
      Amount open = need.amount();
      for (Leftover leftover : leftovers) {
        if (leftover.serves(need, parts)) {
          Amount taken = leftover.amount.atMost(open);
          leftover.amount = leftover.amount.minus(taken);
          open = open.minus(taken);
          Increment source = increments.get(leftover.increment);
          if (taken.isPositive() && need.lastUse().isAfter(source.lastUse())) {
            increments.set(
                leftover.increment,
                new Increment(source.need(), source.outputMass(), need.lastUse()));
          }
        }
      }
      Amount mix = open.dividedBy(parts.get(need.output()).share());
      increments.add(new Increment(need, mix, need.lastUse()));
      for (int other = 0; other < parts.size(); other++) {
        if (other != need.output() && mix.isPositive()) {
          leftovers.add(
              new Leftover(
                  increments.size() - 1, other, need, mix.times(parts.get(other).share())));
        }
      }
    }
    return increments;
  }

  /** What one need's mix leaves of another output. */
  private static final class Leftover {
    private final int increment;
    private final int output;
    private final Need from;
    private Amount amount;

    private Leftover(int increment, int output, Need from, Amount amount) {
      this.increment = increment;
      this.output = output;
      this.from = from;
      this.amount = amount;
    }

    private boolean serves(Need need, List<Part> parts) {
      return output == need.output()
          && amount.isPositive()
          && !from.readyBy().plus(parts.get(output).hold()).isBefore(need.lastUse());
    }
  }
}
