package halfgram.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Reference rows against the publications they name. */
class PublishedReferenceTest {
  private final Reference reference = Reference.load();

  /** Source: national nutrient database, release 28, grams a US cup of 236.588 mL. */
  @ParameterizedTest
  @CsvSource({
    "water,237",
    "olive-oil,216",
    "grapeseed-oil,218",
    "milk-whole,244",
    "cream-heavy,238",
    "yogurt-whole,245",
    "honey,339",
    "orange-juice,248",
    "vinegar,238",
    "sugar,200",
    "salt,292",
    "flour-wheat,125",
    "cornstarch,128",
    "butter,227"
  })
  void densityIsGramsACupOverTheCup(String row, double gramsACup) {
    assertThat(reference.densities().get(row).value().number().doubleValue())
        .isCloseTo(gramsACup / 236.5882365, within(0.0006));
  }

  /** Source: national nutrient database, release 28, 100 less the refuse. */
  @ParameterizedTest
  @CsvSource({
    "basil,picked,64",
    "leek,trimmed,44",
    "spearmint,picked,41",
    "tomato,trimmed,91",
    "cucumber,peeled,73",
    "egg,shelled,88"
  })
  void yieldIsAHundredLessTheRefuse(String row, String cut, String percent) {
    assertThat(reference.yields().get(row).get(cut).value().percent())
        .isEqualByComparingTo(percent);
  }

  /** Source: quantity-cooking handout, as purchased = edible x factor; kept to a tenth of a %. */
  @ParameterizedTest
  @CsvSource({"cucumber,handout-pared,1.19", "cucumber,handout-unpared,1.05"})
  void handoutYieldIsTheInverseOfItsFactor(String row, String cut, double factor) {
    assertThat(reference.yields().get(row).get(cut).value().percent().doubleValue())
        .isCloseTo(100 / factor, within(0.05));
  }

  /** Computed from national nutrient database values: 113, 505 and 121 mg in 100 g. */
  @ParameterizedTest
  @CsvSource({"milk-whole,28.2", "mozzarella-whole-milk,126.0", "yogurt-whole,30.2"})
  void naturalCalciumIsItsMillimoles(String row, double millimolesAKilogram) {
    double share = reference.calcium().get(row).value().number().doubleValue();
    assertThat(share * 1e6 / 40.078).isCloseTo(millimolesAKilogram, within(0.05));
  }

  /** Source: oven maker's Gastronorm page; outer sizes of EN 631-1 divide the full one. */
  @Test
  void gastronormSizesDivideTheFullOne() {
    BigDecimal full = area("gn-1-1-65");
    assertThat(full).isEqualByComparingTo("172250");
    assertThat(area("gn-1-2-65").multiply(BigDecimal.valueOf(2))).isEqualByComparingTo(full);
    assertThat(area("gn-1-3-65").multiply(BigDecimal.valueOf(3))).isEqualByComparingTo("171600");
    assertThat(reference.sizes().get("gn-1-1-100").litres()).isEqualByComparingTo("12.6");
  }

  private BigDecimal area(String code) {
    Reference.Size size = reference.sizes().get(code);
    return size.length().multiply(size.width());
  }
}
