package halfgram.technique.bath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import halfgram.testkit.Seeds;
import java.util.Random;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.hipparchus.special.Erf;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The skin against the classical front solution, published physics and another way to solve it. */
class SkinTest {
  /** Computed: roots of the one-phase front equation. */
  @ParameterizedTest
  @CsvSource({
    "0.1,0.220016",
    "0.5,0.464786",
    "1,0.620063",
    "2,0.800601",
    "5,1.059687",
    "10,1.256972"
  })
  void theFrontNumberSolvesItsEquation(double st, double lambda) {
    assertThat(Skin.lambda(st)).isCloseTo(lambda, within(1e-6));
  }

  /** Another way to the root: halving. Much salt on little alginate comes to a St of 1500. */
  @ParameterizedTest
  @CsvSource({"0.001", "0.1", "1", "2.71", "2.72", "10", "100", "300", "1428", "1500", "1000000"})
  void theFrontNumberIsTheOneThatHalvingFinds(double st) {
    double low = 0;
    double high = 10;
    while (high - low > 1e-13) {
      double middle = (low + high) / 2;
      double left = middle * Math.exp(middle * middle) * Erf.erf(middle) * Math.sqrt(Math.PI);
      low = left < st ? middle : low;
      high = left < st ? high : middle;
    }
    assertThat(Skin.lambda(st)).isCloseTo(low, within(1e-10));
  }

  /** Computed: a 0.5 % bath and 2 % of a salt with 12.917 % of calcium. */
  @ParameterizedTest
  @CsvSource({
    "60,7.93,0.465", "120,7.93,0.658", "180,7.93,0.805", "300,7.93,1.040", "600,7.93,1.470",
    "60,5,0.369", "120,5,0.522", "180,5,0.639", "300,5,0.826", "600,5,1.168"
  })
  void twoPercentOfSaltGrowsTheSkinOfTheTable(double seconds, double tenPower, double mm) {
    assertThat(Skin.sites(0.005)).isCloseTo(12.62, within(0.005));
    assertThat(Skin.calcium(0.02 * 0.12917)).isCloseTo(64.46, within(0.005));
    double lambda = lambda(0.02);
    assertThat(lambda).isCloseTo(1.0658, within(0.0005));
    assertThat(Skin.thickness(lambda, tenPower * 1e-10, seconds)).isCloseTo(mm, within(0.001));
  }

  /** Computed: the same at half the salt, with 5e-10 m2/s. */
  @ParameterizedTest
  @CsvSource({"60,0.301", "120,0.425", "180,0.521", "300,0.673", "600,0.951"})
  void onePercentOfSaltGrowsTheSkinOfTheTable(double seconds, double mm) {
    assertThat(lambda(0.01)).isCloseTo(0.8684, within(0.0001));
    assertThat(Skin.thickness(lambda(0.01), 5e-10, seconds)).isCloseTo(mm, within(0.001));
  }

  /** Computed: seconds to half a millimetre. */
  @ParameterizedTest
  @CsvSource({"0.02,7.93,69", "0.02,5,110", "0.01,5,166"})
  void halfAMillimetreTakesTheTimesOfTheTable(double salt, double tenPower, double seconds) {
    assertThat(Skin.time(lambda(salt), tenPower * 1e-10, 0.5)).isCloseTo(seconds, within(0.5));
  }

  /** Computed: the quick form sqrt(2 D St t) is 14 % too thick at St 1 and 49 % at St 5. */
  @ParameterizedTest
  @CsvSource({"1,1.14", "5,1.49"})
  void theQuickFormIsTooThick(double st, double times) {
    double quick = 1000 * Math.sqrt(2 * 5e-10 * st * 180);
    assertThat(quick / Skin.thickness(Skin.lambda(st), 5e-10, 180)).isCloseTo(times, within(0.005));
  }

  /** The front number in a 0.5 % bath, of a salt with 12.917 % of calcium. */
  private static double lambda(double salt) {
    return Skin.lambda(Skin.calcium(salt * 0.12917) / Skin.sites(0.005));
  }

  /** Computed from D ~ T / viscosity; the viscosities are from memory and unverified. */
  @Test
  void aColderBathIsSlower() {
    assertThat(Skin.viscosity(25)).isCloseTo(0.8900, within(0.001));
    assertThat(Skin.viscosity(20)).isCloseTo(1.0016, within(0.001));
    assertThat(Skin.viscosity(5)).isCloseTo(1.5182, within(0.002));
    assertThat(Skin.at(1, 20)).isCloseTo(0.8737, within(0.001));
    assertThat(Skin.at(1, 5)).isCloseTo(0.5469, within(0.001));
    assertThat(Skin.at(1, 25)).isEqualTo(1);
  }

  @Test
  void moreCalciumOrTimeNeverThinsTheSkinAndMoreAlginateNeverThickensIt() {
    Seeds.over(
        200,
        seed -> {
          Random random = new Random(seed);
          double salt = 0.002 + 0.03 * random.nextDouble();
          double alginate = 0.003 + 0.01 * random.nextDouble();
          double seconds = 10 + 900 * random.nextDouble();
          double thick = thickness(salt, alginate, seconds);
          assertThat(thickness(salt * 1.1, alginate, seconds)).isGreaterThanOrEqualTo(thick);
          assertThat(thickness(salt, alginate, seconds * 1.1)).isGreaterThanOrEqualTo(thick);
          assertThat(thickness(salt, alginate * 1.1, seconds)).isLessThanOrEqualTo(thick);
        });
  }

  private static double thickness(double salt, double alginate, double seconds) {
    double st = Skin.calcium(salt * 0.13) / Skin.sites(alginate);
    return Skin.thickness(Skin.lambda(st), 5e-10, seconds);
  }

  /**
   * The diffusion problem solved numerically, without the similarity that gives the root: the gel
   * between surface and front is cut into slices that stretch with it, and an integrator of a maths
   * library moves slices and front in time.
   */
  @ParameterizedTest
  @CsvSource({"0.5", "1", "2", "5"})
  void theRootAgreesWithTheDiffusionProblemSolvedByALibrary(double st) {
    Front front = new Front(st);
    double begun = 1e-3;
    double[] state = new double[Front.SLICES];
    double start = 2 * Skin.lambda(st) * Math.sqrt(begun);
    for (int i = 1; i < Front.SLICES; i++) {
      state[i - 1] = 1 - (double) i / Front.SLICES;
    }
    state[Front.SLICES - 1] = start;
    DormandPrince853Integrator integrator = new DormandPrince853Integrator(1e-12, 0.01, 1e-9, 1e-9);
    double[] end = integrator.integrate(front, new ODEState(begun, state), 1).getPrimaryState();
    assertThat(end[Front.SLICES - 1] / 2).isCloseTo(Skin.lambda(st), within(0.004));
  }

  /** Concentration in slices of a layer whose far end moves; all without units. */
  private static final class Front implements OrdinaryDifferentialEquation {
    private static final int SLICES = 80;
    private final double st;

    private Front(double st) {
      this.st = st;
    }

    @Override
    public int getDimension() {
      return SLICES;
    }

    @Override
    public double[] computeDerivatives(double time, double[] y) {
      double at = y[SLICES - 1];
      double step = 1.0 / SLICES;
      double gradient = (0 - 4 * y[SLICES - 2] + y[SLICES - 3]) / (2 * step);
      double speed = -st * gradient / at;
      double[] moves = new double[SLICES];
      for (int i = 1; i < SLICES; i++) {
        double before = i == 1 ? 1 : y[i - 2];
        double after = i == SLICES - 1 ? 0 : y[i];
        double curved = (before - 2 * y[i - 1] + after) / (step * step);
        double carried = i * step * speed * (after - before) / (2 * step);
        moves[i - 1] = curved / (at * at) + carried / at;
      }
      moves[SLICES - 1] = speed;
      return moves;
    }
  }
}
