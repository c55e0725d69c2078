package halfgram.api;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.web.Visit;
import java.util.function.Function;

/** A body that is one entry, or a list of those a device has kept while it was offline. */
final class Queue {
  /** What one entry is answered. */
  record Answer(int status, String body) {}

  private Queue() {}

  /** Takes one after the other; of a list each has its own status, and one refused stops none. */
  static void answer(Visit visit, String text, Function<JsonNode, Answer> entry) {
    JsonNode body = Json.body(text);
    if (!body.isArray()) {
      Answer answer = entry.apply(body);
      visit.json(answer.status(), answer.body());
      return;
    }
    ArrayNode answers = JsonNodeFactory.instance.arrayNode();
    for (JsonNode one : body) {
      Answer answer = entry.apply(one);
      ObjectNode item = answers.addObject();
      item.put("status", answer.status());
      item.set("answer", BookStore.parse(answer.body()));
    }
    visit.json(200, answers.toString());
  }
}
