package halfgram.event;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.OptionalInt;

/**
 * A regular service on one date, when it slips or has other guests than usual.
 *
 * @param covers counted for this date; empty when nobody counts
 * @param swaps what stands in for what on this date, since somebody said yes to it
 */
public record ServiceDate(
    LocalDate date,
    LocalTime start,
    LocalTime end,
    Curve curve,
    OptionalInt covers,
    List<Replaced> swaps) {
  public ServiceDate {
    swaps = List.copyOf(swaps);
  }
}
