package halfgram.book;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.input.Problem;
import halfgram.measure.Message;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * How many things of a kind a book may have: more than any kitchen tells apart, and few enough that
 * every page of it is there at once. What is there already stays; it may not become more.
 */
public final class Sizes {
  /** So many of a kind. */
  static final int MOST = 10_000;

  private Sizes() {}

  /** The lists that would be too long; {@code before} is empty where there is no book yet. */
  public static List<Problem> list(JsonNode before, JsonNode brought) {
    List<Problem> problems = new ArrayList<>();
    Stream.concat(BookStore.PARTS.stream(), Stream.of("formulas"))
        .forEach(
            kind -> {
              int size = brought.path(kind).size();
              if (size > MOST && size > before.path(kind).size()) {
                Message message = Message.of("problem.too-many", MOST);
                problems.add(new Problem("$." + kind, String.valueOf(size), message));
              }
            });
    return problems;
  }
}
