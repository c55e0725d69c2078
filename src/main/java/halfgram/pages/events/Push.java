package halfgram.pages.events;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalTime;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A service that slips: it, or what is left of it from one course on, later or earlier by minutes.
 * A course takes those behind it and the end along; what went out before stays where it was.
 *
 * @param service position of the service in the event
 * @param course position of the first course that moves; empty for the whole service
 */
record Push(int service, Optional<Integer> course, int minutes) {
  /** Minutes that stand in the field first. */
  static final String USUAL = "15";

  /** The field of a service's minutes: what stands in it, and what is wrong with that. */
  record Typed(int service, String minutes, String fault) {}

  private static final Pattern WHERE =
      Pattern.compile("/services/(\\d{1,3})(?:/courses/(\\d{1,3}))?");
  private static final Pattern MINUTES = Pattern.compile("[-−+]?\\d{1,3}");

  /** Where it was pressed, without the minutes. */
  static Optional<Integer> service(String pressed) {
    Matcher where = WHERE.matcher(pressed);
    return where.matches() ? Optional.of(Integer.valueOf(where.group(1))) : Optional.empty();
  }

  /** A push as pressed and typed; empty when the minutes are none. */
  static Optional<Push> of(String pressed, String typed) {
    Matcher where = WHERE.matcher(pressed);
    String minutes = typed.strip();
    if (!where.matches() || !MINUTES.matcher(minutes).matches()) {
      return Optional.empty();
    }
    return Optional.of(
        new Push(
            Integer.parseInt(where.group(1)),
            Optional.ofNullable(where.group(2)).map(Integer::valueOf),
            Integer.parseInt(minutes.replace('−', '-').replace("+", ""))));
  }

  /** Moves the times of an event as the book writes it; what is no time stays. */
  void move(ObjectNode event) {
    if (!(event.at("/services/" + service) instanceof ObjectNode of)) {
      return;
    }
    if (course.isEmpty()) {
      shift(of, "start");
      of.path("curve").forEach(pickUp -> shift(pickUp, "at"));
    }
    shift(of, "end");
    JsonNode courses = of.path("courses");
    for (int i = course.orElse(0); i < courses.size(); i++) {
      shift(courses.get(i), "at");
    }
  }

  private void shift(JsonNode node, String key) {
    if (node instanceof ObjectNode object && object.path(key).isTextual()) {
      try {
        LocalTime time = LocalTime.parse(object.path(key).asText());
        object.put(key, time.plusMinutes(minutes).toString());
      } catch (DateTimeParseException e) {
        // Not a time yet: it is told when the event is looked at.
        return;
      }
    }
  }
}
