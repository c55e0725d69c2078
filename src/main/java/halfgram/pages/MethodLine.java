package halfgram.pages;

import halfgram.prep.Method;
import halfgram.words.Messages;
import java.util.List;

/**
 * A sentence of a method as a page shows it.
 *
 * @param number empty where it is the only one
 */
public record MethodLine(String number, String said) {
  public static List<MethodLine> of(List<Method.Sentence> sentences, Messages words) {
    return sentences.stream()
        .map(
            one ->
                new MethodLine(
                    one.number() == 0 ? "" : String.valueOf(one.number()), words.text(one.text())))
        .toList();
  }
}
