package halfgram.technique.bonding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import halfgram.technique.Addition;
import halfgram.technique.Result;
import halfgram.technique.Trial;
import java.time.Duration;
import java.util.Random;
import org.junit.jupiter.api.Test;

class BondingTest {
  private static final Trial TRIAL = Trial.example(new BondingTechnique());

  /** Published slides, pH 6: 5 °C 240 min, 20 °C 70, 50 °C 10. */
  @Test
  void timesOfTheTableAreItsOwn() {
    assertThat(BondTime.minutes(5)).isEqualTo(240);
    assertThat(BondTime.minutes(15)).isEqualTo(105);
    assertThat(BondTime.minutes(20)).isEqualTo(70);
    assertThat(BondTime.minutes(30)).isEqualTo(35);
    assertThat(BondTime.minutes(40)).isEqualTo(20);
    assertThat(BondTime.minutes(50)).isEqualTo(10);
  }

  /** Computed: between two entries the geometric mean in the middle. */
  @Test
  void timesBetweenAreDrawnByTheirLogarithms() {
    assertThat(BondTime.minutes(10)).isCloseTo(Math.sqrt(240 * 105.0), within(1e-9));
    Random random = new Random(52);
    for (int i = 0; i < 300; i++) {
      double celsius = 5 + random.nextDouble() * 44;
      assertThat(BondTime.minutes(celsius + 1)).isLessThan(BondTime.minutes(celsius));
    }
  }

  /** Sources disagree in the cold: 240 min on slides, 6 h on a page; the longer one is kept. */
  @Test
  void longerOfTwoTimesInTheColdIsKeptAndBothAreShown() {
    Result result = TRIAL.work();
    assertThat(result.number("bySlides")).isEqualTo(240);
    assertThat(result.number("byGuide")).isEqualTo(360);
    assertThat(result.number("least")).isEqualTo(360);
    assertThat(TRIAL.additions())
        .anyMatch(a -> a instanceof Addition.Stands s && s.least().equals(Duration.ofHours(6)));
  }

  /** Food safety before the enzyme: at most 5 °C or 41 °F, each in the unit it was typed in. */
  @Test
  void bondIsMadeInTheColdInTheUnitTyped() {
    assertThat(TRIAL.stops()).isEmpty();
    assertThat(TRIAL.with("temperature", "41 °F").stops()).isEmpty();
    assertThat(TRIAL.with("temperature", "5.1 °C").stops()).containsExactly("too-warm");
    assertThat(TRIAL.with("temperature", "41.1 °F").stops()).containsExactly("too-warm");
    Trial warm = TRIAL.with("temperature", "50 °C");
    assertThat(warm.stops()).containsExactly("too-warm");
    assertThat(warm.number("bySlides")).isEqualTo(10);
    assertThat(warm.additions()).noneMatch(Addition.Stands.class::isInstance);
  }

  @Test
  void outsideOfTheTableNothingIsDrawn() {
    Trial colder = TRIAL.with("temperature", "2 °C");
    assertThat(colder.work().find("bySlides")).isEmpty();
    assertThat(colder.number("least")).isEqualTo(360);
    assertThat(colder.said("least")).contains("one time");
    assertThat(TRIAL.said("least")).contains("240", "360");
    assertThat(colder.warnings()).contains("colder");
    assertThat(TRIAL.with("temperature", "60 °C").warnings()).contains("hotter");
  }

  /** One supplier: a slurry of 1 to 4 in water. */
  @Test
  void slurryIsOneToFour() {
    assertThat(TRIAL.weighed("enzyme")).isCloseTo(10, within(1e-6));
    assertThat(TRIAL.weighed("water")).isCloseTo(40, within(1e-6));
    assertThat(TRIAL.number("slurry")).isCloseTo(50, within(1e-9));
    assertThat(TRIAL.with("applied", "dust").work().find("water")).isEmpty();
    assertThat(TRIAL.with("applied", "dust").reminders()).anyMatch(s -> s.contains("sieve"));
  }

  /** From memory: the dose; said until somebody says what the bag says. */
  @Test
  void doseFromMemoryIsSaid() {
    assertThat(TRIAL.warnings()).contains("dose");
    assertThat(TRIAL.with("dose", "0.8 %").warnings()).doesNotContain("dose");
    assertThat(TRIAL.with("dose", "0.5 %").warnings()).doesNotContain("dose-odd");
    assertThat(TRIAL.with("dose", "1.0 %").warnings()).doesNotContain("dose-odd");
    assertThat(TRIAL.with("dose", "0.49 %").warnings()).contains("dose-odd");
    assertThat(TRIAL.with("dose", "1.01 %").warnings()).contains("dose-odd");
  }

  /** Published slides: it works from 0 to about 65 °C, and cooking hotter stops it. */
  @Test
  void enzymeDoesNotWorkInTheFrost() {
    assertThat(TRIAL.with("temperature", "0 °C").stops()).isEmpty();
    assertThat(TRIAL.with("temperature", "32 °F").stops()).isEmpty();
    assertThat(TRIAL.with("temperature", "-0.1 °C").stops()).containsExactly("frozen");
    assertThat(TRIAL.with("temperature", "31.9 °F").stops()).containsExactly("frozen");
    assertThat(TRIAL.reminders()).anyMatch(said -> said.contains("65 °C"));
  }

  @Test
  void enzymeWorksFromFourToNine() {
    assertThat(TRIAL.with("ph", "4").stops()).isEmpty();
    assertThat(TRIAL.with("ph", "9").stops()).isEmpty();
    assertThat(TRIAL.with("ph", "3.9").stops()).containsExactly("ph");
    assertThat(TRIAL.with("ph", "9.1").stops()).containsExactly("ph");
    assertThat(TRIAL.with("ph", "5.5").warnings()).contains("ph");
    assertThat(TRIAL.with("ph", "6.5").warnings()).doesNotContain("ph");
  }

  @Test
  void doseGrowsWithTheMeatInWhateverUnit() {
    Random random = new Random(53);
    for (int i = 0; i < 200; i++) {
      int grams = 1 + random.nextInt(100_000);
      Trial trial = TRIAL.with("meat", grams + " g");
      assertThat(trial.number("enzyme")).isCloseTo(grams / 100.0, within(1e-9));
      assertThat(trial.with("meat", grams / 1000.0 + " kg").number("enzyme"))
          .isCloseTo(trial.number("enzyme"), within(1e-6));
    }
    assertThat(TRIAL.curve().marks().get(0).y()).isEqualTo(240);
  }

  @Test
  void badInputsAreAllNamedAtOnceAndNothingIsWorkedOut() {
    Trial bad =
        Trial.of(new BondingTechnique())
            .with("meat", "1 cup")
            .with("applied", "paste")
            .with("ph", "neutral");
    assertThat(bad.problems()).containsOnlyKeys("meat", "applied", "ph", "temperature");
    assertThat(bad.problems().get("temperature")).contains("-2 to 70 °C", "°F");
  }
}
