package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
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

  private static final int DAY = 24 * 60;

  /** A time of a service as the book writes it. */
  private record Spot(ObjectNode node, String key, LocalTime time) {}

  /**
   * Moves the times of a service as the book writes it; what is no time stays.
   *
   * @param dayStart times before it belong to the night after
   * @return whether it has moved: nothing does when a time would leave its business day
   */
  public boolean move(ObjectNode service, LocalTime dayStart) {
    List<Spot> spots = new ArrayList<>();
    moving(spots, service, "start", dayStart);
    service.path("curve").forEach(pickUp -> moving(spots, pickUp, "at", dayStart));
    service.path("courses").forEach(course -> moving(spots, course, "at", dayStart));
    time(service.path("end")).ifPresent(end -> spots.add(new Spot(service, "end", end)));
    for (Spot spot : spots) {
      int minute = minute(spot.time(), dayStart) + minutes;
      if (minute < 0 || minute >= DAY) {
        return false;
      }
    }
    spots.forEach(spot -> spot.node().put(spot.key(), spot.time().plusMinutes(minutes).toString()));
    return true;
  }

  private void moving(List<Spot> spots, JsonNode node, String key, LocalTime dayStart) {
    if (node instanceof ObjectNode object) {
      time(object.path(key))
          .filter(time -> from.isEmpty() || minute(time, dayStart) >= minute(from.get(), dayStart))
          .ifPresent(time -> spots.add(new Spot(object, key, time)));
    }
  }

  /** Minutes since the business day began. */
  static int minute(LocalTime time, LocalTime dayStart) {
    return Math.floorMod(time.toSecondOfDay() - dayStart.toSecondOfDay(), DAY * 60) / 60;
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
