package halfgram.technique.weighing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import halfgram.technique.Curve;
import halfgram.technique.Trial;
import halfgram.testkit.Chance;
import halfgram.testkit.Seeds;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Weighing against handbooks and the pharmacopoeia. */
class WeighingTest {
  private static final WeighingTechnique WEIGHING = new WeighingTechnique();

  private static Trial of(String load, String step, String scaleClass) {
    return Trial.of(WEIGHING, "load", load, "step", step, "scaleClass", scaleClass);
  }

  /** Published, NIST Handbook 44 Table 8: 100, 20 or 50, 20, 50, 10 steps. */
  @ParameterizedTest
  @CsvSource({
    "iii,1 g,20",
    "iii,0.1 g,2",
    "ii,0.1 g,5",
    "ii,0.01 g,0.2",
    "ii,0.05 g,1",
    "i,1 mg,0.1",
    "iii-l,2 kg,100000",
    "iiii,5 g,50"
  })
  void theClassRecommendsALeastLoad(String scaleClass, String step, double grams) {
    assertThat(of("10 g", step, scaleClass).number("leastByClass")).isCloseTo(grams, within(1e-9));
  }

  /** Published: 20 steps with a verification step up to 50 mg, 50 from 100 mg on. */
  @Test
  void theLeastLoadGoesByTheVerificationStep() {
    Trial tried = of("0.3 g", "0.01 g", "ii").with("verification", "0.1 g", "wanted", "50 %");
    assertThat(tried.number("leastByClass")).isCloseTo(0.5, within(1e-9));
    assertThat(tried.warns("below-class")).isTrue();
    assertThat(tried.warns("least-in-e")).isTrue();
    assertThat(tried.find("take"))
        .hasValueSatisfying(one -> assertThat(one.number()).isGreaterThanOrEqualTo(0.5));
    assertThat(of("0.3 g", "0.01 g", "ii").warns("least-in-e")).isFalse();
  }

  @ParameterizedTest
  @CsvSource({"19.9 g,true", "20 g,false", "0.02 kg,false"})
  void lessThanTheClassRecommendsIsRemarkedOn(String load, boolean warned) {
    assertThat(of(load, "1 g", "iii").warns("below-class")).isEqualTo(warned);
  }

  /** Computed: 2 g on scales of 1, 0.1 and 0.01 g is off by 25, 2.5 and 0.25 % from rounding. */
  @ParameterizedTest
  @CsvSource({"1 g,25", "0.1 g,2.5", "0.01 g,0.25"})
  void roundingAloneIsHalfAStep(String step, double percent) {
    Trial tried = of("2 g", step, "ii");
    assertThat(tried.number("roundingError")).isCloseTo(percent, within(1e-9));
    assertThat(tried.number("stepError")).isCloseTo(2 * percent, within(1e-9));
  }

  /** Computed: 1 % wanted is 50 steps by rounding alone and 100 by a whole step. */
  @Test
  void bothKitchenRulesAreGiven() {
    Trial tried = of("60 g", "1 g", "iii").with("wanted", "1 %");
    assertThat(tried.number("leastHalfStep")).isCloseTo(50, within(1e-9));
    assertThat(tried.number("leastWholeStep")).isCloseTo(100, within(1e-9));
    assertThat(tried.warns("too-light")).isTrue();
    assertThat(tried.with("load", "100 g").warns("too-light")).isFalse();
    assertThat(tried.with("load", "99.9 g").warns("too-light")).isTrue();
    assertThat(tried.with("wanted", "10 g/kg").number("leastHalfStep")).isCloseTo(50, within(1e-9));
  }

  /** Published: floor 820 steps, 0.820 g at 0.001 g; example 0.00015 g measured is 0.300 g. */
  @Test
  void thePharmacopoeiaWantsAMeasuredRepeatability() {
    Trial unread = of("1 g", "0.001 g", "ii");
    assertThat(unread.number("pharmacopoeiaFloor")).isCloseTo(0.820, within(1e-9));
    assertThat(unread.find("pharmacopoeia")).isEmpty();
    assertThat(unread.warns("not-measured")).isTrue();
    Trial read = of("1 g", "0.0001 g", "i").with("repeatability", "0.00015 g");
    assertThat(read.number("pharmacopoeia")).isCloseTo(0.300, within(1e-9));
    assertThat(read.find("pharmacopoeiaFloor")).isEmpty();
    assertThat(read.warns("not-measured")).isFalse();
    assertThat(read.with("load", "0.29 g").warns("pharmacopoeia")).isTrue();
    assertThat(read.with("load", "300 mg").warns("pharmacopoeia")).isFalse();
    assertThat(unread.with("repeatability", "0.0001 g").number("pharmacopoeia"))
        .isCloseTo(0.820, within(1e-9));
  }

  /** What comes from the display says in its own derivation that nobody measured it. */
  @Test
  void anErrorFromTheDisplayNeverLooksMeasured() {
    Trial tried = of("0.18 g", "0.01 g", "ii");
    for (String figure : List.of("roundingError", "stepError", "mixError", "tolerance")) {
      assertThat(tried.said(figure)).as(figure).contains("not measured");
    }
    assertThat(tried.warns("computed")).isTrue();
    assertThat(tried.said("pharmacopoeiaFloor")).contains("never counted below");
  }

  /** Published, Handbook 44 Table 6 for III; OIML R 76 Table 6 doubled for the others. */
  @ParameterizedTest
  @CsvSource({
    "iii,500,1,0.5",
    "iii,501,2,1",
    "iii,2000,2,1",
    "iii,2001,3,1.5",
    "iii,4000,3,1.5",
    "iii,4001,5,1.5",
    "ii,5000,1,0.5",
    "ii,5001,2,1",
    "ii,20000,2,1",
    "ii,20001,3,1.5",
    "i,50000,1,0.5",
    "i,50001,2,1",
    "i,200000,2,1",
    "i,200001,3,1.5",
    "iiii,50,1,0.5",
    "iiii,51,2,1",
    "iiii,200,2,1",
    "iiii,201,3,1.5"
  })
  void errorsAllowedGrowWithTheLoad(String scaleClass, int load, double service, double first) {
    Trial tried = of(load + " g", "1 g", scaleClass);
    assertThat(tried.number("tolerance")).isCloseTo(service, within(1e-9));
    assertThat(tried.number("acceptance")).isCloseTo(service / 2, within(1e-9));
    assertThat(tried.number("firstVerification")).isCloseTo(first, within(1e-9));
    assertThat(tried.number("toleranceShare")).isCloseTo(100 * service / load, within(1e-9));
  }

  /** Published, OIML R 76 Table 6 is in verification steps; Handbook 44 Table 6 in displayed. */
  @Test
  void errorsAreInTheStepsOfTheirSource() {
    Trial second = of("501 g", "0.01 g", "ii").with("verification", "0.1 g");
    assertThat(second.number("tolerance")).isCloseTo(0.2, within(1e-9));
    assertThat(second.with("load", "500 g").number("tolerance")).isCloseTo(0.1, within(1e-9));
    assertThat(second.warns("tolerance-in-d")).isFalse();
    Trial third = of("6 g", "0.01 g", "iii").with("verification", "0.1 g");
    assertThat(third.number("tolerance")).isCloseTo(0.02, within(1e-9));
    assertThat(third.warns("tolerance-in-d")).isTrue();
  }

  @ParameterizedTest
  @CsvSource({"i,true", "ii,true", "iii,false", "iiii,true", "iii-l,false"})
  void errorsThatHandbook44IsNotKnownToHaveAreMarked(String scaleClass, boolean marked) {
    assertThat(of("50 kg", "5 g", scaleClass).warns("unverified")).isEqualTo(marked);
  }

  @Test
  void whereNoSourceSaysAnErrorNoneIsGiven() {
    Trial tried = of("100 kg", "2 kg", "iii-l");
    assertThat(tried.find("tolerance")).isEmpty();
    assertThat(tried.find("firstVerification")).isEmpty();
    assertThat(tried.warns("no-tolerance")).isTrue();
  }

  /** Published, Handbook 44 Table 3: steps a class can have. */
  @ParameterizedTest
  @CsvSource({
    "iii,1 g,10000 g,false,false", "iii,1 g,10001 g,true,false", "iii,0.05 g,1 g,false,true",
    "iiii,5 g,6000 g,false,false", "iiii,5 g,6001 g,true,false", "iiii,1 g,10 g,false,true",
    "ii,0.01 g,1000 g,false,false", "ii,0.01 g,1001 g,true,false"
  })
  void aClassHasItsStepsAndItsCapacity(
      String scaleClass, String step, String load, boolean above, boolean strange) {
    assertThat(of(load, step, scaleClass).warns("above-class")).isEqualTo(above);
    assertThat(of(load, step, scaleClass).warns("no-such-scale")).isEqualTo(strange);
  }

  /** Sources disagree: class IIII has 1,000 steps by OIML R 76, 1,200 by Handbook 44. */
  @ParameterizedTest
  @CsvSource({"5000 g,false", "5001 g,true", "6000 g,true", "6001 g,false"})
  void bothCapacitiesOfTheCoarsestClassAreSaid(String load, boolean between) {
    Trial tried = of(load, "5 g", "iiii");
    assertThat(tried.warns("above-oiml")).isEqualTo(between);
    assertThat(tried.said("mostByClass")).contains("1200", "1000", "OIML");
  }

  @Test
  void anAuxiliaryDigitIsFinerThanTheVerificationStep() {
    Trial tried = of("10 g", "0.01 g", "iii").with("verification", "0.1 g");
    assertThat(tried.warns("no-such-scale")).isFalse();
    assertThat(tried.number("mostByClass")).isCloseTo(1000, within(1e-9));
    assertThat(tried.with("verification", "0.001 g").stops("verification")).isTrue();
    assertThat(tried.with("verification", "0.001 g").additions()).isEmpty();
  }

  /** Computed: 1 in 2 of 0.18 g would be 0.36 g on a step of 0.01 g, though 1 in 10 does. */
  @Test
  void aMixThatIsTypedIsJudgedItself() {
    Trial tried = of("0.18 g", "0.01 g", "ii").with("oneIn", "2");
    assertThat(tried.warns("no-such-mix")).isTrue();
    assertThat(tried.warns("no-mix")).isFalse();
    assertThat(tried.find("take")).isEmpty();
    assertThat(tried.with("oneIn", "1.9").stops()).containsExactly("one-in");
    assertThat(tried.with("oneIn", "0.5").stops()).containsExactly("one-in");
    assertThat(tried.with("oneIn", "0").number("oneIn")).isEqualTo(10);
  }

  /** Computed: 0.18 g on a 0.01 g scale at 1 %: 5 g in 50 g, of which 1.8 g, off by 0.78 %. */
  @Test
  void aLoadTooLightIsWorkedThroughAMix() {
    Trial tried = of("0.18 g", "0.01 g", "ii");
    assertThat(tried.number("oneIn")).isEqualTo(10);
    assertThat(tried.number("substance")).isCloseTo(5, within(1e-9));
    assertThat(tried.number("carrier")).isCloseTo(45, within(1e-9));
    assertThat(tried.number("take")).isCloseTo(1.8, within(1e-9));
    assertThat(tried.number("mixError")).isCloseTo(0.778, within(0.0005));
    assertThat(tried.find("doublings")).isEmpty();
    assertThat(of("5 g", "0.01 g", "ii").find("take")).isEmpty();
  }

  @Test
  void aDryMixIsDoubledAndNeverCalledEven() {
    Trial tried = of("0.18 g", "0.01 g", "ii").with("carrier", "dry");
    assertThat(tried.number("doublings")).isEqualTo(4);
    assertThat(tried.with("oneIn", "16").number("doublings")).isEqualTo(4);
    assertThat(tried.with("oneIn", "17").number("doublings")).isEqualTo(5);
    assertThat(tried.warns("dry")).isTrue();
    assertThat(tried.says("dry-mix")).isTrue();
  }

  @Test
  void whatNoMixCanSaveIsSaid() {
    Trial tried = of("0.001 g", "1 g", "iii");
    assertThat(tried.warns("no-mix")).isTrue();
    assertThat(tried.find("take")).isEmpty();
  }

  @Test
  void everyMixStaysInsideTheErrorWanted() {
    Seeds.over(
        500,
        seed -> {
          Chance chance = new Chance(seed);
          double step = chance.of(List.of(0.001, 0.01, 0.1, 1.0));
          double dose = step * chance.from(1, 400) / 4;
          double wanted = chance.from(1, 50) / 1000.0;
          double least = 20 * step;
          double oneIn = chance.of(List.of(5.0, 10.0, 50.0, 100.0, 1000.0));
          WorkedMix mix = WorkedMix.of(oneIn, dose, step, least, wanted);
          if (mix.works()) {
            assertThat(mix.error()).isLessThanOrEqualTo(wanted * (1 + 1e-9));
            assertThat(mix.substance()).isGreaterThanOrEqualTo(Math.max(least, dose) * (1 - 1e-9));
            assertThat(mix.carrier()).isGreaterThanOrEqualTo(least * (1 - 1e-9));
            assertThat(mix.take()).isGreaterThanOrEqualTo(least * (1 - 1e-9));
            assertThat(mix.take() / mix.oneIn()).isCloseTo(dose, within(1e-9));
            assertThat(mix.substance() + mix.carrier())
                .isCloseTo(mix.oneIn() * mix.substance(), within(1e-6));
          }
        });
  }

  @Test
  void heavierLoadsAreNeverFurtherOff() {
    Seeds.over(
        200,
        seed -> {
          Chance chance = new Chance(seed);
          int load = chance.from(1, 5000);
          Trial lighter = of(load + " g", "0.1 g", "iii");
          Trial heavier = of(load + chance.from(1, 500) + " g", "0.1 g", "iii");
          assertThat(heavier.number("stepError")).isLessThan(lighter.number("stepError"));
          assertThat(heavier.number("roundingError")).isLessThan(lighter.number("roundingError"));
          assertThat(heavier.number("tolerance"))
              .isGreaterThanOrEqualTo(lighter.number("tolerance"));
        });
  }

  @Test
  void otherUnitsGiveTheSame() {
    Trial grams = of("0.18 g", "0.01 g", "ii");
    Trial other = of("180 mg", "10 mg", "ii").with("wanted", "10000 ppm");
    grams
        .work()
        .figures()
        .forEach(
            figure ->
                assertThat(other.number(figure.name()))
                    .isCloseTo(figure.number(), within(1e-9 * (1 + figure.number()))));
    assertThat(other.work().figures()).hasSameSizeAs(grams.work().figures());
  }

  @Test
  void theCurveFallsAndStandsWhereTheLoadStands() {
    Trial tried = of("2 g", "0.1 g", "iii");
    Curve curve = WEIGHING.curve(tried.values(), Trial.tables()).orElseThrow();
    assertThat(curve.marks().get(0)).isEqualTo(new Curve.Point(2, 5));
    for (int i = 1; i < curve.points().size(); i++) {
      assertThat(curve.points().get(i).y()).isLessThan(curve.points().get(i - 1).y());
    }
  }

  @Test
  void everyBadInputIsNamedAtOnce() {
    Trial bad = Trial.of(WEIGHING, "load", "2", "step", "0 g", "scaleClass", "v", "wanted", "60 %");
    assertThat(bad.problems()).containsOnlyKeys("load", "step", "scaleClass", "wanted");
  }

  @Test
  void theWorkedExampleWorks() {
    assertThat(Trial.example(WEIGHING).number("roundingError")).isCloseTo(25, within(1e-9));
  }
}
