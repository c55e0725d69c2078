package halfgram.testkit;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The named cast: The Heron, a kitchen small enough to know by heart. */
public final class Cast {
  private Cast() {}

  public static ObjectNode theHeron() {
    try (InputStream stream = Cast.class.getResourceAsStream("/halfgram/testkit/cast.json")) {
      return BookText.parse(
          new String(
              java.util.Objects.requireNonNull(stream).readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The Heron with a fragment laid over it. */
  public static ObjectNode theHeronWith(String fragment) {
    ObjectNode book = theHeron();
    BookText.merge(book, BookText.parse(fragment));
    return book;
  }
}
