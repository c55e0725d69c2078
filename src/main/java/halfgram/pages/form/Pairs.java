package halfgram.pages.form;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.StringJoiner;

/** Names with a word each, a line for a pair: "herb: dill". */
final class Pairs {
  private Pairs() {}

  /** As the field shows them. */
  static String shown(JsonNode pairs) {
    StringJoiner lines = new StringJoiner("\n");
    pairs
        .properties()
        .forEach(one -> lines.add(one.getKey() + ": " + TypedForm.shown(one.getValue())));
    return lines.toString();
  }

  /** Puts them into an object; as they were when nothing of them was changed. */
  static void write(ObjectNode node, String key, String typed) {
    String text = typed.replace("\r", "").strip();
    if (text.equals(shown(node.path(key)))) {
      return;
    }
    ObjectNode pairs = JsonNodeFactory.instance.objectNode();
    for (String line : text.lines().toList()) {
      int colon = line.indexOf(':');
      if (!line.isBlank()) {
        // A line without a colon is a name nobody knows: the reader says so.
        pairs.put(
            (colon < 0 ? line : line.substring(0, colon)).strip(),
            colon < 0 ? "" : line.substring(colon + 1).strip());
      }
    }
    if (pairs.isEmpty()) {
      node.remove(key);
    } else {
      node.set(key, pairs);
    }
  }
}
