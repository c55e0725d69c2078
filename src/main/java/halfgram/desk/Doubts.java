package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.book.Moments;
import halfgram.input.Problem;
import halfgram.measure.Message;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What of an event may be so and is more often a slip of the hand: nothing is forbidden, but
 * whoever does it is told, and a form asks first.
 *
 * <p>Rules. It is moved, or written down anew, to a day that is over. Its covers become twice as
 * many or more, or half as many or fewer, by {@link #FEW} guests at least.
 */
final class Doubts {
  /** What is no slip, however much of a small number it is. */
  private static final int FEW = 10;

  private static final int TIMES = 2;

  private Doubts() {}

  /**
   * What is to be doubted.
   *
   * @param path of the event, before the paths of what is doubted
   * @param before the event as it is; missing for a new one
   * @param today the business day
   */
  static List<Problem> list(String path, JsonNode before, JsonNode event, LocalDate today) {
    List<Problem> doubts = new ArrayList<>();
    String said = event.path("date").asText();
    Optional<LocalDate> date = Moments.date(said);
    if (!before.path("date").asText().equals(said) && date.filter(today::isAfter).isPresent()) {
      doubts.add(new Problem(path + ".date", said, Message.of("events.doubt-past")));
    }
    int from = Events.counted(before);
    int to = Events.counted(event);
    boolean far = to >= from * TIMES || to * TIMES <= from;
    String field = event.path("covers").hasNonNull("final") ? "final" : "expected";
    JsonNode covers = event.path("covers").path(field);
    boolean read =
        covers.isNumber() && covers.decimalValue().compareTo(BigDecimal.valueOf(to)) == 0;
    if (!before.isMissingNode() && read && far && Math.abs(to - from) >= FEW) {
      Message message = Message.of("events.doubt-covers", from, to);
      doubts.add(new Problem(path + ".covers." + field, String.valueOf(to), message));
    }
    return doubts;
  }
}
