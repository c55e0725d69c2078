package halfgram.formula;

import halfgram.measure.Amount;
import halfgram.measure.Exact;
import java.time.Duration;

/**
 * How long something takes: a fixed part and a part for each kilogram and each piece; rounded up to
 * whole minutes.
 *
 * <p>Example: 8 min + 1 min/kg for 4.692 kg takes 13 min (12.692 rounded up).
 */
public record Work(Duration fixed, Duration perKg, Duration perPiece) {
  public static final Work NONE = new Work(Duration.ZERO, Duration.ZERO, Duration.ZERO);
  private static final long MILLIS_PER_MINUTE = 60_000L;

  public Duration of(Amount mass, long pieces) {
    long millis = fixed.toMillis() + perPiece.toMillis() * pieces;
    if (!perKg.isZero()) {
      double kilograms = Exact.approximately(mass.number()) / 1000;
      millis += (long) Math.ceil(perKg.toMillis() * kilograms);
    }
    return Duration.ofMinutes(Math.floorDiv(millis + MILLIS_PER_MINUTE - 1, MILLIS_PER_MINUTE));
  }

  public boolean isNone() {
    return fixed.isZero() && perKg.isZero() && perPiece.isZero();
  }
}
