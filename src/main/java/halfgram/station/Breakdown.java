package halfgram.station;

import java.time.Instant;
import java.util.Optional;

/**
 * Units of a machine that do not work.
 *
 * @param said the entry that says so
 * @param end when they are to work again or did; empty until somebody says that they are mended
 * @param mended whether somebody said so
 */
public record Breakdown(CrewEntry said, Instant start, Optional<Instant> end, boolean mended) {
  public int units() {
    return said.units();
  }

  /** Whether the units do not work at a moment. */
  public boolean isOn(Instant moment) {
    return !moment.isBefore(start) && end.map(moment::isBefore).orElse(true);
  }

  /** Whether the units are missing at some moment of a span; a span open at its end goes on. */
  public boolean meets(Instant from, Optional<Instant> until) {
    return end.map(from::isBefore).orElse(true) && until.map(start::isBefore).orElse(true);
  }
}
