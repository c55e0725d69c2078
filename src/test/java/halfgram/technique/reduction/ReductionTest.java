package halfgram.technique.reduction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import halfgram.technique.Addition;
import halfgram.technique.Result;
import halfgram.technique.Trial;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ReductionTest {
  private static final Trial TRIAL = Trial.example(new ReductionTechnique());
  private static final Trial BY_GRAVITY = TRIAL.with("readBy", "gravity").with("startBrix", "");

  /** Computed: 1000 g from 12 to 30 °Bx leave 400 g, 600 g go off and take 1354 kJ. */
  @Test
  void whatIsDissolvedStays() {
    Result result = TRIAL.work();
    assertThat(result.number("left")).isCloseTo(400, within(1e-9));
    assertThat(result.number("evaporated")).isCloseTo(600, within(1e-9));
    assertThat(result.number("heat")).isCloseTo(1354, within(0.5));
    assertThat(result.number("dissolved")).isCloseTo(120, within(1e-9));
  }

  /** Published polynomial, two pages; the rough line beside it differs and is labelled so. */
  @Test
  void hydrometerIsReadByThePolynomialAndTheRoughLineIsShownBeside() {
    assertThat(ReductionTechnique.brix(1)).isCloseTo(0, within(0.01));
    assertThat(ReductionTechnique.brix(1.0484)).isCloseTo(12, within(0.02));
    Result result = BY_GRAVITY.with("gravity", "1.0484").work();
    assertThat(result.number("brix")).isEqualTo(result.number("brixByGravity"));
    assertThat(result.number("brixRough")).isCloseTo(11.74, within(0.01));
    assertThat(result.number("left")).isCloseTo(400, within(0.7));
  }

  @Test
  void gravityOutsideItsFormulaIsRefused() {
    assertThat(ReductionTechnique.brix(1.178)).isLessThan(40);
    assertThat(BY_GRAVITY.with("gravity", "1.178").with("target", "60 °Bx").stops()).isEmpty();
    assertThat(BY_GRAVITY.with("gravity", "1.180").with("target", "60 °Bx").stops())
        .containsExactly("gravity");
  }

  @Test
  void nothingIsReducedWithoutAReadingOrToLess() {
    assertThat(TRIAL.with("startBrix", "").stops()).containsExactly("no-reading");
    assertThat(BY_GRAVITY.stops()).containsExactly("no-reading");
    assertThat(BY_GRAVITY.with("gravity", "0.995").stops()).containsExactly("below-water");
    assertThat(TRIAL.with("target", "12 °Bx").stops()).containsExactly("not-thicker");
    assertThat(TRIAL.with("target", "12.1 °Bx").stops()).isEmpty();
  }

  @Test
  void panIsCountedWhereItIsWeighed() {
    assertThat(TRIAL.work().find("onScale")).isEmpty();
    assertThat(TRIAL.reminders())
        .containsExactly(
            "Off the fire when 40 % of what went in are left, the pan not counted; then read,"
                + " 30 °Bx.");
    Trial pan = TRIAL.with("pan", "1.25 kg");
    assertThat(pan.number("onScale")).isCloseTo(1650, within(1e-9));
    assertThat(pan.reminders()).isEqualTo(TRIAL.reminders());
    assertThat(pan.additions()).contains(new Addition.Caution("boiling-pot"));
  }

  @Test
  void timeIsGivenOnlyWhereTheHeatIsKnown() {
    assertThat(TRIAL.work().find("minutes")).isEmpty();
    assertThat(TRIAL.with("power", "2 kW").number("minutes"))
        .isCloseTo(1354.2 / 2 / 60, within(1e-6));
  }

  @Test
  void thickerMeansLessAndTakesMoreHeat() {
    Random random = new Random(37);
    for (int i = 0; i < 300; i++) {
      int start = 1 + random.nextInt(40);
      int target = start + 1 + random.nextInt(40);
      int mass = 1 + random.nextInt(50_000);
      Trial trial =
          TRIAL
              .with("mass", mass + " g")
              .with("startBrix", start + " °Bx")
              .with("target", target + " °Bx");
      Result result = trial.work();
      assertThat(result.number("left") * target).isCloseTo(mass * (double) start, within(1e-4));
      Result thicker = trial.with("target", target + 1 + " °Bx").work();
      assertThat(thicker.number("left")).isLessThan(result.number("left"));
      assertThat(thicker.number("heat")).isGreaterThan(result.number("heat"));
      assertThat(trial.with("mass", mass / 1000.0 + " kg").number("left"))
          .isCloseTo(result.number("left"), within(1e-6));
    }
    assertThat(TRIAL.curve().marks().get(0).y()).isCloseTo(400, within(1e-9));
  }

  @Test
  void badInputsAreAllNamedAtOnceAndNothingIsWorkedOut() {
    Trial bad =
        Trial.of(new ReductionTechnique())
            .with("mass", "1 L")
            .with("startBrix", "12 %")
            .with("gravity", "1048");
    assertThat(bad.problems()).containsOnlyKeys("mass", "startBrix", "gravity", "target");
    assertThat(bad.problems().get("startBrix")).contains("Brix as read", "0 to 90 °Bx");
    assertThat(bad.problems().get("gravity")).contains("0.99 to 1.5");
  }
}
