package halfgram.book;

import halfgram.kitchen.Text;
import halfgram.measure.Marked;
import java.util.Optional;
import java.util.regex.Pattern;

/** What counts as a code and as a text of a book. */
final class Wording {
  private static final Pattern CODE = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");
  private static final int LONGEST_CODE = 60;
  private static final int LONGEST_TEXT = 2000;

  private static final String MARKS = "{85 °C}, {250 g}, {1.5 L}, {8 mm}";

  private Wording() {}

  static Optional<String> code(String text) {
    return text.length() <= LONGEST_CODE && CODE.matcher(text).matches()
        ? Optional.of(text)
        : Optional.empty();
  }

  /** A text of the work, in which measures may be marked: "to {85 °C}". */
  static Text sentence(Node node, String key) {
    return marked(node, key, node.text(key));
  }

  /** A pair of braces around a number is a mark, and has to be one that can be read. */
  static Text marked(Node node, String key, Text text) {
    text.byLanguage().values().stream()
        .flatMap(said -> Marked.findUnread(said).stream())
        .findFirst()
        .ifPresent(mark -> node.problem(key, mark, "problem.mark", MARKS));
    return text;
  }

  static Optional<String> text(String text) {
    return text.isBlank() || text.length() > LONGEST_TEXT
        ? Optional.empty()
        : Optional.of(text.strip());
  }
}
