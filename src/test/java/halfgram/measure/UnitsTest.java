package halfgram.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;

/** Units against their definitions. */
class UnitsTest {

  /** Source: NIST Handbook 44, Appendix C: the pound and the gallon are definitions. */
  @Test
  void customaryUnitsAreExactByDefinition() {
    assertIs("1 lb", "453.59237");
    assertIs("1 oz", "28.349523125");
    assertIs("1 gal", "3785.411784");
    assertIs("1 quart", "946.352946");
    assertIs("1 pint", "473.176473");
    assertIs("1 cup", "236.5882365");
    assertIs("1 fl-oz", "29.5735295625");
    assertIs("1 tbsp", "14.78676478125");
    assertIs("1 tsp", "4.92892159375");
  }

  /** Source: NIST Handbook 44, Appendix C: how the units are made of each other. */
  @Test
  void smallerUnitsAddUpToLargerOnes() {
    assertSame("16 oz", "1 lb");
    assertSame("4 quart", "1 gal");
    assertSame("8 pint", "1 gal");
    assertSame("16 cup", "1 gal");
    assertSame("128 fl-oz", "1 gal");
    assertSame("256 tbsp", "1 gal");
    assertSame("768 tsp", "1 gal");
    BigDecimal inch = new BigDecimal("2.54");
    assertThat(inch.pow(3).multiply(BigDecimal.valueOf(231)))
        .as("231 cubic inches, mL")
        .isEqualByComparingTo(grams("1 gal"));
  }

  /** Source: 21 CFR 101.9(b)(5)(viii), a label cup is 240 mL; the ratio by definition. */
  @Test
  void labelCupIsAnotherUnitThanTheCustomaryCup() {
    assertIs("1 label-cup", "240");
    double ratio = grams("1 label-cup").doubleValue() / grams("1 cup").doubleValue();
    assertThat(ratio).isCloseTo(1.014421, within(1e-6));
    assertThat(Unit.find("label-cup")).isNotEqualTo(Unit.find("cup"));
  }

  /** Source: definitions; the metric units by their prefixes. */
  @Test
  void metricUnitsAreDecimal() {
    assertSame("1000 mg", "1 g");
    assertSame("1000 g", "1 kg");
    assertSame("10 mL", "1 cL");
    assertSame("100 cL", "1 L");
  }

  /** Source: definitions; a public freezing guide's gallon a pound is 8.345 L a kilogram. */
  @Test
  void gallonAPoundIsItsLitresAKilogram() {
    double litresPerKilogram = grams("1 gal").doubleValue() / grams("1 lb").doubleValue();
    assertThat(litresPerKilogram).isCloseTo(8.345, within(0.0005));
    assertThat(2 * litresPerKilogram).isCloseTo(16.69, within(0.005));
  }

  /** Source: definition, t_F = 1.8 t_C + 32; the pairs of a public food code beside it. */
  @Test
  void fahrenheitIsShownInCelsius() {
    assertCelsius("135", 57.22);
    assertCelsius("70", 21.11);
    assertCelsius("41", 5.00);
    assertCelsius("40", 4.44);
    assertThat(Temperature.celsius("57").inCelsius()).isEqualByComparingTo("57");
  }

  /** Mass and volume meet only through a density; the program's own rule. */
  @Test
  void massAndVolumeDoNotMeet() {
    assertThat(Quantity.of("1 cup").canonical().orElseThrow().dimension())
        .isEqualTo(Dimension.VOLUME);
    assertThat(Quantity.of("1 lb").canonical().orElseThrow().dimension()).isEqualTo(Dimension.MASS);
    assertThat(Quantity.of("2 bunch").canonical()).isEmpty();
  }

  private static void assertCelsius(String fahrenheit, double celsius) {
    assertThat(Temperature.fahrenheit(fahrenheit).inCelsius().doubleValue())
        .as(fahrenheit + " F")
        .isCloseTo(celsius, within(0.005));
  }

  private static void assertIs(String quantity, String base) {
    assertThat(grams(quantity)).as(quantity).isEqualByComparingTo(base);
  }

  private static void assertSame(String one, String other) {
    assertThat(grams(one)).as(one).isEqualByComparingTo(grams(other));
  }

  /** In base units, grams or millilitres. */
  private static BigDecimal grams(String quantity) {
    return Quantity.of(quantity).canonical().orElseThrow().number();
  }
}
