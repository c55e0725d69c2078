package halfgram.words;

import java.util.Collection;

/** Several things said in one line, a dot between them; where the line wraps, the dot ends it. */
public final class Dots {
  /** A blank that does not break, the dot, and one that does. */
  public static final String BETWEEN = "\u00a0· ";

  private Dots() {}

  /** All of them in one line; empty when there are none. */
  public static String join(Collection<String> parts) {
    return String.join(BETWEEN, parts);
  }
}
