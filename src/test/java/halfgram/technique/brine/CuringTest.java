package halfgram.technique.brine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import halfgram.book.Reference;
import halfgram.measure.Message;
import halfgram.measure.Standing;
import halfgram.technique.Result;
import halfgram.technique.Tables;
import halfgram.technique.Trial;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** Nitrite as inspectors count it, and the limits nothing passes. */
class CuringTest {
  private static final Trial CURED =
      Trial.example(new BrineTechnique())
          .with("target", "2 %")
          .with("cure", "for-target")
          .with("cureNitrite", "6.25 %")
          .with("targetPpm", "120 ppm")
          .with("localLimit", "150 ppm");

  /** Published, a forum on the handbook: 32 g at 5.88 % in 1266 g, pump 10 %: 148.6 ppm. */
  @Test
  void pumpedPickleIsCountedOnWhatWasTakenUp() {
    assertThat(new Nitrite(0.0588).pickUp(32, 0.10, 1000 + 110 + 124 + 32))
        .isCloseTo(148.6, within(0.05));
  }

  /** The same through typed inputs: 110 g of plain salt beside 30.1 g that come with the cure. */
  @Test
  void publishedPickleComesOutOfTypedInputs() {
    Trial trial =
        Trial.example(new BrineTechnique())
            .with("way", "injected")
            .with("strength", "11.084259 %")
            .with("others", "124 g")
            .with("pump", "10 %")
            .with("cure", "weighed-out")
            .with("cureMass", "32 g")
            .with("cureNitrite", "5.88 %")
            .with("method", "pick-up")
            .with("localLimit", "200 ppm");
    assertThat(trial.number("salt")).isCloseTo(110, within(0.01));
    assertThat(trial.number("pickle")).isCloseTo(1266, within(0.01));
    assertThat(trial.number("ppm")).isCloseTo(148.6, within(0.05));
    assertThat(trial.stops()).isEmpty();
  }

  /** Published: 3 oz of a 6.25 % cure to a gallon of 8.33 lb, pump 10 %: 0.01171 lb, 140 ppm. */
  @Test
  void threeOuncesToAGallonAreAHundredAndFortyPpm() {
    Nitrite nitrite = new Nitrite(0.0625);
    assertThat(3 / 16.0 * 0.0625).isCloseTo(0.01171, within(0.00001));
    assertThat(nitrite.pickUp(3 / 16.0, 0.10, 8.33)).isCloseTo(140.7, within(0.05));
  }

  /** Computed: a quarter of an ounce to 100 lb is 156.25 ppm; 1.92 g of cure for 1 kg is 120. */
  @Test
  void rubbedCureIsCountedOnTheRawMeat() {
    assertThat(new Nitrite(1).onGreen(0.25 / 16, 100)).isCloseTo(156.25, within(1e-9));
    assertThat(new Nitrite(0.0625).cureFor(Nitrite.Method.ON_GREEN, 120, 1000, 20, 0, 0))
        .isCloseTo(1.92, within(1e-9));
    Trial rubbed = CURED.with("water", "0 g").with("method", "on-green");
    assertThat(rubbed.number("cure")).isCloseTo(1.92, within(1e-9));
    assertThat(rubbed.weighed("cure")).isCloseTo(1.92, within(1e-6));
    assertThat(rubbed.weighed("salt")).isCloseTo(20 - 1.92 * 0.9375, within(1e-6));
    assertThat(rubbed.stops()).isEmpty();
  }

  /** Method 2 by hand: 0.2572 g of nitrite in 1 kg of meat and 1.1 kg of pickle are 122.5 ppm. */
  @Test
  void immersedMeatIsCountedWithItsPickle() {
    assertThat(new Nitrite(0.0625).immersed(4.1152, 1000, 1100)).isCloseTo(122.48, within(0.01));
  }

  /** Computed: the same pickle is 150 ppm by its pick-up and 765 ppm where the meat lies in it. */
  @Test
  void meatThatLiesUntilNothingMovesIsNotCountedByItsPickUp() {
    Trial lying = CURED.with("pump", "10 %").with("targetPpm", "150 ppm").with("method", "pick-up");
    assertThat(lying.stops()).containsExactly("method-way");
    assertThat(lying.with("cure", "weighed-out").with("cureMass", "25 g").stops())
        .containsExactly("method-way");
    Trial early = lying.with("way", "gradient", "strength", "3.8461538 %");
    Trial weighed = early.with("cure", "weighed-out").with("cureMass", "25 g");
    assertThat(weighed.number("ppmPickUp")).isCloseTo(150, within(0.5));
    assertThat(weighed.number("ppm")).isCloseTo(765, within(1.0));
    assertThat(weighed.said("ppm")).contains("method 2");
    assertThat(weighed.stops()).containsExactly("over-limit");
    assertThat(early.number("ppm")).isCloseTo(150, within(1e-9));
    assertThat(early.stops()).isEmpty();
  }

  /** Computed: injected with 60 % of itself, what method 2 calls 200 ppm is 310 by method 1. */
  @Test
  void injectedMeatIsNotCountedAsIfItHadLain() {
    Trial pumped =
        CURED
            .with("way", "injected", "strength", "5 %", "water", "600 g", "pump", "60 %")
            .with("localLimit", "200 ppm")
            .with("cure", "weighed-out");
    Trial told = pumped.with("cureMass", "5.222 g");
    assertThat(told.stops()).containsExactly("method-way");
    Trial right = told.with("method", "pick-up");
    assertThat(right.number("ppm")).isCloseTo(310, within(1.0));
    assertThat(right.stops()).containsExactly("over-limit");
  }

  /** More taken up than lies in its share of the pickle: then the pick-up is the larger. */
  @Test
  void meatPulledOutEarlyIsHeldToTheLargerOfBothMethods() {
    Trial early =
        CURED.with("way", "gradient", "strength", "5 %", "water", "600 g", "pump", "60 %");
    assertThat(early.number("ppmPickUp")).isCloseTo(120, within(1e-9));
    assertThat(early.number("ppmImmersed")).isLessThan(120);
    assertThat(early.said("ppm")).contains("method 1");
    assertThat(early.with("pump", "").number("ppmImmersed")).isCloseTo(120, within(1e-9));
  }

  @Test
  void bothMethodsAreShownWhereBothAreKnown() {
    Result one = CURED.work();
    assertThat(one.find("ppmPickUp")).isEmpty();
    assertThat(one.number("ppm")).isEqualTo(one.number("ppmImmersed"));
    Result both = CURED.with("pump", "10 %").work();
    assertThat(both.number("ppmPickUp")).isPositive();
    assertThat(both.number("ppmOnGreen")).isPositive();
  }

  /** Handbook: percent as a proportion; 0.0625 for 6.25 % would be a hundred times the cure. */
  @Test
  void nitriteOfTheTubTypedAsAProportionIsCaught() {
    Trial wrong = CURED.with("cureNitrite", "0.0625 %");
    assertThat(wrong.stops()).containsExactly("percent-meant");
    assertThat(wrong.said(wrong.work().stops().get(0))).contains("0.0625 %", "probably 6.25 %");
    assertThat(CURED.with("cureNitrite", "625 %").problems()).containsOnlyKeys("cureNitrite");
    assertThat(CURED.with("cureNitrite", "6.25").problems()).containsOnlyKeys("cureNitrite");
    assertThat(CURED.with("cureNitrite", "99 %").stops()).containsExactly("percent");
  }

  @Test
  void nothingIsCuredWithoutTubLimitOrAmount() {
    Trial plain = Trial.example(new BrineTechnique()).with("cure", "for-target");
    assertThat(plain.stops()).containsExactly("no-nitrite");
    Trial tub = plain.with("cureNitrite", "6.25 %");
    assertThat(tub.stops()).containsExactly("no-target", "no-limit");
    assertThat(tub.with("targetPpm", "100 ppm").stops()).containsExactly("no-limit");
    assertThat(tub.with("cure", "weighed-out").with("localLimit", "200 ppm").stops())
        .containsExactly("no-cure");
    assertThat(CURED.with("method", "pick-up").stops()).containsExactly("no-pump");
    assertThat(CURED.with("water", "0 g").stops()).containsExactly("no-water");
  }

  @Test
  void limitItselfIsAllowedAndAHairMoreIsNot() {
    assertThat(CURED.with("targetPpm", "150 ppm").stops()).isEmpty();
    assertThat(CURED.with("targetPpm", "0.015 %").stops()).isEmpty();
    assertThat(CURED.with("targetPpm", "150.1 ppm").stops()).containsExactly("over-limit");
    assertThat(CURED.with("localLimit", "119.9 ppm").stops()).containsExactly("over-limit");
    assertThat(CURED.with("localLimit", "0.012 %").stops()).isEmpty();
  }

  @Test
  void cureWeighedOutIsHeldToTheLimitToo() {
    Trial weighed = CURED.with("cure", "weighed-out").with("water", "0 g");
    Trial rubbed = weighed.with("method", "on-green").with("limitFrom", "us-bacon-dry");
    assertThat(rubbed.with("cureMass", "3.2 g").number("ppm")).isCloseTo(200, within(1e-9));
    assertThat(rubbed.with("cureMass", "3.2 g").stops()).isEmpty();
    assertThat(rubbed.with("cureMass", "3.21 g").stops()).containsExactly("over-limit");
  }

  /** 21 CFR 172.170: 200 ppm; the handbook: 120 for bacon pumped or immersed, 200 rubbed. */
  @Test
  void publishedLimitsAreHeld() {
    Trial home = CURED.with("limitFrom", "us-home-cure");
    assertThat(home.with("targetPpm", "200 ppm").stops()).isEmpty();
    assertThat(home.with("targetPpm", "201 ppm").stops()).containsExactly("over-limit");
    assertThat(home.warnings()).doesNotContain("limit-from-memory").contains("licence");
    Trial bacon = CURED.with("limitFrom", "us-bacon-immersed");
    assertThat(bacon.stops()).isEmpty();
    assertThat(bacon.with("targetPpm", "121 ppm").stops()).containsExactly("over-limit");
  }

  /** 21 CFR 172.170: nitrate has its own limit, 500 ppm; no number here holds it. */
  @Test
  void nitrateIsSaidNotToBeCounted() {
    assertThat(CURED.warnings()).contains("nitrate");
    assertThat(CURED.with("cure", "none").warnings()).doesNotContain("nitrate");
  }

  /** From memory, and said so: 80 ppm of the ion are 120 ppm of sodium nitrite. */
  @Test
  void limitAsTheIonIsTurnedIntoSodiumNitriteAndMarked() {
    Trial ion = CURED.with("limitFrom", "eu-80-ion");
    assertThat(ion.number("limit")).isCloseTo(80 * 1.50, within(1e-9));
    assertThat(ion.stops()).isEmpty();
    assertThat(ion.with("targetPpm", "120.1 ppm").stops()).containsExactly("over-limit");
    assertThat(ion.warnings()).contains("limit-from-memory");
  }

  /** A kitchen may bring a limit down in its own row; that it did is said. */
  @Test
  void kitchensOwnLowerLimitCounts() {
    Tables own =
        Reference.load()
            .tables()
            .with(
                Brine.LIMITS,
                "us-home-cure",
                Map.of("ppm", "100"),
                Standing.ENTERED,
                "letter of the authority");
    Result result =
        new BrineTechnique().work(CURED.with("limitFrom", "us-home-cure").values(), own);
    assertThat(result.stops())
        .extracting(Message::key)
        .containsExactly("technique.brine.stop.over-limit");
    assertThat(result.warnings())
        .extracting(Message::key)
        .contains("technique.brine.warn.local-limit");
    assertThat(result.number("limit")).isEqualTo(100);
  }

  @Test
  void limitThatCountsOtherwiseIsNotComparedWith() {
    assertThat(CURED.with("limitFrom", "us-bacon-pumped").stops()).containsExactly("other-method");
    assertThat(CURED.with("limitFrom", "us-comminuted").stops()).containsExactly("other-method");
  }

  @Test
  void everyLimitOfTheTableCanBeChosenAndNoOther() {
    Set<String> options = new TreeSet<>(new BrineTechnique().input("limitFrom").options());
    options.remove("local");
    assertThat(options).isEqualTo(Reference.load().tables().table(Brine.LIMITS).keySet());
  }

  @Test
  void cureThatBringsMoreSaltThanWantedLeavesNone() {
    Trial trial =
        CURED.with("target", "0.1 %").with("cureNitrite", "0.5 %").with("targetPpm", "100 ppm");
    assertThat(trial.number("salt")).isZero();
    assertThat(trial.number("ppm")).isCloseTo(100, within(1e-6));
    assertThat(trial.warnings()).contains("cure-salt");
    double brought = trial.number("cure") * 0.995;
    assertThat(trial.number("saltInAll")).isCloseTo(brought, within(1e-9));
    assertThat(trial.number("atRest")).isCloseTo(100 * brought / (2000 + brought), within(1e-9));
  }

  @Test
  void cureTooWeakForAnyAmountIsRefused() {
    Trial trial =
        CURED
            .with("method", "pick-up")
            .with("way", "injected")
            .with("strength", "1 %")
            .with("pump", "1 %")
            .with("cureNitrite", "0.5 %");
    assertThat(trial.stops()).containsExactly("too-weak");
  }

  @Test
  void cureForATargetGivesThatTargetByEveryMethod() {
    Random random = new Random(50);
    for (int i = 0; i < 400; i++) {
      int ppm = 10 + random.nextInt(140);
      double percent = (50 + random.nextInt(900)) / 100.0;
      String method = new String[] {"immersed", "pick-up", "on-green"}[i % 3];
      Trial trial =
          CURED
              .with("targetPpm", ppm + " ppm")
              .with("cureNitrite", percent + " %")
              .with("method", method)
              .with("way", method.equals("pick-up") ? "injected" : "equilibrium")
              .with("pump", 8 + random.nextInt(20) + " %")
              .with("meat", 100 + random.nextInt(20_000) + " g")
              .with("water", 100 + random.nextInt(20_000) + " g");
      assertThat(trial.number("ppm")).as("%s %s", method, percent).isCloseTo(ppm, within(1e-6));
      Trial more = trial.with("targetPpm", ppm + 1 + " ppm");
      assertThat(more.number("cure")).isGreaterThan(trial.number("cure"));
    }
  }

  @Test
  void cureIsWeighedTwiceAndReadByAnother() {
    assertThat(CURED.reminders()).last().asString().contains("weigh it twice");
    assertThat(CURED.work().cautions()).containsExactly("regulated-cure", "strong-salt");
  }
}
