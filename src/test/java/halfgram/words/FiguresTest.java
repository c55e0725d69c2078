package halfgram.words;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.kitchen.Kitchen.Units;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Length;
import halfgram.measure.Quantity;
import halfgram.measure.Temperature;
import halfgram.measure.Unit;
import halfgram.pages.TypedAmount;
import java.math.BigDecimal;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.BiConsumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is shown in another unit can be read back to what it was, within the shown digits. */
class FiguresTest {
  private static final long SEED = 20261126;
  private static final int TRIES = 4000;
  private static final BigDecimal TENTH = new BigDecimal("0.1");

  private static final Figures US = new Figures("en", Units.US);
  private static final Figures METRIC = new Figures("en", Units.METRIC);
  private static final Figures BOTH = new Figures("en", Units.BOTH);

  /** NIST Handbook 44, Appendix C, by their names in UCUM. */
  @ParameterizedTest
  @CsvSource({
    "[oz_av], 28.349523125",
    "[lb_av], 453.59237",
    "[foz_us], 29.5735295625",
    "[qt_us], 946.352946",
    "[gal_us], 3785.411784"
  })
  void theFactorsAreThePublishedOnes(String ucum, String factor) {
    assertThat(Unit.values())
        .filteredOn(unit -> unit.ucum().equals(ucum))
        .extracting(Unit::factor)
        .containsExactly(new BigDecimal(factor));
  }

  @Test
  void anInchIsThatOf1959() {
    assertThat(Length.INCH).isEqualByComparingTo("25.4");
  }

  @Test
  void everyMassIsReadBackWithinHalfTheStepItIsShownTo() {
    forMasses(
        (grams, step) -> {
          for (Figures figures : new Figures[] {US, METRIC}) {
            String shown = figures.mass(grams).whole();
            assertThat(grams(shown).subtract(grams).abs())
                .as("%s g as %s", grams, shown)
                .isLessThanOrEqualTo(step.divide(BigDecimal.valueOf(2)));
          }
        });
  }

  @Test
  void whatStandsInAFieldIsReadBackInEveryLanguageAndUnit() {
    forMasses(
        (grams, step) -> {
          Amount mass = Amount.grams(grams);
          for (String typed : Figures.typedForms(mass)) {
            Amount read = TypedAmount.read(typed, Dimension.MASS).orElseThrow();
            assertThat(read.number().subtract(grams).abs())
                .as("%s g typed %s", grams, typed)
                .isLessThanOrEqualTo(step);
            assertThat(TypedAmount.read(typed, mass)).contains(mass);
          }
        });
  }

  @Test
  void bothSaysTheMetricFirstAndAWholeOunceNeverSixteen() {
    forMasses(
        (grams, step) -> {
          assertThat(BOTH.mass(grams).first()).isEqualTo(METRIC.mass(grams).whole());
          assertThat(US.mass(grams).whole()).doesNotMatch("(.* )?16 oz");
        });
  }

  @ParameterizedTest
  @CsvSource({
    "28.3, 28.3 g",
    "28.35, 1 oz",
    "98.5, 3.474 oz",
    "250, 8.82 oz",
    "453.59237, 1 lb",
    "1000, 2 lb 3.27 oz",
    "12400, 27 lb 5.4 oz"
  })
  void aKitchenOfPoundsReadsPoundsAndWeighsSmallDosesInGrams(String grams, String shown) {
    assertThat(US.mass(new BigDecimal(grams)).whole()).isEqualTo(shown);
  }

  @Test
  void volumesAndLengthsKeepTheirStep() {
    assertThat(US.volume(new BigDecimal("236.5882365"), BigDecimal.ONE).whole())
        .isEqualTo("8 fl oz");
    assertThat(US.volume(new BigDecimal("1892.705892"), BigDecimal.TEN).whole()).isEqualTo("2 qt");
    assertThat(BOTH.volume(new BigDecimal("3785.411784"), BigDecimal.TEN).whole())
        .isEqualTo("3.79 L (1 gal)");
    assertThat(US.length(new Length(new BigDecimal("38.1")), TENTH).whole()).isEqualTo("1.5 in");
    assertThat(METRIC.length(new Length(new BigDecimal("38.14")), TENTH).whole())
        .isEqualTo("38.1 mm");
  }

  @Test
  void aTemperatureKeepsWhatWasTyped() {
    Temperature cold = Temperature.celsius("4");
    assertThat(METRIC.temperature(cold).whole()).isEqualTo("4 °C");
    assertThat(US.temperature(cold).whole()).isEqualTo("39.2 °F (4 °C)");
    assertThat(BOTH.temperature(cold).whole()).isEqualTo("4 °C (39.2 °F)");
    Temperature hot = Temperature.fahrenheit("135");
    assertThat(US.temperature(hot).whole()).isEqualTo("135 °F");
    assertThat(METRIC.temperature(hot).whole()).isEqualTo("57.2 °C (135 °F)");
  }

  @Test
  void numbersCarryTheSignsOfTheLanguage() {
    BigDecimal large = new BigDecimal("12345.678");
    assertThat(METRIC.number(large, 1)).isEqualTo("12,345.7");
    assertThat(new Figures("es", Units.METRIC).number(large, 1)).isEqualTo("12\u202f345,7");
    assertThat(new Figures("fr", Units.METRIC).number(new BigDecimal("1.8"), 2)).isEqualTo("1,8");
    assertThat(new Figures("fr", Units.US).mass(BigDecimal.valueOf(1000)).whole())
        .isEqualTo("2 lb 3,27 oz");
  }

  // ---- below their callers ----

  private static final Map<String, BigDecimal> GRAMS =
      Map.of(
          "g", BigDecimal.ONE,
          "kg", BigDecimal.valueOf(1000),
          "oz", Unit.OUNCE.factor(),
          "lb", Unit.POUND.factor());

  private static final Pattern PART = Pattern.compile("([\\d.,]+) (kg|g|oz|lb)");

  /** A shown mass in grams, worked out by hand. */
  private static BigDecimal grams(String shown) {
    BigDecimal sum = BigDecimal.ZERO;
    Matcher part = PART.matcher(shown);
    while (part.find()) {
      BigDecimal number = new BigDecimal(part.group(1).replace(",", ""));
      sum = sum.add(number.multiply(GRAMS.get(part.group(2))));
    }
    return sum;
  }

  /** Masses of every size with the step to which they are shown. */
  private static void forMasses(BiConsumer<BigDecimal, BigDecimal> check) {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int i = 0; i < TRIES; i++) {
      long micrograms = (long) StrictMath.pow(10, 4 + 6.7 * random.nextDouble());
      BigDecimal grams = BigDecimal.valueOf(micrograms, 6);
      check.accept(grams, grams.compareTo(BigDecimal.valueOf(100)) >= 0 ? BigDecimal.ONE : TENTH);
    }
  }

  /** Typed in a book; read in a metric kitchen, in a customary one, where both are read. */
  @ParameterizedTest
  @CsvSource({
    "250 g, 250 g, 8.82 oz, 250 g (8.82 oz)",
    "1.5 kg, 1.5 kg, 3 lb 4.91 oz, 1.5 kg (3 lb 4.91 oz)",
    "0.25 g, 0.25 g, 0.25 g, 0.25 g",
    "8 oz, 227 g, 8 oz, 8 oz (227 g)",
    "1.5 L, 1.5 L, 1.59 qt, 1.5 L (1.59 qt)",
    "200 mL, 200 mL, 6.76 fl oz, 200 mL (6.76 fl oz)",
    "2 quart, 1.89 L, 2 qt, 2 qt (1.89 L)",
    "2 tbsp, 2 tbsp, 2 tbsp, 2 tbsp",
    "8 mm, 8 mm, 0.315 in, 8 mm (0.315 in)",
    "0.5 in, 12.7 mm, 0.5 in, 0.5 in (12.7 mm)",
  })
  void aMeasureInATextStaysAsTypedWhereItsUnitIsRead(
      String typed, String metric, String us, String both) {
    Quantity quantity = Quantity.of(typed);
    assertThat(METRIC.quantity(quantity).whole()).isEqualTo(metric);
    assertThat(US.quantity(quantity).whole()).isEqualTo(us);
    assertThat(BOTH.quantity(quantity).whole()).isEqualTo(both);
  }

  @ParameterizedTest
  @CsvSource({
    "5 kg, 11 lb",
    "250 g, 8.8 oz",
    "3 g, 3 g",
    "900 L, 240 gal",
    "1 L, 1.1 quart",
    "200 mL, 6.8 fl-oz",
    "300 mm, 12 in",
  })
  void aSampleOfWhatCanBeTypedIsRoundInTheUnitsOfTheKitchenAndReadBack(String metric, String us) {
    Quantity quantity = Quantity.of(metric);
    assertThat(METRIC.sample(quantity)).isEqualTo(metric);
    assertThat(BOTH.sample(quantity)).isEqualTo(metric);
    assertThat(US.sample(quantity)).isEqualTo(us);
    assertThat(Quantity.parse(us)).isPresent();
    assertThat(US.sample(Temperature.parse("7.5 °C").orElseThrow())).isEqualTo("46 °F");
    assertThat(new Figures("fr", Units.METRIC).sample(Quantity.of("2.5 kg"))).isEqualTo("2,5 kg");
  }

  @Test
  void aMeasureInATextHasTheSignsOfTheLanguage() {
    assertThat(new Figures("fr", Units.METRIC).quantity(Quantity.of("1.5 mm")).whole())
        .isEqualTo("1,5 mm");
  }
}
