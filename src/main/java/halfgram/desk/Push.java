package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalTime;
import java.time.format.DateTimeParseException;
import java.util.Optional;

/**
 * A service that slips: it, or what is left of it from a time on, later or earlier by minutes. What
 * goes out before that time stays where it is; the end goes along.
 *
 * @param from first time that moves; empty for the whole service
 * @param minutes negative for earlier
 */
public record Push(Optional<LocalTime> from, int minutes) {

  /** As far as a service can be pushed at once, minutes. */
  public static final int MOST = 600;

  /**
   * Moves the times of a service as the book writes it; what is no time stays.
   *
   * @param dayStart times before it belong to the night after
   */
  public void move(ObjectNode service, LocalTime dayStart) {
    shift(service, "start", dayStart);
    service.path("curve").forEach(pickUp -> shift(pickUp, "at", dayStart));
    service.path("courses").forEach(course -> shift(course, "at", dayStart));
    time(service.path("end"))
        .ifPresent(end -> service.put("end", end.plusMinutes(minutes).toString()));
  }

  private void shift(JsonNode node, String key, LocalTime dayStart) {
    if (node instanceof ObjectNode object) {
      time(object.path(key))
          .filter(time -> from.isEmpty() || minute(time, dayStart) >= minute(from.get(), dayStart))
          .ifPresent(time -> object.put(key, time.plusMinutes(minutes).toString()));
    }
  }

  /** Minutes since the business day began. */
  private static int minute(LocalTime time, LocalTime dayStart) {
    return Math.floorMod(time.toSecondOfDay() - dayStart.toSecondOfDay(), 24 * 60 * 60) / 60;
  }

  private static Optional<LocalTime> time(JsonNode node) {
    try {
      return node.isTextual() ? Optional.of(LocalTime.parse(node.asText())) : Optional.empty();
    } catch (DateTimeParseException e) {
      // Not a time yet: it is told when the service is looked at.
      return Optional.empty();
    }
  }
}
