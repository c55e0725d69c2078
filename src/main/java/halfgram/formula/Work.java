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
    double grams = perKg.isZero() ? 0 : Exact.approximately(mass.number());
    return upToMinute(pieces, Exact.ceiling(perKg.toMillis() * grams / 1000));
  }

  /**
   * As {@link #of(Amount, long)} for the mass that a basis makes, without working out its digits:
   * minutes need no 34 of them, and a year of makes does.
   */
  public Duration of(MassBalance.Straight mass, Amount basis, long pieces) {
    if (perKg.isZero()) {
      return upToMinute(pieces, 0);
    }
    double grams =
        Exact.approximately(mass.slope()) * Exact.approximately(basis.number())
            + Exact.approximately(mass.offset());
    double perMass = perKg.toMillis() * Math.max(0, grams) / 1000;
    return upToMinute(pieces, Exact.ceiling(perMass));
  }

  private Duration upToMinute(long pieces, long millisByMass) {
    long millis = fixed.toMillis() + perPiece.toMillis() * pieces + millisByMass;
    return Duration.ofMinutes(Math.floorDiv(millis + MILLIS_PER_MINUTE - 1, MILLIS_PER_MINUTE));
  }

  public boolean isNone() {
    return fixed.isZero() && perKg.isZero() && perPiece.isZero();
  }
}
