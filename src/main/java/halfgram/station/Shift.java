package halfgram.station;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalTime;
import java.util.Set;

/** The weekly hours of one person; an end at or before the start lies past midnight. */
public record Shift(Set<DayOfWeek> days, LocalTime start, LocalTime end) {
  public Shift {
    days = Set.copyOf(days);
  }

  /** By the clock on the wall; a night with a clock change is an hour longer or shorter. */
  public Duration length() {
    Duration span = Duration.between(start, end);
    return span.isNegative() || span.isZero() ? span.plusDays(1) : span;
  }
}
