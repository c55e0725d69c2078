package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.kitchen.KitchenStore.Change;
import halfgram.kitchen.Text;
import java.time.Instant;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What happened to an event, as the log keeps it: covers before and after, and the event as it was.
 *
 * @param from covers counted before; 0 when it was not there
 * @param to covers counted after; 0 when it is gone
 * @param before the event as the book had it; empty when it was not there
 */
public record Happening(
    long number,
    String event,
    Act act,
    Text name,
    int from,
    int to,
    Optional<ObjectNode> before,
    String who,
    Instant at) {

  /** What was done. */
  public enum Act {
    ADDED,
    CHANGED,
    CANCELLED,
    PUT_BACK
  }

  /** The detail of a change in the log. */
  static String detail(Act act, Optional<ObjectNode> before, Optional<ObjectNode> after) {
    ObjectNode detail = JsonNodeFactory.instance.objectNode();
    detail.put("act", act.name().toLowerCase(Locale.ROOT).replace('_', '-'));
    ObjectNode covers = detail.putObject("covers");
    after.or(() -> before).ifPresent(body -> covers.set("name", name(body.path("name"))));
    covers.put("from", before.map(Happening::covers).orElse(0));
    covers.put("to", after.map(Happening::covers).orElse(0));
    after.or(() -> before).ifPresent(body -> detail.set("date", body.path("date")));
    before.ifPresent(body -> detail.set("before", body));
    return detail.toString();
  }

  /** The number that is planned for: final, else expected. */
  static int covers(ObjectNode body) {
    JsonNode last = body.path("covers").path("final");
    return last.isNumber() ? last.asInt() : body.path("covers").path("expected").asInt();
  }

  private static ObjectNode name(JsonNode name) {
    ObjectNode byLanguage = JsonNodeFactory.instance.objectNode();
    if (name.isTextual()) {
      byLanguage.set("en", name);
    }
    name.properties().forEach(entry -> byLanguage.set(entry.getKey(), entry.getValue()));
    return byLanguage;
  }

  static Happening of(Change change) {
    JsonNode detail = BookStore.parse(change.detail());
    JsonNode covers = detail.path("covers");
    TreeMap<String, String> name = new TreeMap<>();
    for (Map.Entry<String, JsonNode> entry : covers.path("name").properties()) {
      name.put(entry.getKey(), entry.getValue().asText());
    }
    String act = detail.path("act").asText("changed").toUpperCase(Locale.ROOT).replace('-', '_');
    return new Happening(
        change.number(),
        change.subject(),
        Act.valueOf(act),
        name.isEmpty() ? Text.of(change.subject()) : new Text(name),
        covers.path("from").asInt(),
        covers.path("to").asInt(),
        detail.path("before") instanceof ObjectNode body ? Optional.of(body) : Optional.empty(),
        change.who(),
        change.at());
  }
}
