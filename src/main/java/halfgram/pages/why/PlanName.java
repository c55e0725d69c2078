package halfgram.pages.why;

import halfgram.book.Moments;
import halfgram.pages.WhyLink;
import halfgram.web.Visit;
import java.time.LocalDate;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A plan as an address names it: "2026-12-05/1".
 *
 * @param number {@link WhyLink#PREVIEW} for one that nobody has put in force
 * @param proposed whether what it would become is meant: "2026-12-05/1+"
 */
record PlanName(LocalDate day, int number, boolean proposed) {
  /** Further ahead nothing is previewed. */
  static final long MOST_DAYS = 1000;

  private static final Pattern NAME = Pattern.compile("(\\d{4}-\\d\\d-\\d\\d)/(\\d{1,6})(\\+?)");

  static Optional<PlanName> find(String typed) {
    Matcher parts = NAME.matcher(typed);
    return parts.matches()
        ? Moments.date(parts.group(1))
            .map(
                day ->
                    new PlanName(day, Integer.parseInt(parts.group(2)), !parts.group(3).isEmpty()))
        : Optional.empty();
  }

  /** What was proposed, once it was accepted. */
  PlanName accepted() {
    return new PlanName(day, number + 1, false);
  }

  /** As addresses name it. */
  String text() {
    return day + "/" + number + (proposed ? Visit.encoded(WhyLink.PROPOSED) : "");
  }
}
