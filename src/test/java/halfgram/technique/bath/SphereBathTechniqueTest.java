package halfgram.technique.bath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import halfgram.book.Reference;
import halfgram.technique.Calculation;
import halfgram.technique.Tables;
import halfgram.technique.Trial;
import halfgram.testkit.Seeds;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A sphere bath worked out alone, against chemistry and the table of the model. */
class SphereBathTechniqueTest {
  private static final Tables TABLES = Reference.load().tables();
  private static final SphereBathTechnique BATH = new SphereBathTechnique();

  private static Calculation worked(String... typed) {
    Map<String, String> all = new TreeMap<>(BATH.example());
    for (int i = 0; i < typed.length; i += 2) {
      all.put(typed[i], typed[i + 1]);
    }
    return Calculation.of(BATH, TABLES, all);
  }

  private static double number(Calculation calculation, String figure) {
    return calculation.result().orElseThrow().number(figure);
  }

  private static boolean warns(Calculation calculation, String key) {
    return calculation.result().orElseThrow().warnings().stream()
        .anyMatch(said -> said.key().endsWith(key));
  }

  private static boolean stops(Calculation calculation, String key) {
    return calculation.result().orElseThrow().stops().stream()
        .anyMatch(said -> said.key().endsWith(key));
  }

  /** Computed: 2 % of lactate gluconate in a 0.5 % bath at 25 °C, 5e-10 m2/s, after 3 min. */
  @Test
  void theExampleComesToTheTablesSkin() {
    Calculation example = worked();
    assertThat(number(example, "calcium")).isCloseTo(64.46, within(0.01));
    assertThat(number(example, "sites")).isCloseTo(12.62, within(0.005));
    assertThat(number(example, "front")).isCloseTo(1.0658, within(0.0005));
    assertThat(number(example, "skinAtSet")).isCloseTo(0.639, within(0.001));
    assertThat(number(example, "timeForSkin")).isCloseTo(110, within(0.5));
    assertThat(number(example, "skinLow")).isLessThan(number(example, "skinAtSet"));
    assertThat(number(example, "skinHigh")).isGreaterThan(number(example, "skinAtSet"));
  }

  /** Computed: 0.6 mm at 150 s is 0.9 mm at 337.5 s. */
  @Test
  void oneMeasurementReplacesTheEstimate() {
    Calculation measured =
        worked("measuredSkin", "0.6 mm", "measuredTime", "150 s", "skin", "0.9 mm");
    assertThat(number(measured, "timeForSkin")).isCloseTo(337.5, within(0.01));
    assertThat(measured.result().orElseThrow().find("skinLow")).isEmpty();
    assertThat(warns(measured, "warn.estimate")).isFalse();
    Calculation half = worked("measuredSkin", "0.6 mm");
    assertThat(warns(half, "warn.half-measured")).isTrue();
    assertThat(number(half, "skinAtSet")).isEqualTo(number(worked(), "skinAtSet"));
  }

  /** Published: lactate gluconate 400 g/L, lactate 66 g/L, gluconate 35 g/L. */
  @ParameterizedTest
  @CsvSource({
    "calcium-gluconate-monohydrate,3.5 %,false", "calcium-gluconate-monohydrate,3.51 %,true",
    "calcium-lactate-pentahydrate,6.6 %,false", "calcium-lactate-pentahydrate,6.7 %,true",
    "calcium-lactate-gluconate,20 %,false"
  })
  void moreSaltThanDissolvesIsStopped(String salt, String share, boolean stopped) {
    Calculation calculation = worked("salt", salt, "saltShare", share);
    assertThat(stops(calculation, "stop.insoluble")).isEqualTo(stopped);
    assertThat(calculation.isGood()).isEqualTo(!stopped);
  }

  /** Published: keep the direct method above pH 3.65; a reading is demanded, never worked out. */
  @Test
  void theDirectMethodDemandsAReadingAndIsStoppedWhenTooAcid() {
    assertThat(stops(worked("method", "direct"), "stop.no-ph")).isTrue();
    assertThat(stops(worked("method", "direct", "ph", "3.65"), "stop.too-acid")).isTrue();
    Calculation acid = worked("method", "direct", "ph", "3.66");
    assertThat(acid.isGood()).isTrue();
    assertThat(warns(acid, "warn.read-again")).isTrue();
    assertThat(worked("method", "direct", "ph", "4").result().orElseThrow().find("citrateHigh"))
        .isEmpty();
    assertThat(worked("ph", "2").isGood()).as("reverse does not mind").isTrue();
  }

  /** Computed: salt in a bag with its own assay. */
  @Test
  void theBagsAssayGoesBeforeTheFormulaMass() {
    double byTub = number(worked("assay", "10 %"), "calcium");
    assertThat(byTub).isCloseTo(0.02 * 0.10 / 40.078 * 1e6, within(1e-6));
  }

  /** Water that nobody has read is not taken for soft. */
  @Test
  void theHardnessOfTheWaterHasToBeTold() {
    Map<String, String> untold = new TreeMap<>(BATH.example());
    untold.remove("hardness");
    Calculation calculation = Calculation.of(BATH, TABLES, untold);
    assertThat(calculation.result()).isEmpty();
    assertThat(calculation.problems()).extracting(p -> p.path()).containsExactly("hardness");
  }

  /** Nobody is half at the bath; every count is told at once, with what it accepts. */
  @Test
  void countsAreWholeNumbers() {
    Map<String, String> problems =
        Trial.example(BATH)
            .with("people", "1.5", "baths", "2.5", "rinses", "0.5", "spares", "1.2")
            .with("pieces", "10.5", "mostPieces", "99.9 pieces", "set", "90.5 s")
            .problems();
    assertThat(problems.keySet())
        .containsExactly("baths", "mostPieces", "people", "pieces", "rinses", "spares");
    assertThat(problems.get("people"))
        .isEqualTo("is not a whole number; accepted: People at the bath, 1 to 6, without a unit");
    Trial.example(BATH).with("people", "2.0", "mostPieces", "99 pieces").work();
  }

  /** Definition: a grain in a US gallon is 64.79891 mg in 3.785411784 L; ppm is mg in a litre. */
  @Test
  void hardnessMayBeTypedAsItIsRead() {
    double perGrain = 64.79891 / 3.785411784;
    assertThat(perGrain).isCloseTo(17.118, within(0.0005));
    double whole = number(worked("hardness", "171.18061 mg/L"), "hard");
    assertThat(number(worked("hardness", "10 gpg"), "hard")).isCloseTo(whole, within(1e-9));
    assertThat(number(worked("hardness", "171.18061 ppm"), "hard")).isEqualTo(whole);
    assertThat(10 * perGrain).isCloseTo(171.18061, within(1e-5));
  }

  /** Common practice: a frozen piece takes a minute more. */
  @Test
  void aFrozenPieceTakesAMinuteMore() {
    double liquid = number(worked(), "timeForSkin");
    assertThat(number(worked("method", "frozen-reverse"), "timeForSkin"))
        .isCloseTo(liquid + 60, within(1e-9));
  }

  /** Mass balance: alginate left over bath left, in small steps of one piece. */
  @Test
  void waterCarriedInThinsTheBathAsAMassBalanceSays() {
    Calculation wet = worked("water", "1 mL", "pieces", "60", "leastStrength", "50 %");
    double skin = number(wet, "skinVolume");
    double bath = 4000;
    double alginate = 4000 * 0.005;
    long through = Math.min((long) number(wet, "lasts"), 60);
    for (int piece = 0; piece < through; piece++) {
      double out = skin + 1.25;
      alginate -= alginate / bath * out;
      bath += 1 - out;
    }
    assertThat(number(wet, "strengthAtEnd")).isCloseTo(alginate / bath / 0.005 * 100, within(0.05));
    assertThat(number(worked(), "strengthAtEnd")).isEqualTo(100);
  }

  @Test
  void theRuleThatTripsFirstIsTheOneThatIsNamed() {
    Calculation thin = worked("water", "5 mL", "leastStrength", "95 %", "breakage", "0 %");
    double least =
        java.util.stream.Stream.of("byLevel", "byCalcium", "byStrength")
            .flatMap(name -> thin.result().orElseThrow().find(name).stream())
            .mapToDouble(figure -> figure.number())
            .min()
            .orElseThrow();
    assertThat(number(thin, "byStrength")).isEqualTo(least);
    assertThat(number(thin, "lasts")).isLessThanOrEqualTo(Math.max(least, number(thin, "perDrop")));
  }

  @Test
  void theSameInOtherUnitsComesToTheSame() {
    Seeds.over(
        60,
        seed -> {
          Random random = new Random(seed);
          int grams = 500 + random.nextInt(9000);
          int millimetres = 100 + random.nextInt(500);
          int seconds = 60 + 60 * random.nextInt(20);
          Calculation metric =
              worked("bath", grams + " g", "length", millimetres + " mm", "set", seconds + " s");
          Calculation other =
              worked(
                  "bath",
                  grams / 1000.0 + " kg",
                  "length",
                  millimetres / 10.0 + " cm",
                  "set",
                  seconds / 60 + " min");
          assertThat(other.result().orElseThrow().figures())
              .isEqualTo(metric.result().orElseThrow().figures());
        });
  }
}
