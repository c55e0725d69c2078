package halfgram.desk;

import halfgram.lot.Movement;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** What was in a tub from movement to movement, without what was taken back. */
final class Contents {
  /** What was in it from a moment on. */
  private record Held(Amount amount, Instant since) {}

  private final List<Held> held = new ArrayList<>();

  /**
   * @param movements of one tub, oldest first
   */
  Contents(List<Movement> movements) {
    Set<Long> undone =
        movements.stream()
            .flatMapToLong(one -> one.undoes().stream())
            .boxed()
            .collect(Collectors.toSet());
    for (Movement one : movements) {
      boolean stands = one.undoes().isEmpty() && !undone.contains(one.change());
      if (stands && one.kind().moves()) {
        Amount in = held.isEmpty() ? one.amount() : last().amount().plus(one.amount());
        held.add(new Held(in, one.at()));
      }
    }
  }

  private Held last() {
    return held.get(held.size() - 1);
  }

  /** The most that was in it at once, when a count says more than that. */
  Optional<Amount> moreThanEver(Amount counted) {
    Amount none = Amount.zero(counted.dimension());
    Amount most =
        held.stream()
            .map(Held::amount)
            .reduce(none, (one, other) -> other.compareTo(one) > 0 ? other : one);
    return Optional.of(most).filter(of -> counted.compareTo(of.plus(slack(of))) > 0);
  }

  /** What a scale and a rounded number may be off; pieces are counted. */
  private static Amount slack(Amount most) {
    return most.dimension() == Dimension.COUNT
        ? Amount.zero(Dimension.COUNT)
        : most.dividedBy(50).plus(Amount.grams(1));
  }

  /** Until when it held exactly so much, the last time it did; empty when it never did, or does. */
  Optional<Instant> lastHeld(Amount amount) {
    for (int i = held.size() - 1; i >= 0; i--) {
      if (held.get(i).amount().compareTo(amount) == 0) {
        return i == held.size() - 1 ? Optional.empty() : Optional.of(held.get(i + 1).since());
      }
    }
    return Optional.empty();
  }
}
