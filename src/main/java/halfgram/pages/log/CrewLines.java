package halfgram.pages.log;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.desk.House;
import halfgram.pages.CrewSaid;
import halfgram.station.CrewEntry;
import halfgram.words.Messages;
import java.time.Instant;
import java.util.Optional;

/** What was said of the crew and the machines, as a line of the log. */
final class CrewLines {
  private final CrewSaid said;

  CrewLines(House house, Messages words) {
    this.said = new CrewSaid(house.book(), words);
  }

  String name(String subject) {
    return said.name(subject);
  }

  String more(JsonNode detail) {
    String kind = detail.path("kind").asText();
    String what =
        CrewEntry.Kind.find(kind)
            .map(
                one ->
                    said.what(
                        one,
                        detail.path("units").asInt(),
                        moment(detail, "from"),
                        moment(detail, "until")))
            .orElse(kind);
    String note = detail.path("note").asText();
    return note.isEmpty() ? what : what + ": " + note;
  }

  private static Optional<Instant> moment(JsonNode detail, String key) {
    return detail.path(key).isTextual()
        ? Optional.of(Instant.parse(detail.path(key).asText()))
        : Optional.empty();
  }
}
