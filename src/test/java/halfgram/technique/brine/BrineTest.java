package halfgram.technique.brine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import halfgram.technique.Addition;
import halfgram.technique.Result;
import halfgram.technique.Trial;
import java.util.Random;
import org.junit.jupiter.api.Test;

class BrineTest {
  private static final Trial TRIAL = Trial.example(new BrineTechnique());

  /** A published rule of thumb, B the definition: 0.75 % for 1 kg in 1 kg is 15.00 or 15.11 g. */
  @Test
  void conventionsAreNamedAndAllShown() {
    Result result = TRIAL.work();
    assertThat(result.number("saltTotal")).isCloseTo(15.00, within(1e-9));
    assertThat(result.number("saltFraction")).isCloseTo(15.11, within(0.005));
    assertThat(result.number("saltWaterPhase")).isCloseTo(0.0075 * 1725, within(1e-9));
    assertThat(result.number("saltWaterFraction")).isCloseTo(12.9375 / 0.9925, within(1e-9));
    assertThat(TRIAL.said(result.find("saltTotal").orElseThrow().why())).contains("1000 g of meat");
  }

  @Test
  void chosenConventionIsWeighed() {
    assertThat(TRIAL.weighed("salt")).isCloseTo(15.00, within(1e-6));
    assertThat(TRIAL.with("convention", "mass-fraction").weighed("salt"))
        .isCloseTo(15.113, within(0.001));
    assertThat(TRIAL.with("convention", "water-phase").weighed("salt"))
        .isCloseTo(12.9375, within(1e-6));
    assertThat(TRIAL.with("convention", "water-phase-fraction").number("salt"))
        .isCloseTo(13.0353, within(0.0001));
  }

  /** By definition: of the conventions only B ends at the percent it names. */
  @Test
  void massFractionEndsAtTheTargetAndTheRuleOfThumbALittleBelow() {
    assertThat(TRIAL.with("convention", "mass-fraction").number("atRest"))
        .isCloseTo(0.75, within(1e-9));
    assertThat(TRIAL.number("atRest")).isCloseTo(15 / 2015.0 * 100, within(1e-9));
  }

  /** Published: 1 kg of meat in 1 L of 10 % brine (100 g of salt) ends at 5 %, 1.5 kg at 4 %. */
  @Test
  void strongBrineSaysWhereItWouldEnd() {
    Trial strong = TRIAL.with("way", "gradient").with("strength", "10 %").with("water", "900 g");
    assertThat(strong.number("brineMass")).isCloseTo(1000, within(1e-9));
    assertThat(strong.number("salt")).isCloseTo(100, within(1e-9));
    assertThat(strong.number("atRest")).isCloseTo(5, within(1e-9));
    assertThat(strong.with("meat", "1.5 kg").number("atRest")).isCloseTo(4, within(1e-9));
    assertThat(strong.warnings()).contains("gradient");
    assertThat(strong.reminders()).anyMatch(said -> said.contains("5 % of salt"));
    assertThat(strong.curve().marks().get(0).y()).isCloseTo(5, within(1e-9));
  }

  /** By hand: 10 % of a 10 % brine in the meat are 0.909 % of salt. */
  @Test
  void injectedBrineIsWeighedIn() {
    Trial pumped = TRIAL.with("way", "injected").with("strength", "10 %").with("pump", "10 %");
    assertThat(pumped.number("injected")).isCloseTo(100, within(1e-9));
    assertThat(pumped.number("pumpedMass")).isCloseTo(1100, within(1e-9));
    assertThat(pumped.number("saltInMeat")).isCloseTo(10 / 1.1 * 0.1, within(1e-9));
    assertThat(pumped.reminders()).anyMatch(said -> said.contains("110 %"));
    assertThat(pumped.with("pump", "").stops()).containsExactly("no-pump");
    assertThat(pumped.with("pump", "").additions()).isNotEmpty();
    assertThat(pumped.with("water", "50 g").stops()).containsExactly("too-little");
    assertThat(pumped.with("water", "0 g").stops()).containsExactly("no-water");
  }

  @Test
  void proportionTypedForAPercentIsCaught() {
    Trial small = TRIAL.with("target", "0.0075 %");
    assertThat(small.stops()).containsExactly("percent-meant");
    assertThat(small.said(small.work().stops().get(0)))
        .contains("Salt wanted at rest", "0.0075 %", "probably 0.75 %");
    Trial large = TRIAL.with("target", "75 %");
    assertThat(large.stops()).containsExactly("percent-meant");
    assertThat(large.said(large.work().stops().get(0))).contains("probably 0.75 %");
    assertThat(TRIAL.with("target", "15 %").stops()).containsExactly("percent");
    assertThat(TRIAL.with("target", "0.1 %").stops()).isEmpty();
    assertThat(TRIAL.with("target", "10 %").stops()).isEmpty();
    assertThat(small.work().find("salt")).isEmpty();
    assertThat(small.weighed("salt")).isZero();
  }

  @Test
  void strengthAndPickUpAreCaughtTheSameWay() {
    Trial pumped = TRIAL.with("way", "injected").with("pump", "0.1 %");
    assertThat(pumped.said(pumped.work().stops().get(0))).contains("0.1 %", "probably 10 %");
    Trial strong = TRIAL.with("way", "gradient").with("strength", "0.1 %");
    assertThat(strong.said(strong.work().stops().get(0))).contains("probably 10 %");
    assertThat(TRIAL.with("way", "gradient").with("strength", "100 %").stops())
        .containsExactly("percent");
  }

  /** Common practice: 0.5 to 1 % for proteins. */
  @Test
  void unusualTargetIsSaid() {
    assertThat(TRIAL.with("target", "0.5 %").warnings()).doesNotContain("target");
    assertThat(TRIAL.with("target", "1 %").warnings()).doesNotContain("target");
    assertThat(TRIAL.with("target", "1.5 %").warnings()).contains("target");
  }

  @Test
  void strongSaltIsCautionedAndCureOnlyWhereThereIsOne() {
    assertThat(TRIAL.added(Addition.Caution.class))
        .extracting(Addition.Caution::code)
        .containsExactly("strong-salt");
    assertThat(TRIAL.with("cure", "for-target").added(Addition.Caution.class))
        .extracting(Addition.Caution::code)
        .containsExactly("regulated-cure", "strong-salt");
  }

  @Test
  void meatWithoutWaterIsRubbed() {
    Trial dry = Trial.of(new BrineTechnique()).with("meat", "2 kg").with("target", "2 %");
    assertThat(dry.number("salt")).isCloseTo(40, within(1e-9));
  }

  @Test
  void moreSaltIsWantedMoreIsWeighedAndUnitsDoNotMatter() {
    Random random = new Random(39);
    for (int i = 0; i < 300; i++) {
      int meat = 1 + random.nextInt(20_000);
      int water = random.nextInt(20_000);
      int hundredths = 20 + random.nextInt(900);
      double percent = hundredths / 100.0;
      Trial trial =
          TRIAL
              .with("meat", meat + " g")
              .with("water", water + " g")
              .with("target", percent + " %");
      Result result = trial.work();
      assertThat(result.number("saltFraction")).isGreaterThan(result.number("saltTotal"));
      assertThat(result.number("saltWaterPhase")).isLessThan(result.number("saltTotal"));
      assertThat(trial.with("target", (hundredths + 50) / 100.0 + " %").number("salt"))
          .isGreaterThan(result.number("salt"));
      assertThat(trial.with("meat", meat / 1000.0 + " kg").number("salt"))
          .isCloseTo(result.number("salt"), within(1e-6));
    }
  }

  @Test
  void gramsForAKilogramAreTheSameAsPercent() {
    assertThat(TRIAL.with("target", "7.5 g/kg").number("salt")).isCloseTo(15, within(1e-9));
    assertThat(TRIAL.with("meat", "35.27396195 oz").number("salt")).isCloseTo(15, within(1e-6));
  }

  @Test
  void badInputsAreAllNamedAtOnceAndNothingIsWorkedOut() {
    Trial bad =
        Trial.of(new BrineTechnique())
            .with("target", "0.0075")
            .with("strength", "1000 %")
            .with("way", "wet")
            .with("limitFrom", "mine")
            .with("targetPpm", "120");
    assertThat(bad.problems())
        .containsOnlyKeys("meat", "target", "strength", "way", "limitFrom", "targetPpm");
    assertThat(bad.problems().get("target")).contains("unit", "g/kg", "ppm");
    assertThat(bad.problems().get("limitFrom")).contains("local, us-home-cure");
  }
}
