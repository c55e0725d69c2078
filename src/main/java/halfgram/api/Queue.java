package halfgram.api;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.desk.Belated;
import halfgram.pages.KeptReader.Post;
import halfgram.pages.KeptReader.Work;
import halfgram.web.Problems;
import halfgram.web.Visit;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;

/** A body that is one entry, or a list of those a device has kept while it was offline. */
final class Queue {
  /** What one entry is answered. */
  record Answer(int status, String body) {}

  private Queue() {}

  /** To a tablet of other stations. */
  static Answer elsewhere(Visit visit) {
    String said = visit.words().say("web.other-station", visit.caller().name());
    return new Answer(403, Problems.json("forbidden", said));
  }

  /**
   * What a revoked tablet sent as a call, to be entered by the office.
   *
   * @param said one entry in words
   * @param enter takes one as if it had come when it was sent
   */
  static Work kept(Post post, Function<JsonNode, String> said, Entering enter) {
    JsonNode body = Json.body(post.kept().body());
    List<JsonNode> all = new ArrayList<>();
    (body.isArray() ? body : List.of(body)).forEach(all::add);
    return new Work(
        all.stream().map(said).collect(Collectors.joining("; ")),
        false,
        then ->
            all.stream()
                .map(one -> enter.answer(then, one))
                .filter(answer -> answer.status() >= 300)
                .map(Queue::why)
                .reduce((one, other) -> one + " " + other));
  }

  /** Takes an entry with the verbs of another moment. */
  interface Entering {
    Answer answer(Belated then, JsonNode entry);
  }

  private static String why(Answer answer) {
    JsonNode body = BookStore.parse(answer.body());
    List<String> said = new ArrayList<>(List.of(body.path("said").asText()));
    body.path("problems")
        .forEach(one -> said.add(one.path("path").asText() + ": " + one.path("said").asText()));
    return String.join(" ", said);
  }

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
