package halfgram.delivery;

import halfgram.measure.Amount;
import halfgram.measure.Temperature;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/**
 * Something that was entered of a delivery; never changed, only undone by a further entry.
 *
 * @param expected of a late one, when it is to be here now
 * @param ingredient of a line that came short or was turned away
 * @param came of a short line, grams
 * @param reason why it was turned away, or anything to add
 * @param reading of a line that was turned away, read by hand from a probe
 * @param undoes id of the entry that it takes back
 */
public record DeliveryEntry(
    UUID id,
    Kind kind,
    Optional<Instant> expected,
    Optional<String> ingredient,
    Optional<Amount> came,
    Optional<String> reason,
    Optional<Temperature> reading,
    String who,
    Instant at,
    Optional<UUID> undoes) {

  /** What can be said of a delivery. */
  public enum Kind {
    /** It is here. */
    ARRIVED,
    /** It will be here at another time than was said. */
    LATE,
    /** Less of a line has come, or will. */
    SHORT,
    /** A line was turned away at the door. */
    REJECTED,
    /** It will not come at all. */
    CANCELLED,
    /** An entry was a mistake. */
    UNDO
  }
}
