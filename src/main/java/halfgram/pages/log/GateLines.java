package halfgram.pages.log;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.desk.House;
import halfgram.measure.Amount;
import halfgram.words.GateWords;
import halfgram.words.Messages;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** What was said at a gate, as a line of the log. */
final class GateLines {
  private final House house;
  private final Messages words;

  GateLines(House house, Messages words) {
    this.house = house;
    this.words = words;
  }

  String more(JsonNode detail) {
    GateWords named = new GateWords(house.book(), words);
    List<String> parts = new ArrayList<>();
    for (JsonNode one : detail.path("added")) {
      Amount amount = Amount.grams(new BigDecimal(one.path("grams").asText("0")));
      String item = named.item(one.path("item").asText());
      parts.add(words.say("gate.added", words.amount(amount), item));
    }
    detail
        .path("said")
        .properties()
        .forEach(
            one ->
                parts.add(
                    words.say(
                        "gate.said",
                        words.say("gate.check." + one.getKey()),
                        words.say("gate.word." + one.getValue().asText()))));
    if (detail.has("note")) {
      parts.add(detail.path("note").asText());
    }
    if (detail.has("doneAt")) {
      Instant at = Instant.parse(detail.path("doneAt").asText());
      String by = detail.path("enteredBy").asText();
      parts.add(words.say("log.gate-said", words.time(at), person(by)));
    }
    return String.join(", ", parts);
  }

  private String person(String code) {
    return house.book().personName(code);
  }
}
