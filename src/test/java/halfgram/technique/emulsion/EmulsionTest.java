package halfgram.technique.emulsion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import halfgram.technique.Addition;
import halfgram.technique.Trial;
import halfgram.testkit.Chance;
import halfgram.testkit.Seeds;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Emulsions against the ranges of their agents. */
class EmulsionTest {
  private static final EmulsionTechnique EMULSION = new EmulsionTechnique();

  private static Trial of(String agent, String amount, String oil, String mix) {
    return Trial.of(EMULSION, "agent", agent, "amount", amount, "oil", oil, "mix", mix);
  }

  @Test
  void everyPartIsCounted() {
    Trial tried = of("gum-arabic", "50 g", "100 g", "1 kg");
    assertThat(tried.number("oilShare")).isCloseTo(10, within(1e-9));
    assertThat(tried.number("waterPhase")).isCloseTo(850, within(1e-9));
    assertThat(tried.number("oilPerWater")).isCloseTo(11.765, within(0.001));
    assertThat(tried.number("dose")).isCloseTo(5.263, within(0.001));
    assertThat(tried.number("doseOfMix")).isCloseTo(5, within(1e-9));
    assertThat(tried.number("agentPerOil")).isCloseTo(50, within(1e-9));
  }

  /** Common practice for gum arabic 5 to 20 %; published for lecithin 0.3 to 1.0 %. */
  @ParameterizedTest
  @CsvSource({
    "gum-arabic,49.9,low", "gum-arabic,50,-", "gum-arabic,200,-", "gum-arabic,200.1,high",
    "lecithin,2.9,low", "lecithin,3,-", "lecithin,10,-", "lecithin,10.1,high"
  })
  void rangesAreJudgedExactly(String agent, double grams, String warning) {
    Trial tried = of(agent, grams + " g", "200 g", (1000 + grams) + " g");
    assertThat(tried.warns("dose-low")).isEqualTo(warning.equals("low"));
    assertThat(tried.warns("dose-high")).isEqualTo(warning.equals("high"));
  }

  /** Published: gum arabic makes a soft gel above 10 %. */
  @ParameterizedTest
  @CsvSource({"gum-arabic,100,false", "gum-arabic,100.1,true", "lecithin,100.1,false"})
  void muchGumSetsToASoftGel(String agent, double grams, boolean warned) {
    Trial tried = of(agent, grams + " g", "200 g", (1000 + grams) + " g");
    assertThat(tried.warns("soft-gel")).isEqualTo(warned);
  }

  @Test
  void commonPracticeIsCalledSo() {
    assertThat(of("gum-arabic", "50 g", "100 g", "1 kg").warns("practice")).isTrue();
    assertThat(of("lecithin", "5 g", "100 g", "1 kg").warns("practice")).isFalse();
    assertThat(of("lecithin", "5 g", "100 g", "1 kg").warns("allergen-unknown")).isTrue();
    assertThat(of("lecithin", "5 g", "100 g", "1 kg").with("origin", "soy").warns("allergen"))
        .isTrue();
  }

  @Test
  void theAgentIsWorkedOutBeforeItIsWeighed() {
    Trial least = Trial.of(EMULSION, "oil", "100 g", "mix", "1 kg");
    assertThat(least.number("dose")).isCloseTo(5, within(1e-9));
    assertThat(least.number("agentWanted")).isCloseTo(50, within(1e-9));
    assertThat(least.with("wanted", "12 %").added(Addition.Weighed.class))
        .containsExactly(Addition.Weighed.of("agentWanted", 120));
    assertThat(least.with("agent", "lecithin").number("agentWanted")).isCloseTo(3, within(1e-9));
  }

  @Test
  void oneOfBothPhasesAloneIsRefused() {
    assertThat(of("lecithin", "5 g", "995 g", "1 kg").stops("two-phases")).isTrue();
    assertThat(of("lecithin", "5 g", "0 g", "1 kg").stops("two-phases")).isTrue();
    assertThat(of("lecithin", "5 g", "0 g", "1 kg").additions()).isEmpty();
  }

  @Test
  void moreOilIsMoreOfTheMixAndLessWaterInAnyUnit() {
    Seeds.over(
        200,
        seed -> {
          Chance chance = new Chance(seed);
          int oil = chance.from(1, 400);
          Trial tried = of("lecithin", "5 g", oil + " g", "1 kg");
          Trial more = of("lecithin", "5 g", oil + 1 + " g", "1000 g");
          assertThat(more.number("oilShare")).isGreaterThan(tried.number("oilShare"));
          assertThat(more.number("waterPhase")).isLessThan(tried.number("waterPhase"));
          assertThat(more.number("oilPerWater")).isGreaterThan(tried.number("oilPerWater"));
          Trial same = of("lecithin", "5000 mg", oil / 1000.0 + " kg", "1000 g");
          assertThat(same.number("oilShare")).isCloseTo(tried.number("oilShare"), within(1e-9));
        });
  }

  @Test
  void everyBadInputIsNamedAtOnce() {
    Trial bad = Trial.of(EMULSION, "agent", "mustard", "amount", "5", "wanted", "41 %");
    assertThat(bad.problems()).containsOnlyKeys("agent", "amount", "oil", "mix", "wanted");
  }

  @Test
  void theWorkedExampleWorks() {
    assertThat(Trial.example(EMULSION).number("oilShare")).isCloseTo(10, within(1e-9));
  }
}
