package halfgram.measure;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;

/**
 * A moment on a date that may be far from the one it is read on: then its year is said with it.
 *
 * <p>Example: read in December 2026, Sunday 6 December 23:59 needs no year, 31 August 2029 does.
 */
public record Dated(LocalDateTime moment, LocalDate today) {
  private static final long HALF_YEAR_DAYS = 183;

  public static Dated of(Instant moment, Instant now, ZoneId zone) {
    return new Dated(moment.atZone(zone).toLocalDateTime(), now.atZone(zone).toLocalDate());
  }

  public boolean isFar() {
    return Math.abs(ChronoUnit.DAYS.between(today, moment.toLocalDate())) > HALF_YEAR_DAYS;
  }
}
