package halfgram.pages;

import halfgram.book.Moments;
import halfgram.measure.BusinessDay;
import java.time.Instant;
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
}
