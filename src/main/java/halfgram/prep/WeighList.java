package halfgram.prep;

import halfgram.formula.Fills;
import halfgram.formula.Scaled;
import halfgram.formula.Step;
import halfgram.measure.Because;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What a formula at a size weighs out, outside any plan: no tubs, no times, nobody to serve. */
public final class WeighList {
  private WeighList() {}

  /** The lines of a step, of one fill of its machines, by vessel in the order they go in. */
  public static List<WeighGroup> of(KitchenBook book, Scaled scaled, Step step, Fills.Fill fill) {
    Make make =
        new Make(
            scaled.version().formula(),
            scaled.version(),
            "",
            Optional.empty(),
            List.of(),
            List.of(),
            Instant.EPOCH,
            scaled,
            scaled,
            List.of(),
            new Timeline(List.of(), Instant.EPOCH),
            List.of());
    return new Weighings(book, Because.NOT_ASKED).of(make, step, fill, Map.of());
  }
}
