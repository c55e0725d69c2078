package halfgram.prep;

import halfgram.measure.Amount;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/** Whatever a cook enters of a task. */
public record Tick(
    UUID id,
    String task,
    Kind kind,
    Optional<String> line,
    Optional<Amount> amount,
    Optional<String> note,
    String cook,
    Instant at,
    Optional<UUID> undoes) {

  /** What was entered. */
  public enum Kind {
    START,
    WEIGHED,
    PART_DONE,
    DONE,
    PROBLEM,
    SOLVED,
    UNDO
  }
}
