package halfgram.desk;

import halfgram.db.Tx;
import halfgram.lot.LotStore;
import halfgram.lot.Movement;
import halfgram.lot.Reservation;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * What tubs keep for an event: freed when the event is cancelled or is only a draft again, kept
 * again when it is back.
 */
final class Reserved {
  private static final String REASON = "cancelled";

  private final LotStore lots = new LotStore();

  void free(Tx tx, UUID kitchen, String event, long change, String who, Instant at) {
    for (Tub tub : lots.list(tx, kitchen)) {
      for (Reservation kept : tub.lot().reserved()) {
        if (kept.event().equals(event)) {
          move(tx, kitchen, tub, event, kept.amount().times(-1), change, who, at);
        }
      }
    }
  }

  /** As much as it was, where the tub still has that free. */
  void keepAgain(Tx tx, UUID kitchen, String event, long change, String who, Instant at) {
    for (Tub tub : lots.list(tx, kitchen)) {
      Optional<Movement> last = lastFreed(lots.listOf(tx, kitchen, tub.id()), event);
      if (last.isPresent()) {
        Amount amount = last.get().amount().times(-1);
        Amount free = tub.lot().left();
        for (Reservation other : tub.lot().reserved()) {
          free = free.minus(other.amount());
        }
        if (free.compareTo(amount) >= 0) {
          move(tx, kitchen, tub, event, amount, change, who, at);
        }
      }
    }
  }

  private static Optional<Movement> lastFreed(List<Movement> movements, String event) {
    return movements.stream()
        .filter(one -> one.kind() == Movement.Kind.RESERVED)
        .filter(one -> one.event().equals(Optional.of(event)))
        .reduce((one, other) -> other)
        .filter(one -> one.reason().equals(Optional.of(REASON)));
  }

  private void move(
      Tx tx,
      UUID kitchen,
      Tub tub,
      String event,
      Amount amount,
      long change,
      String who,
      Instant at) {
    Optional<String> reason = amount.isPositive() ? Optional.empty() : Optional.of(REASON);
    Movement movement =
        new Movement(
            tub.id(),
            Movement.Kind.RESERVED,
            amount,
            Optional.empty(),
            Optional.of(event),
            reason,
            who,
            at,
            Optional.empty());
    lots.move(tx, kitchen, movement, change);
  }
}
