package halfgram.station;

import halfgram.measure.Window;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * Somebody of the book on one business day.
 *
 * @param hours when they are in; none when they are not
 * @param breaks inside the hours
 * @param said what was said last of this day and counts; empty when the shifts say it
 */
public record Cook(
    Person person, List<Window> hours, List<Window> breaks, Optional<CrewEntry> said) {
  public Cook {
    hours = List.copyOf(hours);
    breaks = List.copyOf(breaks);
  }

  public boolean isIn() {
    return !hours.isEmpty();
  }

  /** Whether they are in at a moment, at work or on a break. */
  public boolean isIn(Instant moment) {
    return hours.stream().anyMatch(window -> holds(window, moment));
  }

  /** Whether they have been in and are not any more. */
  public boolean isGone(Instant moment) {
    return isIn() && hours.stream().noneMatch(window -> moment.isBefore(window.end()));
  }

  public boolean isOnBreak(Instant moment) {
    return breaks.stream().anyMatch(window -> holds(window, moment));
  }

  private static boolean holds(Window window, Instant moment) {
    return !moment.isBefore(window.start()) && moment.isBefore(window.end());
  }
}
