package halfgram.web;

import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;

/** An address of a kitchen that is answered without being asked for. */
record Turned(String rest, Map<String, String> query) {
  /** An address within the kitchen, with what it asks. */
  static Turned of(String rest) {
    Map<String, String> query = new HashMap<>();
    int question = rest.indexOf('?');
    for (String part : question < 0 ? new String[0] : rest.substring(question + 1).split("&", -1)) {
      int equals = part.indexOf('=');
      query.put(
          part.substring(0, equals),
          URLDecoder.decode(part.substring(equals + 1), StandardCharsets.UTF_8));
    }
    return new Turned(rest, query);
  }
}
