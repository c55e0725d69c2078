package halfgram.technique.brixblend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import halfgram.technique.Result;
import halfgram.technique.Trial;
import java.util.Random;
import org.junit.jupiter.api.Test;

class BrixBlendTest {
  private static final Trial TRIAL = Trial.example(new BrixBlendTechnique());

  /** Computed: 20 from 30 and 5 takes 15 parts of the 30 and 10 of the 5. */
  @Test
  void eachTakesAsManyPartsAsTheOtherIsAway() {
    Result result = TRIAL.work();
    assertThat(result.number("firstParts")).isEqualTo(15);
    assertThat(result.number("secondParts")).isEqualTo(10);
    assertThat(result.number("first")).isCloseTo(1500, within(1e-9));
    assertThat(TRIAL.weighed("second")).isCloseTo(1000, within(1e-6));
  }

  @Test
  void massOfTheFirstDecidesWhereItIsSaid() {
    Trial given = TRIAL.with("firstMass", "600 g");
    assertThat(given.number("total")).isCloseTo(1000, within(1e-9));
    assertThat(given.number("second")).isCloseTo(400, within(1e-9));
    assertThat(given.warnings()).containsExactly("other-total");
    assertThat(given.with("total", "1 kg").warnings()).isEmpty();
    assertThat(given.with("total", "").warnings()).isEmpty();
  }

  @Test
  void waterThins() {
    Trial thinned = TRIAL.with("secondBrix", "0 °Bx").with("target", "15 °Bx");
    assertThat(thinned.number("second")).isCloseTo(1250, within(1e-9));
  }

  @Test
  void targetOutsideOfBothIsRefusedAndTheEndsAreNot() {
    assertThat(TRIAL.with("target", "30.1 °Bx").stops()).containsExactly("outside");
    assertThat(TRIAL.with("target", "4.9 °Bx").stops()).containsExactly("outside");
    assertThat(TRIAL.with("target", "30 °Bx").number("second")).isZero();
    assertThat(TRIAL.with("target", "5 °Bx").number("first")).isZero();
    assertThat(TRIAL.with("target", "5 °Bx").with("firstMass", "1 g").stops())
        .containsExactly("none-of-first");
    Trial same = TRIAL.with("secondBrix", "30 °Bx").with("target", "30 °Bx");
    assertThat(same.stops()).containsExactly("same");
    assertThat(TRIAL.with("total", "").stops()).containsExactly("no-mass");
  }

  @Test
  void blendHasTheTargetWhicheverIsTheStronger() {
    Random random = new Random(38);
    for (int i = 0; i < 300; i++) {
      int low = random.nextInt(40);
      int high = low + 2 + random.nextInt(40);
      int target = low + 1 + random.nextInt(high - low - 1);
      int grams = 1 + random.nextInt(100_000);
      Trial trial =
          TRIAL
              .with("firstBrix", high + " °Bx")
              .with("secondBrix", low + " °Bx")
              .with("target", target + " °Bx")
              .with("total", grams + " g");
      Trial turned = trial.with("firstBrix", low + " °Bx").with("secondBrix", high + " °Bx");
      assertThat(trial.number("blended")).isCloseTo(target, within(1e-9));
      assertThat(turned.number("first")).isCloseTo(trial.number("second"), within(1e-6));
      assertThat(trial.with("total", grams / 1000.0 + " kg").number("first"))
          .isCloseTo(trial.number("first"), within(1e-6));
    }
    assertThat(TRIAL.curve().marks().get(0).y()).isCloseTo(60, within(1e-9));
  }

  @Test
  void badInputsAreAllNamedAtOnceAndNothingIsWorkedOut() {
    Trial bad = Trial.of(new BrixBlendTechnique()).with("firstBrix", "101 °Bx").with("total", "1");
    assertThat(bad.problems()).containsOnlyKeys("firstBrix", "secondBrix", "target", "total");
    assertThat(bad.problems().get("firstBrix")).contains("0 to 100 °Bx");
  }
}
