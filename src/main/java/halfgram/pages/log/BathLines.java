package halfgram.pages.log;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.desk.BathBoard;
import halfgram.kitchen.KitchenStore.Change;
import halfgram.technique.bath.Renewal;
import halfgram.words.Messages;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** What was entered at a bath, as a line of the log. */
final class BathLines {
  private BathLines() {}

  /** The key of what was done. */
  static String key(JsonNode detail) {
    return "bath.kind." + detail.path("kind").asText();
  }

  /** Where the bath's life is told. */
  static String href(Change change, JsonNode detail) {
    LocalDate day = LocalDate.parse(detail.path("day").asText());
    return BathBoard.href(day, detail.path("formula").asText(), change.subject());
  }

  static String more(Messages words, JsonNode detail) {
    List<String> parts = new ArrayList<>();
    if (detail.has("pieces")) {
      parts.add(words.say("sheet.pieces", detail.path("pieces").asText()));
    }
    if (detail.has("millimetres")) {
      parts.add(words.say("bathday.measured", detail.path("millimetres").asText()));
    }
    if (detail.has("fresh")) {
      parts.add(words.say("bathday.one", detail.path("fresh").asText()));
    }
    for (Renewal rule : Renewal.values()) {
      if (detail.path("rule").asText().equalsIgnoreCase(rule.name())) {
        parts.add(words.say(rule.key()));
      }
    }
    if (detail.has("note")) {
      parts.add(detail.path("note").asText());
    }
    return String.join(", ", parts);
  }
}
