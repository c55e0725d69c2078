package halfgram.desk;

import halfgram.prep.crew.CrewPlan;
import halfgram.prep.crew.DayFacts;
import java.time.Duration;
import java.time.Instant;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;

/**
 * The crew plan in force of an accepted plan.
 *
 * @param of id of the accepted plan
 * @param number first is 1; 0 is a rough one that is shown while the first is looked for
 * @param pins where the chef wants tasks, by task id
 * @param more how much longer than planned somebody said that tasks take, by task id
 * @param mark of what it was worked out from
 */
public record CrewInForce(
    UUID id,
    UUID of,
    int number,
    Instant at,
    String who,
    CrewPlan plan,
    Map<String, DayFacts.Pin> pins,
    Map<String, Duration> more,
    String mark) {
  public CrewInForce {
    more = Map.copyOf(more);
    pins = Collections.unmodifiableMap(new LinkedHashMap<>(pins));
  }

  /** Whether nothing keeps it, because the first is still looked for. */
  public boolean isRough() {
    return number == 0;
  }
}
