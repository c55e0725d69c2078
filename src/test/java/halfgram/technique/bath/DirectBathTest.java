package halfgram.technique.bath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import halfgram.technique.Figure;
import halfgram.technique.Trial;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The direct method: alginate in the food, calcium in the bath, a wall that grows inwards. */
class DirectBathTest {
  private static final SphereBathTechnique BATH = new SphereBathTechnique();

  private static Trial direct(String... typed) {
    return Trial.example(BATH)
        .with("method", "direct", "ph", "4.5", "alginate", "0.8 %", "saltShare", "0.5 %")
        .with("salt", "calcium-chloride-dihydrate", "set", "60 s")
        .with(typed);
  }

  /** Published recipes: 0.8, 1 and 1.4 % in the base, 1 min, 2 min small and 4 min large. */
  @ParameterizedTest
  @CsvSource({"0.8,60", "1,120", "1.4,240"})
  void publishedDosesAndTimesNeedNoRemark(String alginate, String set) {
    assertThat(direct("alginate", alginate + " %", "set", set + " s").warnings())
        .noneMatch(key -> key.startsWith("warn.bath."));
  }

  @ParameterizedTest
  @CsvSource({"0.79,60,strength", "1.41,60,strength", "1,59,set", "1,241,set"})
  void otherDosesAndTimesAreHeldAgainstThePublishedOnes(String alginate, String set, String what) {
    assertThat(direct("alginate", alginate + " %", "set", set + " s").warnings())
        .filteredOn(key -> key.startsWith("warn.bath."))
        .containsExactly("warn.bath." + what + "-direct");
  }

  /** What is said of an alginate bath and of salt in the food does not hold for calcium. */
  @Test
  void restHardnessAndBitterSaltOfAnAlginateBathAreNotSaidOfCalcium() {
    Trial trial = direct("rest", "0 h", "hardness", "300 mg/L", "milk", "yes", "saltShare", "2 %");
    assertThat(trial.warnings()).noneMatch(key -> key.startsWith("warn.bath."));
    assertThat(trial.warnings()).contains("better-reverse").doesNotContain("natural", "keep-own");
    assertThat(trial.find("hard")).isEmpty();
    assertThat(trial.find("citrate")).isEmpty();
  }

  @Test
  void theSaltIsOfTheBath() {
    assertThat(direct().said("salt")).contains("0.5 % of the bath");
  }

  /** By geometry: a sphere of 15 mL is 30.60 mm across, and takes only its film along. */
  @Test
  void theWallGrowsInwardsAndTakesOnlyAFilmFromTheBath() {
    Trial trial = direct("skin", "2 mm");
    assertThat(trial.number("across")).isCloseTo(30.60, within(0.01));
    assertThat(trial.number("loss")).isEqualTo(1.25);
    assertThat(trial.find("skinVolume")).isEmpty();
    assertThat(trial.warns("solid")).isFalse();
  }

  @Test
  void theSkinIsNoThickerThanToTheMiddle() {
    Trial caviar = direct("piece", "0.05 g", "set", "240 s", "skin", "5 mm");
    double radius = caviar.number("across") / 2;
    assertThat(radius).isCloseTo(2.285, within(0.001));
    Trial measured = caviar.with("measuredSkin", "2.2 mm", "measuredTime", "60 s");
    assertThat(measured.number("skinAtSet")).isEqualTo(radius);
    assertThat(measured.warns("solid")).isTrue();
    assertThat(measured.curve().marks().get(0).y()).isEqualTo(radius);
    assertThat(measured.number("timeForSkin"))
        .isCloseTo(60 * Math.pow(radius / 2.2, 2), within(1e-9));
    assertThat(caviar.with("set", "1800 s", "saltShare", "20 %").number("skinHigh"))
        .isEqualTo(radius);
  }

  @Test
  void aBathOfCalciumIsNotPoisonedByCalcium() {
    Trial trial = direct("breakage", "50 %", "natural", "500 mg/100 g");
    assertThat(trial.find("byCalcium")).isEmpty();
    assertThat(trial.find("calciumAtEnd")).isEmpty();
    assertThat(trial.find("natural")).isEmpty();
    double level = trial.find("byLevel").map(Figure::number).orElseThrow();
    assertThat(trial.number("lasts")).isGreaterThan(level - trial.number("perDrop"));
  }

  /** Milk in the food sets nothing in a bath without salt. */
  @Test
  void withoutSaltInTheBathNothingSets() {
    assertThat(direct("saltShare", "0 %", "milk", "yes").stops()).containsExactly("no-calcium");
    assertThat(direct("saltShare", "0 %", "natural", "100 mg/100 g").stops())
        .containsExactly("no-calcium");
  }

  /**
   * Published, and about tenfold apart: an estimate without buffering says 2.6 g/L from pH 2 to 5
   * and 0.26 g/L from 3 to 5; a supplier's table 8, 3 and 1 g/L at pH 2.5, 3 and 3.5.
   */
  @ParameterizedTest
  @CsvSource({"2,2.6,8", "2.5,0.8222,8", "3,0.26,3", "3.5,0.0822,1", "3.9,0.0327,1"})
  void bothSourcesOfCitrateSpeakForThemselves(String ph, double low, double high) {
    Trial acid = direct("ph", ph);
    assertThat(acid.number("citrateLow")).isCloseTo(low, within(0.0001));
    assertThat(acid.number("citrateHigh")).isCloseTo(high, within(1e-9));
    assertThat(acid.warns("read-again")).isTrue();
  }

  @Test
  void beyondTheSuppliersTableItsEndIsNamed() {
    assertThat(direct("ph", "2.4").said("citrateHigh")).contains("nearer end", "pH 2.4");
    assertThat(direct("ph", "3.7").said("citrateHigh")).contains("nearer end");
    assertThat(direct("ph", "2.5").said("citrateHigh")).contains("read off between");
    assertThat(direct("ph", "3.5").said("citrateHigh")).contains("read off between");
  }
}
