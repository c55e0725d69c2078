package halfgram.words;

import java.util.Collection;
import java.util.List;
import java.util.stream.IntStream;

/** Several things said in one line, a dot between them; where the line wraps, the dot ends it. */
public final class Dots {
  /** A blank that does not break, the dot, and one that does. */
  public static final String BETWEEN = "\u00a0· ";

  private Dots() {}

  /** Each with the dot that follows it, for a line that wraps between them alone. */
  public static List<String> each(List<String> parts) {
    int last = parts.size() - 1;
    return IntStream.rangeClosed(0, last)
        .mapToObj(i -> i < last ? parts.get(i) + BETWEEN.stripTrailing() : parts.get(i))
        .toList();
  }

  /** All of them in one line; empty when there are none. */
  public static String join(Collection<String> parts) {
    return String.join(BETWEEN, parts);
  }
}
