package halfgram.pages.why;

import halfgram.book.Moments;
import halfgram.pages.WhyLink;
import java.time.LocalDate;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A plan as an address names it: "2026-12-05/1".
 *
 * @param number {@link WhyLink#PREVIEW} for one that nobody has put in force
 */
record PlanName(LocalDate day, int number) {
  /** Further ahead nothing is previewed. */
  static final long MOST_DAYS = 1000;

  private static final Pattern NAME = Pattern.compile("(\\d{4}-\\d\\d-\\d\\d)/(\\d{1,6})");

  static Optional<PlanName> find(String typed) {
    Matcher parts = NAME.matcher(typed);
    return parts.matches()
        ? Moments.date(parts.group(1))
            .map(day -> new PlanName(day, Integer.parseInt(parts.group(2))))
        : Optional.empty();
  }

  /** As the addresses name it. */
  String text() {
    return day + "/" + number;
  }
}
