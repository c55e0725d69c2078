package halfgram.measure;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;

/**
 * How a kitchen cuts time into days: each begins at the day start (04:00 by default) of its zone,
 * so half past midnight belongs to the day before.
 *
 * <p>Example: with a day start of 04:00, {@code at(5 December, 00:30)} is 00:30 on the 6th.
 */
public record BusinessDay(ZoneId zone, LocalTime dayStart) {

  /** The business day an instant belongs to. */
  public LocalDate of(Instant instant) {
    var local = instant.atZone(zone);
    return local.toLocalTime().isBefore(dayStart)
        ? local.toLocalDate().minusDays(1)
        : local.toLocalDate();
  }

  /**
   * The instant of a wall-clock time on a business day. A time that a clock change skips moves on
   * by the length of the gap; one that occurs twice is the earlier.
   */
  public Instant at(LocalDate day, LocalTime time) {
    LocalDate date = time.isBefore(dayStart) ? day.plusDays(1) : day;
    return date.atTime(time).atZone(zone).toInstant();
  }

  public Instant start(LocalDate day) {
    return at(day, dayStart);
  }
}
