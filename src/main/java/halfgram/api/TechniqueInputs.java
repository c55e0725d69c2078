package halfgram.api;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.book.BookStore;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Inputs of a technique as a script sends them. */
public final class TechniqueInputs {
  private TechniqueInputs() {}

  /** An object of texts with their units; nothing at all is an empty one. */
  public static Optional<Map<String, String>> read(String body) {
    try {
      return of(BookStore.parse(body.isBlank() ? "{}" : body));
    } catch (UncheckedIOException e) {
      return Optional.empty();
    }
  }

  /** Of a tree; a bare number keeps having no unit, which is refused where one is due. */
  static Optional<Map<String, String>> of(JsonNode json) {
    if (!json.isObject()) {
      return Optional.empty();
    }
    Map<String, String> typed = new TreeMap<>();
    for (Map.Entry<String, JsonNode> one : json.properties()) {
      JsonNode value = one.getValue();
      typed.put(
          one.getKey(), value.isNumber() ? value.decimalValue().toPlainString() : value.asText(""));
    }
    return Optional.of(typed);
  }
}
