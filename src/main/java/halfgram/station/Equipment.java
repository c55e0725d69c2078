package halfgram.station;

import halfgram.kitchen.Text;
import java.time.Duration;
import java.util.Optional;

/**
 * A machine (or several alike): where it stands and what one fill of it may be.
 *
 * @param touches whether food touches it, so that it carries allergens until it is washed
 * @param wash to wash and dry it when what ran before does not go with what comes next
 * @param drying how much of that it dries by itself, without hands
 */
public record Equipment(
    String code,
    Text name,
    Optional<String> station,
    int units,
    FillLimits limits,
    boolean touches,
    Duration wash,
    Duration drying) {

  /** How long hands are on it when it is washed. */
  public Duration scrub() {
    return wash.minus(drying);
  }
}
