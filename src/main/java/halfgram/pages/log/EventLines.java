package halfgram.pages.log;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.desk.House;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.List;

/** What the log says of an event: its covers, and whether it is only a draft. */
final class EventLines {
  private final House house;
  private final Messages words;

  EventLines(House house, Messages words) {
    this.house = house;
    this.words = words;
  }

  /** What it is called; as it was called when it is there no longer. */
  String name(String code, JsonNode detail) {
    String typed = detail.at("/covers/name/en").asText();
    return house
        .book()
        .findEvent(code)
        .map(event -> words.text(event.name()))
        .orElse(typed.isEmpty() ? code : typed);
  }

  /** Address of its page within the kitchen; empty when it is there no longer. */
  String href(String code) {
    return house.book().findEvent(code).isPresent() ? "events/" + code : "";
  }

  /** "confirmed, 16 → 20 covers". */
  String more(JsonNode detail) {
    if (detail.has("removed")) {
      return words.say("log.removed");
    }
    List<String> more = new ArrayList<>();
    if (detail.has("draft")) {
      more.add(words.say(detail.path("draft").asBoolean(false) ? "log.draft" : "log.agreed"));
    }
    JsonNode covers = detail.path("covers");
    if (covers.has("from")) {
      more.add(words.say("log.covers", covers.path("from").asInt(), covers.path("to").asInt()));
    }
    return String.join(", ", more);
  }
}
