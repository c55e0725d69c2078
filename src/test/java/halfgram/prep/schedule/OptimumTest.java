package halfgram.prep.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.function.LongFunction;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;

/**
 * Small days against what a general solver proves: OR-Tools CP-SAT (L. Perron, F. Didier, S. Gay,
 * "The CP-SAT-LP solver", CP 2023).
 */
@EnabledOnOs(value = OS.LINUX, architectures = "amd64")
class OptimumTest {
  private static final double SECONDS = 20;

  private static Workday small(long seed) {
    return MadeUpDay.of(seed, 8, 2, 3, 0.3);
  }

  @Test
  void aSmallDayIsPlacedAtTheCostThatIsProvedToBeTheLeast() {
    nearTheLeast(OptimumTest::small);
  }

  @Test
  void soIsOneOnWhichHandsTakeThingsOut() {
    nearTheLeast(seed -> Fuller.takenOut(small(seed)));
  }

  @Test
  void soIsOneOnWhichHandsWash() {
    nearTheLeast(seed -> Fuller.washed(Fuller.takenOut(small(seed)), 1));
  }

  private static void nearTheLeast(LongFunction<Workday> days) {
    double sum = 0;
    int proved = 0;
    for (long seed = 1; seed <= 3; seed++) {
      Workday day = days.apply(seed);
      Optimum.Answer best = Optimum.of(day, SECONDS);
      if (!best.proved() || best.isInfeasible()) {
        continue;
      }
      Rota rota = Scheduler.place(day, Budget.of(4000, 1).twice());
      assertThat(Checker.wrong(day, rota)).isEmpty();
      assertThat(rota.bill().total())
          .as("seed %s: nothing is better than the best", seed)
          .isGreaterThanOrEqualTo(best.cost().orElseThrow());
      sum += (1 + rota.bill().total()) / (1.0 + best.cost().orElseThrow());
      proved++;
    }
    assertThat(proved).isPositive();
    assertThat(sum / proved).isLessThanOrEqualTo(1.10);
  }

  /** Days that are too full, and some that are not: both say the same of each. */
  @Test
  void bothAgreeOnWhetherADayFitsAtAll() {
    int infeasible = 0;
    for (long seed = 1; seed <= 4; seed++) {
      Workday full = tightened(small(seed), seed);
      Optimum.Answer best = Optimum.of(full, SECONDS);
      Rota rota = Scheduler.place(full, Budget.of(2000, 1));
      if (best.proved()) {
        assertThat(rota.isComplete() && !rota.yielding())
            .as("seed %s", seed)
            .isEqualTo(!best.isInfeasible());
        infeasible += best.isInfeasible() ? 1 : 0;
      }
    }
    assertThat(infeasible).isBetween(1, 3);
  }

  /** Every longest time at most a few slots: with the odd seeds nothing more than the least. */
  private static Workday tightened(Workday day, long seed) {
    List<Between> lags = new ArrayList<>();
    for (Between lag : day.lags()) {
      int room = seed % 2 == 0 ? 24 : 0;
      lags.add(
          new Between(lag.from(), lag.to(), lag.min(), OptionalInt.of(lag.min() + room), false, 0));
    }
    return day.with(day.jobs(), lags, day.machines());
  }

  @Test
  @Tag("long")
  void fortyTasksAreWithinFivePercentOfTheProvedOptimum() {
    double sum = 0;
    int proved = 0;
    for (long seed = 1; seed <= 4; seed++) {
      Workday day = MadeUpDay.ofSize(40, seed);
      Optimum.Answer best = Optimum.of(day, 120);
      if (best.proved() && !best.isInfeasible()) {
        Rota rota = Scheduler.place(day, Budget.of(16_000, 1).twice());
        sum += (double) rota.bill().total() / Math.max(1, best.cost().orElseThrow());
        proved++;
      }
    }
    assertThat(proved).isPositive();
    assertThat(sum / proved).isLessThanOrEqualTo(1.05);
  }
}
