package halfgram.api;

import halfgram.book.Moments;
import halfgram.web.Halt;
import halfgram.web.Visit;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalLong;

/** Parameters of an address. A wrong one ends the call and says what would be accepted. */
final class Query {
  private static final int MOST = 500;
  private static final int USUAL = 100;

  private Query() {}

  static OptionalLong findNumber(Visit visit, String name) {
    String typed = visit.query(name);
    if (!typed.isEmpty() && !typed.matches("\\d{1,18}")) {
      throw Halt.unreadable(name + "=NUMBER");
    }
    return typed.isEmpty() ? OptionalLong.empty() : OptionalLong.of(Long.parseLong(typed));
  }

  /** How many of a list are wanted at most. */
  static int limit(Visit visit) {
    long limit = findNumber(visit, "limit").orElse(USUAL);
    if (limit < 1 || limit > MOST) {
      throw Halt.unreadable("limit=1..." + MOST);
    }
    return (int) limit;
  }

  static Optional<LocalDate> findDate(Visit visit, String name) {
    String typed = visit.query(name);
    return typed.isEmpty() ? Optional.empty() : Optional.of(date(name, typed));
  }

  static LocalDate date(String name, String typed) {
    return Moments.date(typed).orElseThrow(() -> Halt.unreadable(name + "=YYYY-MM-DD"));
  }

  /** Whether something is asked for with "yes". */
  static boolean isAsked(Visit visit, String name) {
    return visit.query(name).equals("yes");
  }
}
