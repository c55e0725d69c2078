package halfgram.book;

import java.util.Optional;
import java.util.regex.Pattern;

/** What counts as a code and as a text of a book. */
final class Wording {
  private static final Pattern CODE = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");
  private static final int LONGEST_CODE = 60;
  private static final int LONGEST_TEXT = 2000;

  private Wording() {}

  static Optional<String> code(String text) {
    return text.length() <= LONGEST_CODE && CODE.matcher(text).matches()
        ? Optional.of(text)
        : Optional.empty();
  }

  static Optional<String> text(String text) {
    return text.isBlank() || text.length() > LONGEST_TEXT
        ? Optional.empty()
        : Optional.of(text.strip());
  }
}
