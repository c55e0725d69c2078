package halfgram.pages.today;

import halfgram.words.Messages;
import java.time.LocalDate;
import java.util.List;

/** A day that is over and had no plan. */
record NoPlan(String date, List<DayView.Link> days) {
  static NoPlan of(Messages words, LocalDate day, String root) {
    return new NoPlan(
        words.date(day),
        List.of(
            link(words, root, day.minusDays(1)),
            new DayView.Link(words.say("today.today"), root),
            link(words, root, day.plusDays(1))));
  }

  private static DayView.Link link(Messages words, String root, LocalDate day) {
    return new DayView.Link(words.shortDate(day), root + "?date=" + day);
  }
}
