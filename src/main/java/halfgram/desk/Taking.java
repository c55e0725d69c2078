package halfgram.desk;

import halfgram.lot.Reservation;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * From which tubs an amount is taken when a cook says only that it went in.
 *
 * <p>Rules. First as much from each tub as the plan named, then from what no other event has kept
 * for itself, and only when that is all gone from what another event has: somebody took it, since
 * it went in. Beyond what the plan named only some tubs may give, as whoever takes says. No tub
 * gives more than it has, so that less than was wanted may be found.
 */
final class Taking {
  private Taking() {}

  /**
   * How much from which tub, in the order they are taken from.
   *
   * @param tubs first to expire first
   * @param planned how much the plan took from tubs, by code
   * @param event whose work it is for; empty when it is for more than one, or none
   */
  static Map<Tub, Amount> of(
      List<Tub> tubs, Amount wanted, Map<String, Amount> planned, Optional<String> event) {
    return of(tubs, wanted, planned, event, tub -> true);
  }

  /**
   * As above.
   *
   * @param beyond which tubs give more than the plan took from them
   */
  static Map<Tub, Amount> of(
      List<Tub> tubs,
      Amount wanted,
      Map<String, Amount> planned,
      Optional<String> event,
      Predicate<Tub> beyond) {
    Map<Tub, Amount> taken = new LinkedHashMap<>();
    List<Function<Tub, Amount>> rounds =
        List.of(
            tub -> planned.getOrDefault(tub.lot().code(), wanted.times(0)),
            tub -> beyond.test(tub) ? free(tub, event) : wanted.times(0),
            tub -> beyond.test(tub) ? tub.lot().left() : wanted.times(0));
    Amount left = wanted;
    for (Function<Tub, Amount> most : rounds) {
      for (Tub tub : tubs) {
        Amount before = taken.getOrDefault(tub, wanted.times(0));
        Amount more = left.atMost(most.apply(tub).atMost(tub.lot().left()).minus(before));
        if (more.isPositive()) {
          taken.put(tub, before.plus(more));
          left = left.minus(more);
        }
      }
    }
    return taken;
  }

  /** What nobody else has kept for himself. */
  private static Amount free(Tub tub, Optional<String> event) {
    Amount free = tub.lot().left();
    for (Reservation kept : tub.lot().reserved()) {
      if (!event.equals(Optional.of(kept.event()))) {
        free = free.minus(kept.amount());
      }
    }
    return free;
  }
}
