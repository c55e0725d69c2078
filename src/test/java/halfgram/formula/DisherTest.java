package halfgram.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import halfgram.measure.Dimension;
import halfgram.measure.Quantity;
import halfgram.measure.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Dishers: the number is how many level scoops make a US quart. */
class DisherTest {

  /** Source: public disher charts, agreeing with the definition (946.352946 mL over the number). */
  @ParameterizedTest
  @CsvSource({
    "6,157.73",
    "8,118.29",
    "10,94.64",
    "12,78.86",
    "16,59.15",
    "20,47.32",
    "24,39.43",
    "30,31.55",
    "40,23.66",
    "50,18.93",
    "60,15.77",
    "70,13.52",
    "100,9.46"
  })
  void scoopIsAQuartOverItsNumber(int number, double millilitres) {
    assertThat(volume("1 #" + number)).isCloseTo(millilitres, within(0.005));
  }

  /** Source: the definition. */
  @Test
  void asManyScoopsAsTheNumberFillAQuart() {
    for (int number = 1; number <= 100; number++) {
      assertThat(volume(number + " #" + number))
          .as("disher " + number)
          .isCloseTo(Unit.QUART.factor().doubleValue(), within(1e-9));
    }
  }

  /** Source: a printed chart gives 59.1 and 23.7 mL; printed charts round. */
  @Test
  void printedChartRoundsTheSameScoops() {
    assertThat(volume("1 #16")).isCloseTo(59.1, within(0.06));
    assertThat(volume("1 #40")).isCloseTo(23.7, within(0.06));
  }

  @Test
  void scoopIsAVolumeAndZeroIsNoDisher() {
    assertThat(Quantity.of("3 #16").canonical().orElseThrow().dimension())
        .isEqualTo(Dimension.VOLUME);
    assertThat(Quantity.of("1 #0").canonical()).isEmpty();
  }

  private static double volume(String quantity) {
    return Quantity.of(quantity).canonical().orElseThrow().number().doubleValue();
  }
}
