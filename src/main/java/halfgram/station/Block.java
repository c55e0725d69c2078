package halfgram.station;

import halfgram.kitchen.Text;
import halfgram.measure.BusinessDay;
import halfgram.measure.Window;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Optional;
import java.util.Set;

/**
 * A time every week in which those on shift do the same thing and nothing else: staff meal,
 * line-up, close-down clean. An end before the start lies past midnight.
 *
 * @param stations whose cooks it takes; none named: everybody on shift
 */
public record Block(
    Text name, Set<DayOfWeek> days, LocalTime start, LocalTime end, Set<String> stations) {
  public Block {
    days = Set.copyOf(days);
    stations = Set.copyOf(stations);
  }

  public Duration length() {
    return Shift.forward(start, end);
  }

  /** When it is on a business day; empty on other weekdays. */
  public Optional<Window> on(LocalDate day, BusinessDay clock) {
    if (!days.contains(day.getDayOfWeek())) {
      return Optional.empty();
    }
    Instant from = clock.at(day, start);
    return Optional.of(new Window(from, Shift.later(from, length(), clock)));
  }

  /** Whether somebody who works these stations is in it. */
  public boolean takes(Person person) {
    return stations.isEmpty() || person.stations().stream().anyMatch(stations::contains);
  }
}
