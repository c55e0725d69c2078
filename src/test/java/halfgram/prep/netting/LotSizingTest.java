package halfgram.prep.netting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Which needs are made together, against a published example and against trying everything. */
class LotSizingTest {
  private static final double UNLIMITED = Double.POSITIVE_INFINITY;
  private static final long DAY = 86_400;
  private static final int INSTANCES = 300;
  private static final long SEED = 1958;

  /**
   * Source: the twelve-period example of Wagner and Whitin, Management Science 5:89-96 (1958). Its
   * data come from memory and are unverified; the optimum was computed from them independently.
   */
  @Test
  void publishedExampleCosts864WithItsBatches() {
    double[] demand = {69, 29, 36, 61, 61, 26, 34, 67, 45, 67, 79, 56};
    double[] setUp = {85, 102, 102, 101, 98, 114, 105, 86, 119, 110, 98, 114};
    LotSizing.Question question = new LotSizing.Question(12, economy(0, UNLIMITED, UNLIMITED), 1);
    for (int i = 0; i < 12; i++) {
      question.put(i, i * DAY, i * DAY, Long.MIN_VALUE, demand[i], setUp[i]);
    }
    LotSizing.Answer answer = LotSizing.solve(question);
    assertThat(answer.cost()).isCloseTo(864, within(1e-9));
    assertThat(answer.runs())
        .containsExactly(run(1, 2), run(3, 4), run(5, 7), run(8, 9), run(10, 10), run(11, 12));
  }

  @Test
  void nothingIsMadeForNoNeeds() {
    LotSizing.Answer answer =
        LotSizing.solve(new LotSizing.Question(0, economy(0, UNLIMITED, UNLIMITED), 1));
    assertThat(answer.runs()).isEmpty();
    assertThat(answer.cost()).isZero();
  }

  @Test
  void needThatBreaksEveryLimitIsStillMadeAlone() {
    LotSizing.Question question = new LotSizing.Question(2, economy(0, UNLIMITED, 1), 0);
    question.put(0, DAY, DAY, 0, 5, 10);
    question.put(1, 2 * DAY, DAY, 2 * DAY, 5, 10);
    assertThat(LotSizing.solve(question).runs()).containsExactly(run(1, 1), run(2, 2));
  }

  /** 0.9 + 3.6 + 2.8 is 7.3, and 0.1 + 0.2 is 0.3, though not in binary. */
  @Test
  void fullMakeAndFullFillAreNotRefusedForRounding() {
    LotSizing.Question most = new LotSizing.Question(3, economy(0, UNLIMITED, 7.3), 0);
    most.put(0, 0, 0, Long.MIN_VALUE, 0.9, 10);
    most.put(1, 0, 0, Long.MIN_VALUE, 3.6, 10);
    most.put(2, 0, 0, Long.MIN_VALUE, 2.8, 10);
    assertThat(LotSizing.solve(most).runs()).containsExactly(run(1, 3));
    LotSizing.Question fill = new LotSizing.Question(2, economy(100, 0.3, UNLIMITED), 0);
    fill.put(0, 0, 0, Long.MIN_VALUE, 0.1, 10);
    fill.put(1, 0, 0, Long.MIN_VALUE, 0.2, 10);
    assertThat(LotSizing.solve(fill).cost()).isCloseTo(10, within(1e-9));
  }

  @Test
  void amongEqualsTheFresherMakeWins() {
    LotSizing.Question question = new LotSizing.Question(2, economy(0, UNLIMITED, UNLIMITED), 1);
    question.put(0, 0, 0, Long.MIN_VALUE, 10, 10);
    question.put(1, DAY, DAY, Long.MIN_VALUE, 10, 10);
    assertThat(LotSizing.solve(question).runs()).containsExactly(run(1, 1), run(2, 2));
  }

  /** Every way to cut the needs into makes is tried, by arithmetic written here. */
  @Test
  void noWayToCutTheNeedsIsCheaper() {
    int together = 0;
    for (int i = 0; i < INSTANCES; i++) {
      Instance instance = Instance.random(new Random(SEED + i));
      LotSizing.Answer answer = LotSizing.solve(instance.question());
      String as = "seed " + (SEED + i) + ": " + instance;
      assertThat(answer.cost()).as(as).isCloseTo(instance.cheapest(), within(1e-6));
      boolean[] cut = new boolean[instance.ready.length];
      int next = 0;
      for (LotSizing.Run run : answer.runs()) {
        assertThat(run.first()).as(as).isEqualTo(next);
        assertThat(run.last()).as(as).isGreaterThanOrEqualTo(run.first());
        together += run.last() > run.first() ? 1 : 0;
        cut[run.first()] = true;
        next = run.last() + 1;
      }
      assertThat(next).as(as).isEqualTo(cut.length);
      assertThat(instance.cost(cut)).as(as).isCloseTo(answer.cost(), within(1e-6));
    }
    assertThat(together).as("makes for several needs, over all instances").isGreaterThan(300);
  }

  /** Needs with every limit there is: shelf life, the most of a make, machine fills. */
  private static final class Instance {
    private final long[] ready;
    private final long[] made;
    private final long[] oldest;
    private final double[] amount;
    private final double[] setUp;
    private final double perFill;
    private final double fill;
    private final double most;
    private final double holding;

    private Instance(int n, double perFill, double fill, double most, double holding) {
      this.ready = new long[n];
      this.made = new long[n];
      this.oldest = new long[n];
      this.amount = new double[n];
      this.setUp = new double[n];
      this.perFill = perFill;
      this.fill = fill;
      this.most = most;
      this.holding = holding;
    }

    private static Instance random(Random random) {
      int n = 1 + random.nextInt(11);
      Instance made =
          new Instance(
              n,
              random.nextInt(12),
              random.nextInt(4) == 0 ? UNLIMITED : 0.5 + random.nextInt(40) / 10.0,
              random.nextInt(3) == 0 ? UNLIMITED : 2 + random.nextInt(120) / 10.0,
              random.nextInt(60) / 10.0);
      long at = 0;
      long lastMade = Long.MIN_VALUE;
      double sameSetUp = 5 + random.nextInt(50);
      boolean same = random.nextBoolean();
      for (int i = 0; i < n; i++) {
        at += random.nextInt((int) DAY);
        made.ready[i] = at;
        // Closed hours only ever pull a make earlier, and never past the one before.
        made.made[i] =
            Math.max(lastMade, at - (random.nextInt(4) == 0 ? random.nextInt(30_000) : 0));
        lastMade = made.made[i];
        long life = random.nextInt(4) == 0 ? 30 * DAY : random.nextInt((int) (3 * DAY));
        made.oldest[i] = at + random.nextInt(9000) - life;
        made.amount[i] = (1 + random.nextInt(60)) / 10.0;
        made.setUp[i] = same ? sameSetUp : 5 + random.nextInt(50);
      }
      return made;
    }

    private LotSizing.Question question() {
      LotSizing.Question question =
          new LotSizing.Question(ready.length, economy(perFill, fill, most), holding);
      for (int i = 0; i < ready.length; i++) {
        question.put(i, ready[i], made[i], oldest[i], amount[i], setUp[i]);
      }
      return question;
    }

    private double cheapest() {
      double cheapest = UNLIMITED;
      for (int pattern = 0; pattern < 1 << (ready.length - 1); pattern++) {
        boolean[] cut = new boolean[ready.length];
        cut[0] = true;
        for (int i = 1; i < ready.length; i++) {
          cut[i] = (pattern >> (i - 1) & 1) == 1;
        }
        cheapest = Math.min(cheapest, cost(cut));
      }
      return cheapest;
    }

    /** What these makes cost; infinite when one breaks a limit. */
    private double cost(boolean[] cut) {
      double cost = 0;
      for (int first = 0; first < cut.length; ) {
        int end = first + 1;
        while (end < cut.length && !cut[end]) {
          end++;
        }
        cost += cost(first, end);
        first = end;
      }
      return cost;
    }

    private double cost(int first, int end) {
      double sum = 0;
      double standing = 0;
      boolean holds = true;
      for (int i = first; i < end; i++) {
        sum += amount[i];
        standing += holding * amount[i] * (ready[i] - made[first]) / DAY;
        holds &= made[first] >= oldest[i];
      }
      if (end - first > 1 && (!holds || sum > most + 1e-6)) {
        return UNLIMITED;
      }
      double furtherFills =
          Double.isInfinite(fill) ? 0 : Math.max(0, Math.ceil(sum / fill - 1e-6) - 1);
      return setUp[first] + perFill * furtherFills + standing;
    }

    @Override
    public String toString() {
      List<String> needs = new ArrayList<>();
      for (int i = 0; i < ready.length; i++) {
        needs.add(
            Arrays.toString(new double[] {ready[i], made[i], oldest[i], amount[i], setUp[i]}));
      }
      return needs + " per fill " + perFill + " of " + fill + " most " + most + " hold " + holding;
    }
  }

  private static LotSizing.Economy economy(double perFill, double fill, double most) {
    return new LotSizing.Economy(0, perFill, fill, most);
  }

  /** Needs counted from 1, as the publication does. */
  private static LotSizing.Run run(int first, int last) {
    return new LotSizing.Run(first - 1, last - 1);
  }
}
