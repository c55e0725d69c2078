package halfgram.event;

import halfgram.kitchen.Text;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.SortedSet;

/**
 * A service the kitchen runs every week; planned from pars.
 *
 * @param covers usual covers by weekday; pars are meant for these
 * @param dates days on which it is not as usual
 */
public record RegularService(
    String code,
    Text name,
    SortedSet<DayOfWeek> days,
    LocalTime start,
    LocalTime end,
    Curve curve,
    Map<DayOfWeek, Integer> covers,
    SortedMap<LocalDate, ServiceDate> dates) {

  /** How it runs on a date: as usual where nothing else is said of that date. */
  public ServiceDate on(LocalDate date) {
    ServiceDate said = dates.get(date);
    return said == null ? new ServiceDate(date, start, end, curve, usual(date), List.of()) : said;
  }

  /** The covers its pars are meant for on a date. */
  public OptionalInt usual(LocalDate date) {
    Integer usual = covers.get(date.getDayOfWeek());
    return usual == null ? OptionalInt.empty() : OptionalInt.of(usual);
  }
}
