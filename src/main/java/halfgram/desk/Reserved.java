package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.db.Tx;
import halfgram.lot.Freed;
import halfgram.lot.LotStore;
import halfgram.lot.Movement;
import halfgram.lot.Reservation;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;

/**
 * What tubs keep for events, as one change leaves it.
 *
 * <p>Rules. An event that is taken out, or is only a draft again, keeps no tub. One that is put
 * back, or is agreed again, keeps as much as it was, where the tub still has that free; a draft
 * that is put back keeps none. Whatever writes events says here what they were and what they are,
 * after it has written them and the tubs.
 */
final class Reserved {
  private final LotStore lots = new LotStore();

  private final Tx tx;
  private final UUID kitchen;
  private final long change;
  private final String who;
  private final Instant at;

  Reserved(Tx tx, UUID kitchen, long change, String who, Instant at) {
    this.tx = tx;
    this.kitchen = kitchen;
    this.change = change;
    this.who = who;
    this.at = at;
  }

  void takenOut(String event) {
    free(Set.of(event), Freed.CANCELLED);
  }

  void putBack(ObjectNode event) {
    if (!Events.isDraft(event)) {
      keepAgain(Set.of(event.path("code").asText()));
    }
  }

  /**
   * Those of some events that have become drafts, or were and are agreed.
   *
   * @param before bodies as the book writes them
   * @param after bodies of the same events; others count as they were
   */
  void changed(Iterable<JsonNode> before, Iterable<JsonNode> after) {
    Map<String, Boolean> drafts = new HashMap<>();
    before.forEach(event -> drafts.put(event.path("code").asText(), Events.isDraft(event)));
    Set<String> freed = new TreeSet<>();
    Set<String> agreed = new TreeSet<>();
    for (JsonNode event : after) {
      String code = event.path("code").asText();
      boolean draft = Events.isDraft(event);
      if (drafts.getOrDefault(code, draft) != draft) {
        (draft ? freed : agreed).add(code);
      }
    }
    free(freed, Freed.DRAFT);
    keepAgain(agreed);
  }

  private void free(Set<String> events, Freed why) {
    if (events.isEmpty()) {
      return;
    }
    for (Tub tub : lots.list(tx, kitchen)) {
      for (Reservation kept : tub.lot().reserved()) {
        if (events.contains(kept.event())) {
          move(tub, kept.event(), kept.amount().times(-1), Optional.of(why.word()));
        }
      }
    }
  }

  private void keepAgain(Set<String> events) {
    if (events.isEmpty()) {
      return;
    }
    for (Tub tub : lots.list(tx, kitchen)) {
      List<Movement> movements = lots.listOf(tx, kitchen, tub.id());
      Amount free = tub.lot().left();
      for (Reservation other : tub.lot().reserved()) {
        free = free.minus(other.amount());
      }
      for (String event : events) {
        Optional<Movement> last = lastFreed(movements, event);
        if (last.isPresent() && free.compareTo(last.get().amount().times(-1)) >= 0) {
          Amount amount = last.get().amount().times(-1);
          free = free.minus(amount);
          move(tub, event, amount, Optional.empty());
        }
      }
    }
  }

  private static Optional<Movement> lastFreed(List<Movement> movements, String event) {
    return movements.stream()
        .filter(one -> one.kind() == Movement.Kind.RESERVED)
        .filter(one -> one.event().equals(Optional.of(event)))
        .reduce((one, other) -> other)
        .filter(one -> Freed.find(one).isPresent());
  }

  private void move(Tub tub, String event, Amount amount, Optional<String> reason) {
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
