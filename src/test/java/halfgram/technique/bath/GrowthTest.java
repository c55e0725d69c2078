package halfgram.technique.bath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import halfgram.technique.Trial;
import halfgram.testkit.Seeds;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The skin of a bath worked out alone: with and without a measurement, frozen, without salt. */
class GrowthTest {
  private static final SphereBathTechnique BATH = new SphereBathTechnique();
  private static final String[] MEASURED = {"measuredSkin", "0.6 mm", "measuredTime", "150 s"};

  private static Trial example(String... typed) {
    return Trial.example(BATH).with(typed);
  }

  // ---- no salt added ----

  /** An encyclopaedia says that dairy holds enough; how much of it is free nobody can say. */
  @ParameterizedTest
  @CsvSource({"113 mg/100 g,yes", "113 mg/100 g,no", "0 mg/100 g,yes"})
  void aBaseWithItsOwnCalciumSetsWithoutSaltButItsSkinIsNotWorkedOut(String natural, String milk) {
    Trial plain = example("saltShare", "0 %", "natural", natural, "milk", milk);
    assertThat(plain.stops()).isEmpty();
    assertThat(plain.warnings()).contains("natural-alone").doesNotContain("estimate");
    assertThat(plain.find("skinAtSet")).isEmpty();
    assertThat(plain.find("timeForSkin")).isEmpty();
    assertThat(plain.find("lasts")).isPresent();
    assertThat(BATH.curve(plain.values(), Trial.tables())).isEmpty();
  }

  @Test
  void aSkinMeasuredThereCountsWithoutAnySaltToReckonWith() {
    Trial measured = example("saltShare", "0 %", "milk", "yes").with(MEASURED);
    assertThat(measured.stops()).isEmpty();
    assertThat(measured.with("set", "337.5 s").number("skinAtSet")).isCloseTo(0.9, within(1e-9));
    assertThat(measured.find("diffusivity")).isEmpty();
    assertThat(measured.curve().marks().get(0).y()).isEqualTo(measured.number("skinAtSet"));
  }

  @Test
  void withoutAnyCalciumNothingSets() {
    assertThat(example("saltShare", "0 %").stops()).containsExactly("no-calcium");
  }

  @Test
  void halfAMeasurementIsToldOfWithAndWithoutSalt() {
    assertThat(example("measuredSkin", "0.6 mm").warns("half-measured")).isTrue();
    assertThat(example("measuredTime", "60 s", "saltShare", "0 %").warns("half-measured")).isTrue();
    assertThat(example(MEASURED).warns("half-measured")).isFalse();
    assertThat(example().warns("half-measured")).isFalse();
  }

  // ---- figures and curve say the same ----

  @ParameterizedTest
  @ValueSource(strings = {"reverse", "frozen-reverse"})
  void theCurvesMarkIsTheSkinOfTheFigures(String method) {
    Trial estimated = example("method", method);
    assertThat(estimated.curve().marks().get(0).y()).isEqualTo(estimated.number("skinAtSet"));
    Trial measured = estimated.with(MEASURED);
    assertThat(measured.curve().marks().get(0).y()).isEqualTo(measured.number("skinAtSet"));
  }

  /** The time for a skin, typed as the time in the bath, comes back to the skin. */
  @Test
  void theTimeForASkinGrowsThatSkin() {
    Seeds.over(
        60,
        seed -> {
          Random random = new Random(seed);
          double wanted = (30 + random.nextInt(50)) / 100.0;
          Trial trial =
              example(
                  "skin", wanted + " mm", "method", seed % 2 == 0 ? "reverse" : "frozen-reverse");
          trial = seed % 4 < 2 ? trial : trial.with(MEASURED);
          String time = String.format(java.util.Locale.ROOT, "%.6f s", trial.number("timeForSkin"));
          assertThat(trial.with("set", time).number("skinAtSet")).isCloseTo(wanted, within(1e-6));
        });
  }

  /** Common practice: a minute for the frozen surface, and no skin in it. */
  @Test
  void inTheMinuteOfThawNoSkinGrows() {
    Trial frozen = example("method", "frozen-reverse");
    assertThat(frozen.with("set", "60 s").number("skinAtSet")).isZero();
    double later = frozen.with("set", "240 s").number("skinAtSet");
    assertThat(later).isEqualTo(example("set", "180 s").number("skinAtSet"));
    assertThat(frozen.with("set", "240 s").number("skinLow"))
        .isEqualTo(example("set", "180 s").number("skinLow"));
  }

  /** By hand: 0.6 mm after 60 + 90 s; 0.9 mm takes 90 x 2.25 s and the minute. */
  @Test
  void aFrozenPiecesMeasurementCountsFromTheThaw() {
    Trial frozen = example("method", "frozen-reverse", "skin", "0.9 mm").with(MEASURED);
    assertThat(frozen.number("timeForSkin")).isCloseTo(262.5, within(1e-9));
    assertThat(frozen.with("set", "150 s").number("skinAtSet")).isEqualTo(0.6);
    Trial quick = frozen.with("measuredTime", "40 s", "set", "160 s");
    assertThat(quick.number("skinAtSet")).as("nothing had to thaw").isEqualTo(1.2);
  }

  /** Common practice: xanthan so that drops close, hot water of up to 60 °C. */
  @Test
  void aReverseBathIsToldHowDropsCloseAndHowTheyAreServedWarm() {
    assertThat(example().warnings()).contains("thicken", "warm");
    assertThat(example("method", "direct", "ph", "5").warnings()).doesNotContain("thicken", "warm");
  }

  /** What a figure rests on and nobody has verified is said with it. */
  @Test
  void marksStandWithTheirFigures() {
    Trial trial = example("natural", "10 mg/100 g", "saltShare", "2.6 %", "medium", "water");
    assertThat(trial.said("sites")).contains("half of them gel (unverified)");
    assertThat(trial.said("diffusivity")).contains("viscosity unverified");
    assertThat(trial.said("citrate")).contains("pH to be above 6", "common practice");
    assertThat(trial.said("hard")).contains("moderately hard by the USGS classes");
    assertThat(trial.work().warnings())
        .extracting(trial::said)
        .anyMatch(said -> said.contains("sources disagree"))
        .anyMatch(said -> said.contains("1 to 2.5 % of a calcium salt (common practice)"))
        .anyMatch(said -> said.contains("In plain water not for long (common practice)"));
  }
}
