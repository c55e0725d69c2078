package halfgram.pages.events;

import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.Push;
import java.time.LocalTime;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A push as pressed on the form of an event.
 *
 * @param service position of the service in the event
 * @param course position of the first course that moves; empty for the whole service
 */
record Pressed(int service, Optional<Integer> course, int minutes) {
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
  static Optional<Pressed> of(String pressed, String typed) {
    Matcher where = WHERE.matcher(pressed);
    String minutes = typed.strip();
    if (!where.matches() || !MINUTES.matcher(minutes).matches()) {
      return Optional.empty();
    }
    return Optional.of(
        new Pressed(
            Integer.parseInt(where.group(1)),
            Optional.ofNullable(where.group(2)).map(Integer::valueOf),
            Integer.parseInt(minutes.replace('−', '-').replace("+", ""))));
  }

  /** Moves the times of an event as the book writes it; not past the business day. */
  boolean move(ObjectNode event, LocalTime dayStart) {
    if (!(event.at("/services/" + service) instanceof ObjectNode of)) {
      return true;
    }
    Optional<String> from = course.map(index -> of.path("courses").path(index).path("at").asText());
    try {
      return new Push(from.map(LocalTime::parse), minutes).move(of, dayStart);
    } catch (DateTimeParseException e) {
      // Not a time yet: it is told when the event is looked at.
      return true;
    }
  }
}
