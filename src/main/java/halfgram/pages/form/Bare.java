package halfgram.pages.form;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;

/**
 * Lists of the book in which something may stand without a key, and the rows a form has of them.
 */
final class Bare {
  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

  private Bare() {}

  /** The rows that it stands for. */
  static JsonNode opened(Part part, JsonNode value) {
    String key = part.parts().get(0).key();
    ArrayNode rows = NODES.arrayNode();
    return switch (part.kind()) {
      case SENTENCES ->
          value.isTextual() || value.isObject()
              ? rows.add(NODES.objectNode().set(key, value))
              : value;
      case ITEMS -> {
        value.forEach(one -> rows.add(NODES.objectNode().set(key, one)));
        yield rows;
      }
      case TEXT, NUMBER, TIME, FLAG, CHOICE, DECIDES -> value;
      case TEXTS, TICKS, CHOSEN, GROUP, ROWS, CODES -> value;
    };
  }

  /** The rows as the book writes them. */
  static JsonNode closed(Part part, JsonNode before, ArrayNode rows) {
    String key = part.parts().get(0).key();
    return switch (part.kind()) {
      case SENTENCES -> {
        boolean alone = rows.size() == 1 && !before.isArray() && rows.get(0).size() == 1;
        yield alone && rows.get(0).has(key) ? rows.get(0).get(key) : rows;
      }
      case ITEMS -> {
        ArrayNode bare = NODES.arrayNode();
        rows.forEach(row -> bare.add(row.path(key)));
        yield bare;
      }
      case TEXT, NUMBER, TIME, FLAG, CHOICE, DECIDES -> rows;
      case TEXTS, TICKS, CHOSEN, GROUP, ROWS, CODES -> rows;
    };
  }
}
