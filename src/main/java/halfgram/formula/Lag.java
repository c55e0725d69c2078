package halfgram.formula;

import java.time.Duration;
import java.util.Optional;

/**
 * Time between the end of one step and the start of another.
 *
 * @param step the earlier step
 * @param max empty: as long as you like
 */
public record Lag(String step, Duration min, Optional<Duration> max, Reason reason) {
  public static Lag rightAfter(String step) {
    return new Lag(step, Duration.ZERO, Optional.empty(), Reason.NONE);
  }
}
