package halfgram.measure;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What braces in a text mark, and what they do not. */
class MarkedTest {
  private static final Marked.Writer LOUD =
      new Marked.Writer() {
        @Override
        public String temperature(Temperature typed) {
          return "<" + typed + ">";
        }

        @Override
        public String quantity(Quantity typed) {
          return "[" + typed + "]";
        }
      };

  @Test
  void measuresInBracesAreWrittenAndTheRestStaysAsItWasTyped() {
    assertThat(Marked.written("to {85 °C}, {250 g} at a time; 90 °C is too hot", LOUD))
        .isEqualTo("to <85 °C>, [250 g] at a time; 90 °C is too hot");
    assertThat(Marked.written("{39.2 °F} {1.5 L} {8 mm} {0.5 in} {2 tbsp} $1 \\", LOUD))
        .isEqualTo("<39.2 °F> [1.5 L] [8 mm] [0.5 in] [2 tbsp] $1 \\");
    assertThat(Marked.written("à {85\u00a0°C} ou {250\u202fg}", LOUD))
        .isEqualTo("à <85 °C> ou [250 g]");
  }

  @Test
  void otherBracesAreTheTextsOwn() {
    String own = "the tray {left} {} { {\"en\": \"dill\"} {see 2}";
    assertThat(Marked.written(own, LOUD)).isEqualTo(own);
    assertThat(Marked.findUnread(own)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"{85 Cell}", "{250}", "{1,5 kg}", "{3 piece}", "{2 bunch}", "{-5 g}"})
  void aNumberInBracesThatIsNoMeasureIsFound(String mark) {
    assertThat(Marked.findUnread("warm to {60 °C}, then " + mark + ", stir")).contains(mark);
    assertThat(Marked.written(mark, LOUD)).isEqualTo(mark);
  }
}
