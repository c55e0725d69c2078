package halfgram.technique.blanch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import halfgram.measure.Mass;
import halfgram.technique.Addition;
import halfgram.technique.Curve;
import halfgram.technique.Result;
import halfgram.technique.Trial;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

class BlanchShockTest {
  private static final Trial TRIAL = Trial.example(new BlanchShockTechnique());

  /** Computed: 1 kg of herb (3.9, 20 °C) in 15.996 kg of water at 100 °C makes 95.6 °C. */
  @Test
  void twoGallonsForAPoundHoldTheBoilToUnderFiveDegrees() {
    assertThat(TRIAL.number("dipped")).isCloseTo(95.6, within(0.05));
    assertThat(TRIAL.number("drop")).isCloseTo(4.37, within(0.01));
    assertThat(TRIAL.warnings()).doesNotContain("drop", "loads");
  }

  /** Computed: the same in 7.998 kg of water makes 91.7 °C. */
  @Test
  void oneGallonForAPoundDropsTheBoilByEightDegrees() {
    Trial trial = TRIAL.with("potWater", "8.345 L").with("ratioBy", "other-vegetables");
    assertThat(trial.number("dipped")).isCloseTo(91.7, within(0.05));
    assertThat(trial.number("loads")).isEqualTo(1);
    assertThat(trial.warnings()).doesNotContain("drop", "loads", "ratio");
  }

  /** Definition: 1 US gallon for a pound is 8.345 L/kg; published guides, two of them. */
  @Test
  void waterFollowsThePublishedRatios() {
    assertThat(3.785411784 / 0.45359237).isCloseTo(BlanchShock.OTHER, within(0.001));
    assertThat(TRIAL.number("waterVolume")).isCloseTo(16.69, within(1e-9));
    assertThat(TRIAL.with("ratioBy", "other-vegetables").number("waterVolume"))
        .isCloseTo(8.345, within(1e-9));
    assertThat(TRIAL.with("ratioBy", "own-ratio").with("ratio", "12 L/kg").number("waterVolume"))
        .isCloseTo(12, within(1e-9));
    assertThat(TRIAL.number("water")).isCloseTo(15_996, within(1.0));
  }

  /** Computed, latent heat as published: 1 kg of water from 20 to 0 °C needs 0.2506 kg of ice. */
  @Test
  void iceTakesUpTheHeatOfWater() {
    double kilograms = Heat.WATER * 20 / (Heat.perGramOfIce(0, 0) * 1000);
    assertThat(kilograms).isCloseTo(0.2506, within(0.00005));
    Trial bathAlone =
        TRIAL
            .with("ownHeat", "0.8 kJ/(kg·K)")
            .with("herb", "1 g")
            .with("carried", "0 %")
            .with("bathRatio", "50")
            .with("bathTemperature", "20 °C")
            .with("end", "0 °C");
    // 50 g of bath need 12.53 g; the gram of herb from the boil 0.24 g.
    assertThat(bathAlone.number("iceBare")).isCloseTo(50 * 0.25064 + 80 / 333.55, within(0.001));
  }

  /** By hand from the balance: 374.4 + 200.64 + 137.94 kJ over 350.27 kJ/kg is 2.036 kg. */
  @Test
  void iceIsTheBalanceOfHerbCarriedWaterAndBath() {
    Result result = TRIAL.work();
    assertThat(result.number("takenOut")).isCloseTo(374.4 + 200.64 + 137.94, within(0.01));
    assertThat(result.number("iceBare")).isCloseTo(712.98 / 350.27 * 1000, within(0.1));
  }

  /** Common practice: the room takes 10 to 25 % more; both ends are shown, the high one weighed. */
  @Test
  void iceForTheRoomIsShownFromTo() {
    Result result = TRIAL.work();
    double bare = result.number("iceBare");
    assertThat(result.number("iceLeast")).isCloseTo(bare * 1.1, within(1e-9));
    assertThat(result.number("iceMost")).isCloseTo(bare * 1.25, within(1e-9));
    assertThat(TRIAL.weighed("ice")).isCloseTo(bare * 1.25, within(1e-3));
    assertThat(TRIAL.with("room", "10 %").number("ice")).isCloseTo(bare * 1.1, within(1e-9));
  }

  @Test
  void bathThatIsColdEnoughByItselfNeedsNoIce() {
    Trial cold =
        TRIAL
            .with("bathRatio", "50")
            .with("bathTemperature", "1 °C")
            .with("end", "15 °C")
            .with("carried", "0 %");
    assertThat(cold.number("ice")).isZero();
  }

  /** Published: a kilogram of flakes lies in 2.2 to 2.3 L, crushed 1.4 to 1.5, tubes 1.6 to 2.0. */
  @Test
  void spaceOfTheIceGoesByItsKind() {
    double kilograms = TRIAL.number("ice") / 1000;
    assertThat(TRIAL.number("iceVolumeLeast")).isCloseTo(kilograms * 2.2, within(1e-9));
    Trial tubes = TRIAL.with("iceKind", "tube");
    assertThat(tubes.number("iceVolumeLeast")).isCloseTo(kilograms * 1.6, within(1e-9));
    assertThat(tubes.number("iceVolumeMost")).isCloseTo(kilograms * 2.0, within(1e-9));
  }

  /** Published rule of water and dry matter: 84 % gives 3.654, 95 % 4.0225; parsley 3.78. */
  @Test
  void heatCapacityFromWaterFollowsTheRule() {
    assertThat(Heat.ofWaterContent(84)).isCloseTo(3.654, within(0.0005));
    assertThat(Heat.ofWaterContent(95)).isCloseTo(4.0225, within(1e-9));
    Trial byWater = TRIAL.with("heatBy", "water-content");
    assertThat(byWater.number("heat")).isCloseTo(3.78, within(0.005));
    assertThat(byWater.with("waterContent", "95 %").number("heat")).isCloseTo(4.0225, within(1e-9));
  }

  /** Sources differ for parsley: composition model 3.87, simple rule 3.78; both are shown. */
  @Test
  void bothHeatCapacitiesAreShownWhereTheyDiffer() {
    Result result = TRIAL.with("heatBy", "table").work();
    assertThat(result.number("heatByTable")).isEqualTo(3.87);
    assertThat(result.number("heatByRule")).isCloseTo(3.78, within(0.005));
    assertThat(result.number("heat")).isEqualTo(3.87);
  }

  @Test
  void vegetableWithoutAFigureIsWorkedOutFromItsWaterAndSaysSo() {
    Trial other = TRIAL.with("vegetable", "other-green").with("heatBy", "table");
    assertThat(other.work().find("heatByTable")).isEmpty();
    assertThat(other.number("heat")).isCloseTo(Heat.ofWaterContent(90), within(1e-9));
    assertThat(other.warnings()).contains("no-heat", "guessed-water");
    Trial said = other.with("waterContent", "92 %");
    assertThat(said.number("heatByRule")).isCloseTo(Heat.ofWaterContent(92), within(1e-9));
    assertThat(said.warnings()).contains("no-heat").doesNotContain("guessed-water");
  }

  /** Garlic has a published heat capacity and no water in the table. */
  @Test
  void guessedWaterIsNoFigureBesideAPublishedOne() {
    Trial garlic = TRIAL.with("vegetable", "garlic").with("heatBy", "table");
    assertThat(garlic.number("heat")).isEqualTo(3.17);
    assertThat(garlic.work().find("heatByRule")).isEmpty();
    assertThat(garlic.warnings()).doesNotContain("guessed-water");
    assertThat(garlic.with("heatBy", "own").warnings()).doesNotContain("guessed-water");
    assertThat(garlic.with("heatBy", "water-content").warnings()).contains("guessed-water");
  }

  /** By hand: 20 L of boiling water are 19,168 g, and 1.5 % of them 287.5 g, not 48 g. */
  @Test
  void saltIsWeighedForThePotThatIsThere() {
    Trial pot = TRIAL.with("herb", "200 g", "potWater", "20 L");
    assertThat(pot.number("salt")).isCloseTo(48, within(0.1));
    assertThat(pot.number("saltInPot")).isCloseTo(287.5, within(0.05));
    assertThat(pot.reminders()).anyMatch(said -> said.contains("1.5 % of the water that is in"));
    assertThat(TRIAL.number("saltInPot")).isCloseTo(TRIAL.number("salt"), within(1e-9));
  }

  /** Common practice: salt is 1 to 2 % of the water. */
  @Test
  void saltIsAShareOfTheWater() {
    Trial trial = TRIAL.with("salt", "2 %");
    assertThat(trial.number("salt")).isCloseTo(trial.number("water") * 0.02, within(1e-9));
    assertThat(trial.warnings()).doesNotContain("salt");
    assertThat(TRIAL.with("salt", "20 g/kg").number("salt"))
        .isCloseTo(trial.number("salt"), within(1e-9));
    assertThat(TRIAL.with("salt", "2.1 %").warnings()).contains("salt");
    assertThat(TRIAL.with("salt", "0.9 %").warnings()).contains("salt");
  }

  @Test
  void moreThanThePotTakesIsSeveralLoads() {
    Trial trial = TRIAL.with("herb", "2.5 kg");
    assertThat(trial.number("mostHerb")).isCloseTo(1000, within(1e-9));
    assertThat(trial.number("loads")).isEqualTo(3);
    assertThat(trial.number("atOnce")).isCloseTo(2500 / 3.0, within(1e-9));
    assertThat(trial.warnings()).contains("loads");
  }

  @Test
  void boilThatDropsTooFarIsSaid() {
    assertThat(TRIAL.with("mostDrop", "4.3 K").warnings()).contains("drop");
    assertThat(TRIAL.with("mostDrop", "4.4 K").warnings()).doesNotContain("drop");
    Trial thin = TRIAL.with("ratioBy", "own-ratio").with("ratio", "5 L/kg").with("potWater", "5 L");
    assertThat(thin.warnings()).contains("drop", "ratio");
  }

  /** Published: a bath of at most 60 °F (15.6 °C), judged in the unit it was typed in. */
  @Test
  void bathIsAtMostSixtyFahrenheitInTheUnitTyped() {
    assertThat(TRIAL.with("end", "60 °F").warnings()).doesNotContain("warm-bath");
    assertThat(TRIAL.with("end", "15.6 °C").warnings()).doesNotContain("warm-bath");
    assertThat(TRIAL.with("end", "60.1 °F").warnings()).contains("warm-bath");
    assertThat(TRIAL.with("end", "15.7 °C").warnings()).contains("warm-bath");
  }

  /** Published recipes disagree from 5 to 60 s; leaves for the freezer take 2 min. */
  @Test
  void timesOutsideEveryRecipeForOilAreSaid() {
    assertThat(TRIAL.with("blanch", "5 s").warnings()).doesNotContain("time");
    assertThat(TRIAL.with("blanch", "60 s").warnings()).doesNotContain("time");
    assertThat(TRIAL.with("blanch", "2 min").warnings()).contains("time");
  }

  /** Published: cool as long as the blanch; common practice: 30 s at least. */
  @Test
  void chillsAsLongAsItBlanchesAndNeverUnderHalfAMinute() {
    assertThat(TRIAL.number("chill")).isEqualTo(30);
    assertThat(TRIAL.with("blanch", "2 min").number("chill")).isEqualTo(120);
  }

  @Test
  void batchGetsWaterSaltIceItsLoadAndWhatToWatch() {
    List<Addition> additions = TRIAL.additions();
    assertThat(TRIAL.weighed("water")).isCloseTo(TRIAL.number("water"), within(1e-3));
    assertThat(TRIAL.weighed("salt")).isCloseTo(TRIAL.number("salt"), within(1e-3));
    assertThat(additions)
        .contains(new Addition.Load(Mass.grams("1000")), new Addition.Caution("boiling-pot"));
    assertThat(TRIAL.reminders()).hasSize(3).element(1).asString().contains("within 1 min");
    assertThat(TRIAL.work().cautions()).containsExactly("boiling-pot");
  }

  @Test
  void curveRisesWithTheHerbAndMarksTheLoad() {
    Curve curve = TRIAL.curve();
    assertThat(curve.points().get(0).y()).isZero();
    assertThat(curve.marks().get(0).y()).isCloseTo(TRIAL.number("drop"), within(1e-9));
    for (int i = 1; i < curve.points().size(); i++) {
      assertThat(curve.points().get(i).y()).isGreaterThan(curve.points().get(i - 1).y());
    }
  }

  @Test
  void moreHerbTakesMoreIceAndDropsTheBoilFurther() {
    Random random = new Random(34);
    for (int i = 0; i < 300; i++) {
      double grams = 10 + random.nextInt(900);
      Trial less = TRIAL.with("herb", grams + " g").with("bathTemperature", "20 °C");
      Trial more = less.with("herb", (grams + 5) + " g");
      assertThat(more.number("ice")).as("herb %s", grams).isGreaterThan(less.number("ice"));
      assertThat(more.number("drop")).as("herb %s", grams).isGreaterThan(less.number("drop"));
      Trial colder = less.with("iceTemperature", "-10 °C");
      assertThat(colder.number("ice")).as("herb %s", grams).isLessThan(less.number("ice"));
    }
  }

  @Test
  void otherUnitsGiveTheSame() {
    Random random = new Random(35);
    for (int i = 0; i < 100; i++) {
      int grams = 10 + random.nextInt(5000);
      int celsius = random.nextInt(40);
      Trial own = TRIAL.with("herb", grams + " g").with("herbTemperature", celsius + " °C");
      Trial other =
          TRIAL
              .with("herb", String.format(Locale.ROOT, "%.3f kg", grams / 1000.0))
              .with("herbTemperature", String.format(Locale.ROOT, "%.1f °F", celsius * 1.8 + 32))
              .with("potWater", "16690 mL");
      assertThat(other.number("ice")).isCloseTo(own.number("ice"), within(1e-6));
      assertThat(other.number("drop")).isCloseTo(own.number("drop"), within(1e-9));
    }
  }

  @Test
  void badInputsAreAllNamedAtOnceAndNothingIsWorkedOut() {
    Trial bad =
        Trial.of(new BlanchShockTechnique())
            .with("herb", "1000")
            .with("boil", "50 °C")
            .with("iceKind", "snow")
            .with("salt", "a pinch")
            .with("iceTemperature", "3 °C")
            .with("lid", "on");
    assertThat(bad.problems())
        .containsOnlyKeys(
            "herb", "potWater", "vegetable", "boil", "iceKind", "salt", "iceTemperature", "lid");
    assertThat(bad.problems().get("herb")).contains("unit", "1 to 200000 g", "kg");
    assertThat(bad.problems().get("boil")).contains("80 to 110 °C", "°F");
    assertThat(bad.problems().get("iceKind")).contains("flake, crushed, tube");
    assertThat(bad.problems().get("vegetable")).contains("parsley");
  }
}
