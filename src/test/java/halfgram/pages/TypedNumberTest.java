package halfgram.pages;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Quantity;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TypedNumberTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          1,5 kg      | 1.5 kg
          1 lb 4 oz   | 20 oz
          1 lb 4.25oz | 20.25 oz
          2 lb 3,5 oz | 35.5 oz
          12 ounces   | 12 oz
          2 pounds    | 2 lb
          1.5 lbs.    | 1.5 lb
          3 qt        | 3 quart
          8 fl oz     | 8 fl-oz
          3 bunch     | 3 bunch
          1,500 g     | 1,500 g
          1 lb 4      | 1 lb 4
          """)
  void whatPeopleCallAUnitIsReadAsItsSign(String typed, String written) {
    assertThat(TypedNumber.pointed(typed)).isEqualTo(written);
  }

  @ParameterizedTest
  @CsvSource({
    "1 lb 8 oz, 680.388555, MASS",
    "1 oz, 28.349523125, MASS",
    "1 qt, 946.352946, VOLUME",
    "2 pints, 946.352946, VOLUME"
  })
  void byTheExactFactor(String typed, String base, Dimension dimension) {
    Amount read = Quantity.parse(TypedNumber.pointed(typed)).flatMap(Quantity::canonical).get();
    assertThat(read.number()).isEqualByComparingTo(base);
    assertThat(read.dimension()).isEqualTo(dimension);
  }
}
