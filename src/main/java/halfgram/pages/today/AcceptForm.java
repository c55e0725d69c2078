package halfgram.pages.today;

import halfgram.book.Moments;
import halfgram.desk.Plans;
import halfgram.web.Visit;
import java.time.LocalDate;
import java.util.Optional;

/** The proposal that somebody accepts, as its page wrote it down. */
record AcceptForm(LocalDate day, Plans.Seen seen) {

  /** Empty for what no page of ours has sent. */
  static Optional<AcceptForm> of(Visit visit) {
    String number = visit.field("number");
    String facts = visit.field("facts");
    if (!number.matches("\\d{1,9}") || !facts.matches("\\d{1,18}")) {
      return Optional.empty();
    }
    Plans.Seen seen = new Plans.Seen(Integer.parseInt(number), Long.parseLong(facts));
    return Moments.date(visit.field("day")).map(day -> new AcceptForm(day, seen));
  }
}
