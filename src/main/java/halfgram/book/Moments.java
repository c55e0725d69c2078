package halfgram.book;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.Optional;

/** Times "18:30", dates "2026-12-05" and moments "2026-12-05T15:20" of the years 2000 to 2199. */
public final class Moments {
  private Moments() {}

  static Optional<LocalTime> time(String text) {
    try {
      return text.matches("\\d\\d:\\d\\d") ? Optional.of(LocalTime.parse(text)) : Optional.empty();
    } catch (DateTimeException notATime) {
      return Optional.empty();
    }
  }

  public static Optional<LocalDate> date(String text) {
    try {
      LocalDate date = LocalDate.parse(text);
      boolean sensible = date.getYear() >= 2000 && date.getYear() < 2200;
      return sensible ? Optional.of(date) : Optional.empty();
    } catch (DateTimeException notADate) {
      return Optional.empty();
    }
  }

  public static Optional<LocalDateTime> moment(String text) {
    try {
      LocalDateTime moment = LocalDateTime.parse(text);
      boolean sensible = moment.getYear() >= 2000 && moment.getYear() < 2200;
      return sensible ? Optional.of(moment) : Optional.empty();
    } catch (DateTimeException notAMoment) {
      return Optional.empty();
    }
  }
}
