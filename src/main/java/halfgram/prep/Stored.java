package halfgram.prep;

import halfgram.formula.Output;
import halfgram.measure.Amount;
import halfgram.measure.Rounding;
import halfgram.station.Container;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a make puts away of one output.
 *
 * @param path why path of the amount made
 * @param made what comes out
 * @param needed what of it is asked for
 * @param fills what goes into each container, in order; empty without a container
 * @param useBy end of its hold, or of what in it ends before
 * @param useByOf code of the tub, or the make, whose date that is
 * @param safe until when it is safe whatever its quality; empty when nothing in it ends so
 */
public record Stored(
    String path,
    Output output,
    Amount made,
    Amount needed,
    Optional<Container> container,
    List<Amount> fills,
    Instant useBy,
    Optional<String> useByOf,
    Optional<Instant> safe) {

  /** Whether it keeps no longer for safety's sake, its own or that of what is in it. */
  public boolean endsForSafety() {
    return output.hold().reason().isSafety() || useByOf.isPresent();
  }

  /** Full containers and a rest, or equal parts in the fewest containers. */
  public static List<Amount> fills(Output output, Amount made) {
    if (output.fill().isEmpty() || !made.isPositive()) {
      return List.of();
    }
    Amount full = output.fill().get();
    BigDecimal needed = Rounding.UP_TO_WHOLE.round(made.over(full).number());
    long count = needed.longValueExact();
    List<Amount> fills = new ArrayList<>();
    Amount left = made;
    for (long i = 0; i < count; i++) {
      Amount next =
          switch (output.split()) {
            case FULL -> full.atMost(left);
            case EQUAL -> output.isPieces() ? even(made, count, i) : made.dividedBy(count);
          };
      fills.add(next);
      left = left.minus(next);
    }
    return fills;
  }

  private static Amount even(Amount pieces, long count, long position) {
    long all = pieces.pieces();
    return Amount.pieces(all / count + (position < all % count ? 1 : 0));
  }
}
