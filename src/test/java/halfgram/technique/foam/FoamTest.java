package halfgram.technique.foam;

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

/** Airs of lecithin against published recipes. */
class FoamTest {
  private static final FoamTechnique FOAM = new FoamTechnique();

  private static Trial of(String lecithin, String mix) {
    return Trial.of(FOAM, "lecithin", lecithin, "mix", mix);
  }

  /** Published: lime air 1.5 g on 225 g and 275 g; apple air 2 g on 500 g; an outlier of 4 %. */
  @ParameterizedTest
  @CsvSource({"1.5 g,501.5 g,0.300,false", "2 g,502 g,0.400,false", "10 g,260 g,4.00,true"})
  void publishedRecipesHaveTheirDoses(String lecithin, String mix, double percent, boolean high) {
    assertThat(of(lecithin, mix).number("dose")).isCloseTo(percent, within(1e-9));
    assertThat(of(lecithin, mix).warns("dose-high")).isEqualTo(high);
  }

  /** Published: 0.25 to 1.0 % in all, 0.3 to 0.8 % for foams. */
  @ParameterizedTest
  @CsvSource({
    "2.49 g,1002.49 g,dose-low",
    "2.5 g,1002.5 g,dose-disputed",
    "3 g,1003 g,-",
    "8 g,1008 g,-",
    "8.01 g,1008.01 g,dose-disputed",
    "10 g,1010 g,dose-disputed",
    "10.01 g,1010.01 g,dose-high"
  })
  void rangesOfTheSourcesAreJudgedExactly(String lecithin, String mix, String warning) {
    Trial tried = of(lecithin, mix);
    assertThat(tried.warns("dose-low")).isEqualTo(warning.equals("dose-low"));
    assertThat(tried.warns("dose-disputed")).isEqualTo(warning.equals("dose-disputed"));
    assertThat(tried.warns("dose-high")).isEqualTo(warning.equals("dose-high"));
  }

  @Test
  void gramsOfTheRangesAreOfThisMix() {
    Trial tried = of("3 g", "1003 g");
    assertThat(tried.number("foamLeast")).isCloseTo(3, within(1e-9));
    assertThat(tried.number("foamMost")).isCloseTo(8, within(1e-9));
    assertThat(tried.number("airLeast")).isCloseTo(2.5, within(1e-9));
    assertThat(tried.number("airMost")).isCloseTo(10, within(1e-9));
    assertThat(tried.number("stands")).isEqualTo(30);
  }

  /** Published: 0.1 to 0.4 % of xanthan for a wetter foam. */
  @ParameterizedTest
  @CsvSource({"0 g,false", "0.9 g,true", "1 g,false", "4 g,false", "4.1 g,true"})
  void xanthanHasItsRange(String xanthan, boolean warned) {
    double grams = Double.parseDouble(xanthan.replace(" g", ""));
    Trial tried = of("5 g", (1005 + grams) + " g").with("xanthan", xanthan);
    assertThat(tried.warns("xanthan")).isEqualTo(warned);
    assertThat(tried.number("xanthanDose")).isCloseTo(grams / 10, within(1e-9));
  }

  @Test
  void aDoseWantedIsWeighedBeforeThereIsAny() {
    Trial tried = Trial.of(FOAM, "mix", "500 g", "wanted", "0.4 %");
    assertThat(tried.number("dose")).isCloseTo(0.4, within(1e-9));
    assertThat(tried.added(Addition.Weighed.class))
        .containsExactly(Addition.Weighed.of("lecithinWanted", 2));
  }

  @Test
  void onlyABatchThatIsFoamIsGoodForHalfAnHour() {
    assertThat(of("3 g", "1003 g").added(Addition.Good.class)).isEmpty();
    assertThat(of("3 g", "1003 g").with("made", "ahead").added(Addition.Good.class))
        .extracting(Addition.Good::most)
        .containsExactly(Duration.ofMinutes(30));
    assertThat(of("3 g", "1003 g").says("to-order")).isTrue();
  }

  /** Published by agriculture departments: lecithin of unknown origin counts as soy and egg. */
  @Test
  void theOriginOfLecithinIsAnAllergen() {
    Trial tried = of("3 g", "1003 g");
    assertThat(tried.warns("allergen-unknown")).isTrue();
    assertThat(tried.with("origin", "soy").warns("allergen")).isTrue();
    assertThat(tried.added(Addition.Caution.class)).hasSize(1);
    Trial sunflower = tried.with("origin", "sunflower");
    assertThat(sunflower.warns("allergen") || sunflower.warns("allergen-unknown")).isFalse();
    assertThat(sunflower.added(Addition.Caution.class)).isEmpty();
  }

  @Test
  void nothingToFoamIsRefused() {
    assertThat(of("3 g", "3 g").stops("nothing-to-foam")).isTrue();
    assertThat(of("3 g", "3 g").additions()).isEmpty();
  }

  @Test
  void moreLecithinIsAHigherDoseInAnyUnit() {
    Seeds.over(
        200,
        seed -> {
          Chance chance = new Chance(seed);
          int milligrams = chance.from(100, 50_000);
          int mix = chance.from(1000, 5000);
          double dose = of(milligrams + " mg", mix + " g").number("dose");
          assertThat(of(milligrams / 1000.0 + " g", mix / 1000.0 + " kg").number("dose"))
              .isCloseTo(dose, within(1e-9));
          assertThat(of(milligrams + 1 + " mg", mix + " g").number("dose")).isGreaterThan(dose);
        });
  }

  @Test
  void everyBadInputIsNamedAtOnce() {
    Trial bad = Trial.of(FOAM, "lecithin", "3", "wanted", "6 %", "origin", "milk");
    assertThat(bad.problems()).containsOnlyKeys("lecithin", "mix", "wanted", "origin");
  }

  @Test
  void theWorkedExampleWorks() {
    assertThat(Trial.example(FOAM).number("dose")).isCloseTo(0.3, within(1e-9));
  }
}
