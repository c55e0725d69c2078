package halfgram.prep.netting;

import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Exact;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/**
 * Which needs are made together: the exact dynamic programme of lot sizing.
 *
 * <p>Rules. A make serves a run of consecutive needs and is ready when the first of them must be.
 * It costs its set-up minutes, the minutes of further machine fills, and for everything that stands
 * the holding weight x amount x days. No need may be older than it holds at its last use; no make
 * may exceed the most; a single need that breaks either is made alone (and told of later). Among
 * equals the later, fresher make wins.
 *
 * <p>Example: with shelf life unlimited, the twelve-period example of Wagner and Whitin (1958)
 * costs 864 with makes in periods 1, 3, 5, 8, 10 and 11. Source: Wagner and Whitin, Management
 * Science 5:89 (the recursion).
 *
 * <p>Exact as long as what must be ready later is also made ready later, as needs of one output
 * always are; outputs of one mix with different rests over closed hours may be out of that order,
 * and then fewer joinings are tried.
 *
 * <p>Cost. A need whose standing alone costs more than its own set-up never joins an earlier make,
 * nor does anything after it, so each need looks back only as far as joining can pay.
 */
public final class LotSizing {
  /** A holding weight with which nothing stands to save a set-up. */
  public static final double TOO_DEAR = 1e9;

  private static final double SECONDS_PER_DAY = 86_400;

  /** What adding up in binary may be off by: 0.9 + 3.6 + 2.8 kg is 7.3 kg, and fits one make. */
  private static final double SLACK = 1e-9;

  /**
   * What making one formula costs.
   *
   * @param setUp minutes of a make
   * @param perFill minutes of each machine fill after the first
   * @param fill units of one fill; infinite without a machine
   * @param most units of one make; infinite without a limit
   */
  public record Economy(double setUp, double perFill, double fill, double most) {
    public static Economy of(
        Duration setUp, Duration perFill, Optional<Amount> fill, Optional<Amount> most) {
      return new Economy(
          minutes(setUp),
          minutes(perFill),
          fill.filter(Amount::isPositive).map(LotSizing::units).orElse(Double.POSITIVE_INFINITY),
          most.map(LotSizing::units).orElse(Double.POSITIVE_INFINITY));
    }

    private static double minutes(Duration duration) {
      return duration.toSeconds() / 60.0;
    }
  }

  /** An amount in the units of lot sizing: kilograms, or hundreds of pieces. */
  public static double units(Amount amount) {
    return Exact.approximately(amount.number())
        / (amount.dimension() == Dimension.COUNT ? 100 : 1000);
  }

  /** Needs in the order of their time, and what making costs. */
  public static final class Question {
    private final long[] ready;
    private final long[] made;
    private final long[] oldest;
    private final double[] amount;
    private final double[] setUp;
    private final Economy economy;
    private final double holding;

    /**
     * A question of so many needs, each to be {@link #put}.
     *
     * @param holding minutes that one unit standing a day is worth
     */
    public Question(int needs, Economy economy, double holding) {
      this.ready = new long[needs];
      this.made = new long[needs];
      this.oldest = new long[needs];
      this.amount = new double[needs];
      this.setUp = new double[needs];
      this.economy = economy;
      this.holding = holding;
    }

    /**
     * One need, by its position.
     *
     * @param ready second at which it must be ready
     * @param made second at which it is ready when made for this need (earlier over closed hours)
     * @param oldest earliest second of being ready that still holds to its last use
     * @param amount in units
     * @param setUp minutes of a make that starts with it
     */
    public void put(int need, long ready, long made, long oldest, double amount, double setUp) {
      this.ready[need] = ready;
      this.made[need] = made;
      this.oldest[need] = oldest;
      this.amount[need] = amount;
      this.setUp[need] = setUp;
    }

    private double standing(int need, int first) {
      return holding * amount[need] * (ready[need] - made[first]) / SECONDS_PER_DAY;
    }

    private double fills(double sum) {
      double fills = StrictMath.ceil(sum / economy.fill() - SLACK);
      return fills <= 1 ? 0 : economy.perFill() * (fills - 1);
    }
  }

  /** A make: its first and last need, inclusive. */
  public record Run(int first, int last) {}

  /** The makes in order and what they cost together, in minutes. */
  public record Answer(List<Run> runs, double cost) {}

  private LotSizing() {}

  public static Answer solve(Question q) {
    int n = q.amount.length;
    double[] best = new double[n + 1];
    int[] first = new int[n];
    for (int i = 0; i < n; i++) {
      first[i] = i;
      best[i + 1] = best[i] + q.setUp[i] + q.fills(q.amount[i]) + q.standing(i, i);
      double sum = q.amount[i];
      double since = 0;
      long oldest = q.oldest[i];
      for (int j = i - 1; j >= 0; j--) {
        sum += q.amount[j];
        since += q.amount[j] * (q.ready[j] - q.ready[i]);
        oldest = Math.max(oldest, q.oldest[j]);
        boolean tooOld = q.made[j] < oldest;
        boolean never = q.standing(i, j) - q.standing(i, i) > q.setUp[i];
        if (tooOld || never || sum > q.economy.most() * (1 + SLACK)) {
          break;
        }
        double days = (since + sum * (q.ready[i] - q.made[j])) / SECONDS_PER_DAY;
        double cost = best[j] + q.setUp[j] + q.fills(sum) + q.holding * days;
        if (cost < best[i + 1]) {
          best[i + 1] = cost;
          first[i] = j;
        }
      }
    }
    return new Answer(runs(first), best[n]);
  }

  private static List<Run> runs(int[] first) {
    Deque<Run> runs = new ArrayDeque<>();
    for (int last = first.length - 1; last >= 0; last = first[last] - 1) {
      runs.addFirst(new Run(first[last], last));
    }
    return new ArrayList<>(runs);
  }
}
