package halfgram.api;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.book.BookStore;
import halfgram.web.Halt;
import java.io.UncheckedIOException;

/** Bodies in and out. */
final class Json {
  private Json() {}

  /** A body as a tree; anything that is no JSON ends the call. */
  static JsonNode body(String text) {
    try {
      return BookStore.parse(text);
    } catch (UncheckedIOException e) {
      throw Halt.unreadable("JSON");
    }
  }
}
