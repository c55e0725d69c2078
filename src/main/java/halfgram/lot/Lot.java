package halfgram.lot;

import halfgram.formula.ComponentRef;
import halfgram.measure.Amount;
import java.time.Instant;
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
}
