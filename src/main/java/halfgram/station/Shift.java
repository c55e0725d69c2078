package halfgram.station;

import halfgram.measure.BusinessDay;
import halfgram.measure.Window;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Comparator;
import java.util.List;
import java.util.Set;

/**
 * The weekly hours of one person; an end at or before the start lies past midnight.
 *
 * @param breaks inside the hours, one after another
 */
public record Shift(Set<DayOfWeek> days, LocalTime start, LocalTime end, List<Break> breaks) {
  public Shift {
    days = Set.copyOf(days);
    LocalTime from = start;
    breaks =
        breaks.stream()
            .sorted(Comparator.comparing((Break one) -> forward(from, one.start())))
            .toList();
  }

  /** By the clock on the wall; a night with a clock change is an hour longer or shorter. */
  public Duration length() {
    Duration span = forward(start, end);
    return span.isZero() ? span.plusDays(1) : span;
  }

  /** From the start of the shift to a time of the clock. */
  public Duration into(LocalTime time) {
    return forward(start, time);
  }

  /** The hours on a business day, breaks among them; whether it has that weekday is not asked. */
  public Window on(LocalDate day, BusinessDay clock) {
    Instant from = clock.at(day, start);
    return new Window(from, later(from, length(), clock));
  }

  /** The breaks on a business day, first to last. */
  public List<Window> breaksOn(LocalDate day, BusinessDay clock) {
    Instant from = clock.at(day, start);
    return breaks.stream()
        .map(
            one -> {
              Instant pause = later(from, into(one.start()), clock);
              return new Window(pause, pause.plus(one.length()));
            })
        .toList();
  }

  /** So much later by the clock on the wall. */
  static Instant later(Instant from, Duration span, BusinessDay clock) {
    return from.atZone(clock.zone()).toLocalDateTime().plus(span).atZone(clock.zone()).toInstant();
  }

  static Duration forward(LocalTime from, LocalTime to) {
    Duration span = Duration.between(from, to);
    return span.isNegative() ? span.plusDays(1) : span;
  }
}
