package halfgram.station;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;

/**
 * Somebody who cooks: the stations they can work and their weekly shifts.
 *
 * @param chef whether they may pass what a chef has to taste
 */
public record Person(
    String code, String name, Set<String> stations, List<Shift> shifts, boolean chef) {
  public Person {
    stations = Set.copyOf(stations);
    shifts = List.copyOf(shifts);
  }

  /** The shifts of a weekday. */
  public List<Shift> on(DayOfWeek weekday) {
    return shifts.stream().filter(shift -> shift.days().contains(weekday)).toList();
  }

  /** How long this person is on shift on a business day. */
  public Duration on(LocalDate day) {
    return on(day.getDayOfWeek()).stream().map(Shift::length).reduce(Duration.ZERO, Duration::plus);
  }
}
