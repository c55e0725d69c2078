package halfgram.technique.methylcellulose;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import halfgram.technique.Addition;
import halfgram.technique.Trial;
import halfgram.testkit.Chance;
import halfgram.testkit.Seeds;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Methylcellulose against its published temperatures and a heat balance. */
class MethylcelluloseTest {
  private static final MethylcelluloseTechnique MC = new MethylcelluloseTechnique();

  private static Trial of(String amount, String mix) {
    return Trial.of(MC, "amount", amount, "mix", mix);
  }

  /** Published: disperse above 70 °C in a third of the liquid, finish cold. */
  @Test
  void aThirdIsHotAndTheRestIsCold() {
    Trial tried = of("10 g", "1510 g");
    assertThat(tried.number("hotPart")).isCloseTo(500, within(1e-9));
    assertThat(tried.number("coldPart")).isCloseTo(1000, within(1e-9));
    assertThat(tried.number("hotAbove")).isEqualTo(70);
    assertThat(tried.number("gelsAbove")).isEqualTo(45);
    assertThat(tried.number("gathersFrom")).isEqualTo(35);
    assertThat(tried.with("liquid", "900 g").number("hotPart")).isCloseTo(300, within(1e-9));
  }

  /** Published: grades dissolve below 12 or below 25 °C. */
  @Test
  void theGradeSaysHowColdItEnds() {
    assertThat(of("10 g", "1010 g").number("finishBelow")).isEqualTo(12);
    assertThat(of("10 g", "1010 g").with("grade", "below-25").number("finishBelow")).isEqualTo(25);
  }

  /** Computed with textbook values: 1 kg of water from 20 to 0 °C takes 0.2506 kg of ice. */
  @Test
  void iceTakesTheHeatOfTheHotPart() {
    assertThat(new Blend(1000, 20, 5000, 0).ice(0)).isCloseTo(250.6, within(0.05));
    assertThat(new Blend(1000, 80, 2000, 4).celsius()).isCloseTo(29.333, within(0.001));
  }

  /** Computed: 1/3 at 80 °C and 2/3 at 4 °C join at 29.3 °C, warmer than any grade. */
  @Test
  void aBlendTooWarmForItsGradeIsToldItsIce() {
    Trial tried = of("10 g", "1010 g");
    assertThat(tried.number("joined")).isCloseTo(29.33, within(0.005));
    assertThat(tried.number("ice")).isCloseTo(206.8, within(0.1));
    assertThat(tried.warns("too-warm")).isTrue();
    assertThat(tried.work().warnings())
        .anyMatch(warning -> tried.said(warning).contains("more than 206.8 g"));
    assertThat(tried.said("ice")).contains("the room", "10 to 25 %");
    Trial little = tried.with("hotShare", "10 %").with("grade", "below-25");
    assertThat(little.number("ice")).isZero();
    assertThat(little.warns("too-warm")).isFalse();
    Trial much = tried.with("hotShare", "60 %").with("hotAt", "100 °C");
    assertThat(much.warns("ice")).isTrue();
  }

  @Test
  void theIceItTellsBringsTheBlendThere() {
    Seeds.over(
        200,
        seed -> {
          Chance chance = new Chance(seed);
          double hot = chance.from(100, 1000);
          double cold = chance.from(1000, 4000);
          double hotAt = chance.from(60, 100);
          double coldAt = chance.from(0, 10);
          double ice = new Blend(hot, hotAt, cold, coldAt).ice(12);
          if (ice > 0) {
            double given = hot * 4.18 * (hotAt - 12);
            double taken = (cold - ice) * 4.18 * (12 - coldAt) + ice * (333.55 + 4.18 * 12);
            assertThat(taken).isCloseTo(given, within(1e-6 * given));
          }
          assertThat(new Blend(hot, hotAt + 1, cold, coldAt).ice(12)).isGreaterThanOrEqualTo(ice);
          assertThat(new Blend(hot, hotAt, cold, coldAt).ice(25)).isLessThanOrEqualTo(ice);
        });
  }

  @ParameterizedTest
  @CsvSource({"70 °C,true", "158 °F,true", "70.1 °C,false", "158.1 °F,false"})
  void itIsDispersedAboveSeventy(String hotAt, boolean warned) {
    assertThat(of("10 g", "1010 g").with("hotAt", hotAt).warns("not-hot")).isEqualTo(warned);
  }

  @ParameterizedTest
  @CsvSource({"45 °C,true", "113 °F,true", "45.1 °C,false", "8 °C,true"})
  void onAColdPlateItIsLiquid(String serve, boolean warned) {
    assertThat(of("10 g", "1010 g").with("serve", serve).warns("served-cold")).isEqualTo(warned);
  }

  /** Published: 0.5 to 2.0 %, pH 3 to 11. */
  @ParameterizedTest
  @CsvSource({"4.9,true,false", "5,false,false", "20,false,false", "20.1,false,true"})
  void theDoseHasItsRange(double grams, boolean low, boolean high) {
    Trial tried = of(grams + " g", (1000 + grams) + " g");
    assertThat(tried.warns("dose-low")).isEqualTo(low);
    assertThat(tried.warns("dose-high")).isEqualTo(high);
  }

  @ParameterizedTest
  @CsvSource({"0,false", "2.9,true", "3,false", "11,false", "11.1,true"})
  void aPhIsJudgedOnlyWhereOneWasRead(String ph, boolean warned) {
    assertThat(of("10 g", "1010 g").with("ph", ph).warns("ph")).isEqualTo(warned);
  }

  @Test
  void itRestsInTheColdAsLongAsTyped() {
    assertThat(of("10 g", "1010 g").with("rest", "90 min").added(Addition.Stands.class))
        .extracting(Addition.Stands::least)
        .containsExactly(Duration.ofMinutes(90));
    assertThat(of("10 g", "1010 g").with("rest", "0 h").added(Addition.Stands.class)).isEmpty();
    assertThat(of("10 g", "1010 g").says("cold")).isTrue();
  }

  @Test
  void moreLiquidThanThereIsIsRefused() {
    assertThat(of("10 g", "1010 g").with("liquid", "1001 g").stops("liquid")).isTrue();
    assertThat(of("10 g", "1010 g").with("liquid", "1000 g").stops("liquid")).isFalse();
    assertThat(of("10 g", "10 g").stops("liquid")).isTrue();
    assertThat(of("10 g", "10 g").additions()).isEmpty();
  }

  @Test
  void everyBadInputIsNamedAtOnce() {
    Trial bad = Trial.of(MC, "amount", "5", "hotAt", "40 °C", "grade", "warm");
    assertThat(bad.problems()).containsOnlyKeys("amount", "mix", "hotAt", "grade");
  }

  @Test
  void theWorkedExampleWorks() {
    assertThat(Trial.example(MC).number("dose")).isCloseTo(1, within(1e-9));
  }
}
