package halfgram.pages.today;

import halfgram.book.Moments;
import halfgram.web.Visit;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * A task put by hand, as its page wrote it down.
 *
 * @param start as typed
 * @param people codes
 */
record PinForm(LocalDate day, String task, String start, List<String> people) {

  /** Empty for what no page of ours has sent. */
  static Optional<PinForm> of(Visit visit) {
    return Moments.date(visit.field("day"))
        .map(
            day ->
                new PinForm(
                    day,
                    visit.field("task"),
                    visit.field("start"),
                    visit.fields("person").stream().distinct().toList()));
  }

  /** Where its task stands. */
  String back() {
    return "task?date=" + day + "&id=" + Visit.encoded(task);
  }
}
