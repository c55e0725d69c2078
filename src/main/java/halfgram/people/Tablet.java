package halfgram.people;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * A tablet on the wall of one kitchen.
 *
 * @param stations codes of those it may show; none for all
 * @param revoked when it was sent away; what it sends after that waits for the office
 */
public record Tablet(
    UUID id,
    String name,
    List<String> stations,
    Instant paired,
    String pairedBy,
    Optional<Instant> seen,
    Optional<Instant> revoked) {
  public Tablet {
    stations = List.copyOf(stations);
  }

  /** Whether it may show a station; of several at once, "cold.pastry", each. */
  public boolean shows(String station) {
    return stations.isEmpty() || stations.containsAll(List.of(station.split("\\.", -1)));
  }
}
