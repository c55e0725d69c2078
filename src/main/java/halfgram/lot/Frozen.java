package halfgram.lot;

import halfgram.measure.BusinessDay;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.OptionalInt;

/**
 * A clock that stands while a tub is frozen.
 *
 * <p>Rules. What was left to live when it went into the freezer is left when it comes out: freezing
 * adds nothing. A date that is the end of a day counts days: the day of freezing is used up, the
 * day of thawing is the first of those that are left, so that cold days before and after together
 * are never more than its hold had.
 *
 * <p>Example: made on Monday with seven days (till Sunday 23:59), frozen on Wednesday at 10:00,
 * thawed a week later on Thursday at 20:00. Four days and 14 hours are left by the clock (Tuesday,
 * 10:00), four days by the calendar (Sunday, 23:59): Sunday it is.
 *
 * @param life what was left until its use-by, in whole minutes
 * @param days that may still be used, the day of thawing counted; empty where days do not count
 */
public record Frozen(Instant since, Duration life, OptionalInt days) {
  private static final LocalTime LAST_MINUTE = LocalTime.of(23, 59);

  /**
   * The clock of a tub that goes into the freezer.
   *
   * @param useBy what its date was
   * @param days whether its hold counts days
   */
  public static Frozen of(Instant now, Instant useBy, boolean days, BusinessDay clock) {
    LocalDate last = clock.of(useBy);
    boolean counts = days || clock.at(last, LAST_MINUTE).equals(useBy);
    long left = ChronoUnit.DAYS.between(clock.of(now), last);
    return new Frozen(
        now,
        Duration.between(now, useBy).truncatedTo(ChronoUnit.MINUTES),
        counts ? OptionalInt.of(Math.toIntExact(left)) : OptionalInt.empty());
  }

  Frozen toTheMinute() {
    return new Frozen(since.truncatedTo(ChronoUnit.MINUTES), life, days);
  }

  /** Whether nothing would be left of it: its last day is today, or its last minute now. */
  public boolean isSpent() {
    return life.isZero() || life.isNegative() || days.orElse(1) < 1;
  }

  /** Its use-by when it is thawed at a moment. */
  public Instant useBy(Instant thawed, BusinessDay clock) {
    Instant own = thawed.plus(life);
    if (days.isEmpty()) {
      return own;
    }
    Instant end = clock.at(clock.of(thawed).plusDays(days.getAsInt() - 1L), LAST_MINUTE);
    return end.isBefore(own) ? end : own;
  }

  /** The shorter of both, counted on from a moment. */
  public Frozen shorter(Frozen other, Instant from) {
    OptionalInt fewer =
        days.isPresent() && other.days.isPresent()
            ? OptionalInt.of(Math.min(days.getAsInt(), other.days.getAsInt()))
            : days.isPresent() ? days : other.days;
    Duration least = life.compareTo(other.life) < 0 ? life : other.life;
    return new Frozen(from, least, fewer);
  }
}
