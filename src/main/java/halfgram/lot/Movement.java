package halfgram.lot;

import halfgram.measure.Amount;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/**
 * Something that happened to a tub; append-only. A mistake is put right by a further movement.
 *
 * @param amount what it adds to the tub, below zero for what it takes out; for a reservation, what
 *     it keeps for the event
 * @param stated what was counted, for a count
 * @param event for whom, for a reservation
 * @param tick the tick that caused it
 */
public record Movement(
    UUID lot,
    Kind kind,
    Amount amount,
    Optional<Amount> stated,
    Optional<String> event,
    Optional<String> reason,
    String who,
    Instant at,
    Optional<UUID> tick) {

  /** What happened. */
  public enum Kind {
    /** It was filled. */
    MADE,
    /** It was in the house before the ledger began, or came with a book. */
    BROUGHT,
    USED,
    /** A service was planned to use it; nobody has seen it. */
    ASSUMED,
    COUNTED,
    BINNED,
    /** Kept for an event; moves nothing out of the tub. */
    RESERVED,
    /** An earlier movement taken back. */
    UNDONE;

    /** Whether it changes what is in the tub. */
    public boolean moves() {
      return this != RESERVED;
    }
  }
}
