package halfgram.pages;

import halfgram.book.Moments;
import halfgram.measure.BusinessDay;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Optional;

/** A moment the way one types it: "2026-12-05T15:20", or a date for the end of that day. */
public final class TypedMoment {
  private static final LocalTime LAST_MINUTE = LocalTime.of(23, 59);

  private TypedMoment() {}

  /** Empty when it is neither. */
  public static Optional<Instant> read(String text, BusinessDay clock) {
    String typed = text.strip();
    return Moments.moment(typed)
        .or(() -> Moments.date(typed).map(day -> day.atTime(LAST_MINUTE)))
        .map(moment -> moment.atZone(clock.zone()).toInstant());
  }

  /** A time of a business day, "15:30", or a moment; empty when it is neither. */
  public static Optional<Instant> on(LocalDate day, String text, BusinessDay clock) {
    String typed = TypedTime.of(text);
    return typed.matches("([01]\\d|2[0-3]):[0-5]\\d")
        ? Optional.of(clock.at(day, LocalTime.parse(typed)))
        : Moments.moment(typed).map(moment -> moment.atZone(clock.zone()).toInstant());
  }
}
