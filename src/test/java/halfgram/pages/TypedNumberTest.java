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
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          1½ lb          | 1.5 lb
          1 ½ lb         | 1.5 lb
          1 1/2 lb       | 1.5 lb
          1-1/2 lb       | 1.5 lb
          1/2 lb         | 0.5 lb
          ¾ cup          | 0.75 cup
          ½ l            | 0.5 l
          2½ qt          | 2.5 quart
          3/8            | 0.375
          2 1⁄4          | 2.25
          -1/2 °C        | -0.5 °C
          1/3 cup        | 0.333333333 cup
          2 lb 3 1/2 oz  | 35.5 oz
          2 lb ¾ oz      | 32.75 oz
          1//2 lb        | 1//2 lb
          1/0 lb         | 1/0 lb
          3/2 lb         | 3/2 lb
          11/2 lb        | 11/2 lb
          3/4/2026       | 3/4/2026
          ½ ½            | ½ ½
          1.5 1/2 lb     | 1.5 1/2 lb
          """)
  void aProperFractionIsReadAsDecimals(String typed, String written) {
    assertThat(TypedNumber.pointed(typed)).isEqualTo(written);
  }

  @ParameterizedTest
  @CsvSource({
    "½ lb, 226.796185",
    "1 1/2lb, 680.388555",
    "1/3 lb, 151.197457",
    "2 lb 3 1/2 oz, 1006.408071"
  })
  void anAmountTypedWithAFractionIsRead(String typed, String grams) {
    Amount read = TypedAmount.read(typed, Dimension.MASS).orElseThrow();
    assertThat(read.number()).isEqualByComparingTo(grams);
  }

  @ParameterizedTest
  @CsvSource({"1//2 lb", "1/0 lb", "/2 lb", "1/ lb"})
  void whatIsNoFractionIsNoAmount(String typed) {
    assertThat(TypedAmount.read(typed, Dimension.MASS)).isEmpty();
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
