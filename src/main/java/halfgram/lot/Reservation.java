package halfgram.lot;

import halfgram.measure.Amount;
import java.util.ArrayList;
import java.util.List;

/** Part of a tub kept for one event. */
public record Reservation(String event, Amount amount) {

  /** No more is kept than there is, when some was counted short, spilt or taken. */
  static List<Reservation> within(Amount left, List<Reservation> reserved) {
    List<Reservation> kept = new ArrayList<>();
    Amount free = left;
    for (Reservation one : reserved) {
      Amount amount = one.amount().atMost(free);
      if (amount.isPositive()) {
        kept.add(new Reservation(one.event(), amount));
        free = free.minus(amount);
      }
    }
    return kept;
  }
}
