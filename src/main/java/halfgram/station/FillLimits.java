package halfgram.station;

import halfgram.measure.Mass;
import java.util.Optional;

/** The least, the most and the step of one machine fill. */
public record FillLimits(Optional<Mass> min, Optional<Mass> max, Optional<Mass> step) {
  public static final FillLimits NONE =
      new FillLimits(Optional.empty(), Optional.empty(), Optional.empty());

  /** These limits where given, else the other's. */
  public FillLimits orElse(FillLimits other) {
    return new FillLimits(min.or(other::min), max.or(other::max), step.or(other::step));
  }
}
