package halfgram.prep;

import halfgram.formula.Formulary;
import halfgram.lot.Lot;
import java.time.Instant;
import java.util.Optional;

/**
 * From when a tub may be used, where it may not yet: it was pulled and thaws, or it rests for
 * safety's sake. A rest of quality is the cook's to judge.
 *
 * <p>Example: char put to thaw on Friday 21:15 with twelve hours: not before Saturday 09:15.
 */
public final class Resting {
  private Resting() {}

  /** Empty for one that may be used at a moment, and for one in the freezer. */
  public static Optional<Instant> notBefore(Formulary formulary, Lot tub, Instant now) {
    boolean counts = !tub.isFrozen() && formulary.find(tub.component()).isPresent();
    return counts
        ? Optional.of(Thaw.ready(formulary, tub)).filter(now::isBefore)
        : Optional.empty();
  }
}
