package halfgram.web;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** An error as the JSON API says it. */
public final class Problems {
  private Problems() {}

  /**
   * One error.
   *
   * @param kind bad-input, refused, not-found, stale or bug
   */
  public static String json(String kind, String said) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("kind", kind);
    node.put("said", said);
    return node.toString();
  }
}
