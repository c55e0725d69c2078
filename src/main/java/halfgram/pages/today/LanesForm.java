package halfgram.pages.today;

import halfgram.book.Moments;
import halfgram.desk.CrewPlans;
import halfgram.web.Visit;
import java.time.LocalDate;
import java.util.Optional;

/**
 * The crew plan that somebody accepts, as its page wrote it down.
 *
 * @param lanes whether it was the page of the lanes
 */
record LanesForm(LocalDate day, CrewPlans.Seen seen, boolean lanes) {

  /** Empty for what no page of ours has sent. */
  static Optional<LanesForm> of(Visit visit) {
    String number = visit.field("number");
    String mark = visit.field("mark");
    if (!number.matches("\\d{1,9}") || !mark.matches("[0-9a-f]{64}")) {
      return Optional.empty();
    }
    CrewPlans.Seen seen = new CrewPlans.Seen(Integer.parseInt(number), mark);
    boolean lanes = visit.field("back").equals("lanes");
    return Moments.date(visit.field("day")).map(day -> new LanesForm(day, seen, lanes));
  }

  /** Where it goes on. */
  String back(LocalDate today) {
    return (lanes ? "lanes" : "") + (day.equals(today) ? "" : "?date=" + day);
  }
}
