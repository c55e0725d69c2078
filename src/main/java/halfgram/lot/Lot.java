package halfgram.lot;

import halfgram.formula.ComponentRef;
import halfgram.measure.Amount;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A tub: what is in it, how much is left, until when it may be used, for whom it is kept.
 *
 * @param component formula, output and the version it was made by
 */
public record Lot(
    String code,
    ComponentRef component,
    Amount left,
    Instant made,
    Instant useBy,
    String place,
    Optional<String> container,
    List<Reservation> reserved) {
  public Lot {
    reserved = List.copyOf(reserved);
  }

  /** What is kept for an event; zero when nothing is. */
  public Amount keptFor(Optional<String> event) {
    return reserved.stream()
        .filter(one -> event.equals(Optional.of(one.event())))
        .map(Reservation::amount)
        .reduce(Amount.zero(left.dimension()), Amount::plus);
  }

  /**
   * The tub when something has been taken out of it. What an event took of what it kept is kept no
   * longer.
   *
   * @param event who took it; empty for anybody else
   */
  public Lot less(Amount taken, Optional<String> event) {
    Amount rest = left.minus(taken);
    List<Reservation> kept = new ArrayList<>();
    for (Reservation one : reserved) {
      boolean own = event.equals(Optional.of(one.event()));
      Amount amount = own ? one.amount().minus(one.amount().atMost(taken)) : one.amount();
      kept.add(new Reservation(one.event(), amount));
    }
    return new Lot(
        code, component, rest, made, useBy, place, container, Reservation.within(rest, kept));
  }
}
