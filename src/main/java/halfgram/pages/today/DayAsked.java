package halfgram.pages.today;

import halfgram.book.Moments;
import halfgram.web.Visit;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Optional;

/**
 * Which day somebody wants to see, and how.
 *
 * @param day the day asked for; today when nobody asked, or asked for what is no day
 * @param wrong what was asked for and is no day to show
 * @param again whether a plan from now on is to be proposed
 */
record DayAsked(
    LocalDate day, LocalDate today, Group.By by, boolean again, Optional<String> wrong) {
  /** Further than this nothing is planned or kept. */
  private static final long MOST_DAYS = 1000;

  static DayAsked of(Visit visit, LocalDate today) {
    String typed = visit.query("date");
    Optional<LocalDate> date =
        Moments.date(typed)
            .filter(day -> Math.abs(ChronoUnit.DAYS.between(today, day)) <= MOST_DAYS);
    boolean wrong = !typed.isEmpty() && date.isEmpty();
    return new DayAsked(
        date.orElse(today),
        today,
        Group.By.find(visit.query("by")).orElse(Group.By.STATION),
        visit.query("again").equals("yes"),
        wrong ? Optional.of(typed) : Optional.empty());
  }

  static DayAsked on(LocalDate day, LocalDate today) {
    return new DayAsked(day, today, Group.By.STATION, false, Optional.empty());
  }

  boolean isToday() {
    return day.equals(today);
  }

  boolean isOver() {
    return day.isBefore(today);
  }
}
