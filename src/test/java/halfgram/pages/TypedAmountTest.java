package halfgram.pages;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.words.Messages;
import java.time.ZoneOffset;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What stands in a field is what is read from it. */
class TypedAmountTest {
  @ParameterizedTest
  @ValueSource(strings = {"en", "es", "fr"})
  void piecesAreReadAsTheyAreShown(String language) {
    for (long pieces : new long[] {0, 1, 89}) {
      String typed = new Messages(language, ZoneOffset.UTC).typed(Amount.pieces(pieces));
      Amount read = TypedAmount.read(typed, Dimension.COUNT).orElseThrow();
      assertThat(read.pieces()).isEqualTo(pieces);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"5.9kg", "5,9 KG", "5.9 Kg.", "5900 G"})
  void unitsAreReadInCapitalsToo(String typed) {
    assertThat(TypedAmount.read(typed, Dimension.MASS).orElseThrow())
        .isEqualByComparingTo(Amount.grams(5900));
  }
}
