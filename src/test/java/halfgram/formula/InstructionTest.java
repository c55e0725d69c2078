package halfgram.formula;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.kitchen.Text;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** A method in one piece, where there is room for one. */
class InstructionTest {
  @Test
  void oneSentenceIsItself() {
    Text text = text("en", "Stir", "fr", "Remuer");
    assertThat(Instruction.whole(List.of(Instruction.of(text)))).isEqualTo(text);
  }

  @Test
  void severalAreJoinedInEveryLanguageThatOneOfThemHas() {
    Text whole =
        Instruction.whole(
            List.of(
                Instruction.of(text("en", "Stir the salt in", "fr", "Remuer")),
                Instruction.of(text("en", "Is it clear?")),
                Instruction.of(text("en", "Chill"))));
    assertThat(whole)
        .isEqualTo(
            text(
                "en", "Stir the salt in. Is it clear? Chill",
                "fr", "Remuer. Is it clear? Chill"));
  }

  private static Text text(String language, String said) {
    return new Text(new TreeMap<>(Map.of(language, said)));
  }

  private static Text text(String language, String said, String other, String too) {
    return new Text(new TreeMap<>(Map.of(language, said, other, too)));
  }
}
