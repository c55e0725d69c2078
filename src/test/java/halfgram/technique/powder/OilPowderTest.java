package halfgram.technique.powder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import halfgram.technique.Addition;
import halfgram.technique.Curve;
import halfgram.technique.Result;
import halfgram.technique.Trial;
import java.util.Random;
import org.junit.jupiter.api.Test;

class OilPowderTest {
  private static final Trial TRIAL = Trial.example(new OilPowderTechnique());

  /** Published ratio, arithmetic by hand: 100 g of oil take 66.7 g of powder and make 166.7 g. */
  @Test
  void sixtyToFortyIsTheStart() {
    assertThat(TRIAL.number("powder")).isCloseTo(66.7, within(0.05));
    assertThat(TRIAL.number("total")).isCloseTo(166.7, within(0.05));
    assertThat(TRIAL.weighed("powder")).isCloseTo(66.667, within(0.001));
  }

  /** Common practice: 55 to 70 % of fat, by eye between them. */
  @Test
  void rangeByEyeRunsFromSeventyToFiftyFivePercentOfFat() {
    Result result = TRIAL.work();
    assertThat(result.number("powderLeast")).isCloseTo(42.857, within(0.001));
    assertThat(result.number("powderMost")).isCloseTo(81.818, within(0.001));
    assertThat(result.number("totalLeast")).isCloseTo(142.857, within(0.001));
    assertThat(result.number("totalMost")).isCloseTo(181.818, within(0.001));
    assertThat(TRIAL.reminders()).anyMatch(said -> said.contains("43 % and 82 %"));
  }

  @Test
  void shareOutsideTheUsualIsSaidAndNotRefused() {
    assertThat(TRIAL.with("fatShare", "55 %").warnings()).doesNotContain("share");
    assertThat(TRIAL.with("fatShare", "70 %").warnings()).doesNotContain("share");
    assertThat(TRIAL.with("fatShare", "50 %").warnings()).contains("share");
    assertThat(TRIAL.with("fatShare", "71 %").stops()).isEmpty();
  }

  /** No document gives the light grade's bulk density: no measurement, no volume. */
  @Test
  void volumeIsRefusedWithoutAMeasuredBulkDensity() {
    assertThat(TRIAL.work().find("powderVolume")).isEmpty();
    assertThat(TRIAL.warnings()).contains("no-volume");
    Trial measured = TRIAL.with("bulkDensity", "0.08 g/mL");
    assertThat(measured.number("powderVolume")).isCloseTo(66.6667 / 0.08, within(0.01));
    assertThat(measured.warnings()).doesNotContain("no-volume", "grade");
    assertThat(TRIAL.with("bulkDensity", "80 g/L").number("powderVolume"))
        .isCloseTo(measured.number("powderVolume"), within(1e-9));
  }

  /** Two specifications: ordinary maltodextrin has 0.50 to 0.65 g/mL (one 0.568). */
  @Test
  void densityOfOrdinaryMaltodextrinIsTheWrongTub() {
    assertThat(TRIAL.with("bulkDensity", "0.568 g/mL").stops()).containsExactly("wrong-grade");
    assertThat(TRIAL.with("bulkDensity", "0.50 g/mL").stops()).containsExactly("wrong-grade");
    assertThat(TRIAL.with("bulkDensity", "0.50 g/mL").work().find("powderVolume")).isEmpty();
    assertThat(TRIAL.with("bulkDensity", "0.49 g/mL").stops()).isEmpty();
    assertThat(TRIAL.with("bulkDensity", "0.49 g/mL").warnings()).contains("grade");
  }

  /** From memory, unverified: the light grade has 0.05 to 0.13 g/mL; outside it is only said. */
  @Test
  void densityOutsideTheLightGradeIsSaid() {
    assertThat(TRIAL.with("bulkDensity", "0.13 g/mL").warnings()).doesNotContain("grade");
    assertThat(TRIAL.with("bulkDensity", "0.05 g/mL").warnings()).doesNotContain("grade");
    assertThat(TRIAL.with("bulkDensity", "0.14 g/mL").warnings()).contains("grade");
    assertThat(TRIAL.with("bulkDensity", "0.04 g/mL").warnings()).contains("grade");
  }

  @Test
  void fatWithWaterInItIsRefused() {
    assertThat(TRIAL.with("kind", "butter").stops()).containsExactly("butter");
    assertThat(TRIAL.with("water", "1 %").stops()).containsExactly("water");
    assertThat(TRIAL.with("water", "1 %").number("waterIn")).isEqualTo(1);
    assertThat(TRIAL.with("kind", "clarified-butter").stops()).isEmpty();
  }

  @Test
  void toolsAreDryAndHardFatsAreMeltedAndCooled() {
    assertThat(TRIAL.reminders()).first().asString().contains("Dry bowl");
    assertThat(TRIAL.reminders()).noneMatch(said -> said.startsWith("Melt"));
    assertThat(TRIAL.with("kind", "clarified-butter").reminders())
        .anyMatch(said -> said.startsWith("Melt"));
    assertThat(TRIAL.with("kind", "rendered-fat").reminders())
        .anyMatch(said -> said.startsWith("Melt"));
  }

  /** A herb oil's day 4 is the last, and no powder of it has one more. */
  @Test
  void powderOfAHerbOilHasTheOilsDate() {
    Trial herb = TRIAL.with("kind", "herb-oil");
    assertThat(herb.number("daysLeft")).isEqualTo(4);
    assertThat(herb.with("oilDay", "2").number("daysLeft")).isEqualTo(3);
    assertThat(herb.with("oilDay", "4").number("daysLeft")).isEqualTo(1);
    assertThat(herb.with("oilDay", "4").stops()).isEmpty();
    assertThat(herb.with("oilDay", "5").stops()).containsExactly("oil-over");
    assertThat(herb.with("oilDay", "2").additions())
        .contains(new Addition.Caution("herb-in-oil"))
        .anyMatch(a -> a instanceof Addition.Keeps keeps && keeps.days() == 4);
    assertThat(herb.with("oilDay", "4").additions())
        .anyMatch(a -> a instanceof Addition.Keeps keeps && keeps.days() == 4);
    assertThat(herb.says("decant")).isTrue();
    assertThat(herb.work().cautions()).containsExactly("herb-in-oil");
  }

  /** A plain oil brings its own date with it: nothing is added that could be later. */
  @Test
  void powderOfAPlainOilGetsNoDateOfItsOwn() {
    assertThat(TRIAL.additions()).noneMatch(Addition.Keeps.class::isInstance);
    assertThat(TRIAL.additions()).noneMatch(Addition.Good.class::isInstance);
    assertThat(TRIAL.warnings()).contains("keeping");
  }

  /** Published: airtight, cool, dark and dry; days, which its fat limits, are common practice. */
  @Test
  void howItKeepsIsSaidAtTheTask() {
    assertThat(TRIAL.says("keep")).isTrue();
    assertThat(TRIAL.with("kind", "herb-oil").says("keep")).isTrue();
    assertThat(TRIAL.says("decant")).isFalse();
  }

  @Test
  void moreFatInTheShareTakesLessPowderAndMassIsKept() {
    Random random = new Random(43);
    for (int i = 0; i < 300; i++) {
      int fat = 1 + random.nextInt(20_000);
      int share = 20 + random.nextInt(69);
      Trial trial = TRIAL.with("fat", fat + " g").with("fatShare", share + " %");
      double powder = trial.number("powder");
      assertThat(fat / (fat + powder)).isCloseTo(share / 100.0, within(1e-9));
      assertThat(trial.with("fatShare", (share + 1) + " %").number("powder")).isLessThan(powder);
      assertThat(trial.with("fat", fat / 1000.0 + " kg").number("powder"))
          .isCloseTo(powder, within(1e-6));
    }
  }

  @Test
  void curveFallsAndMarksTheShareUsed() {
    Curve curve = TRIAL.curve();
    assertThat(curve.marks().get(0).y()).isCloseTo(66.667, within(0.001));
    for (int i = 1; i < curve.points().size(); i++) {
      assertThat(curve.points().get(i).y()).isLessThan(curve.points().get(i - 1).y());
    }
  }

  @Test
  void badInputsAreAllNamedAtOnceAndNothingIsWorkedOut() {
    Trial bad =
        Trial.of(new OilPowderTechnique())
            .with("fat", "100")
            .with("fatShare", "0.6 %")
            .with("kind", "milk")
            .with("bulkDensity", "0.1");
    assertThat(bad.problems()).containsOnlyKeys("fat", "fatShare", "kind", "bulkDensity");
    assertThat(bad.problems().get("fatShare")).contains("20 to 90 %");
    assertThat(bad.problems().get("bulkDensity")).contains("unit", "g/L");
    assertThat(Trial.of(new OilPowderTechnique()).problems()).containsOnlyKeys("fat");
  }
}
