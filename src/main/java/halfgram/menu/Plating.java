package halfgram.menu;

import halfgram.kitchen.Text;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * How a dish is plated.
 *
 * @param people who plate at once
 * @param platesPerMinute of one person
 * @param last steps at the last second, once for the whole course
 * @param plate what it goes on
 * @param perTray plates that a tray carries
 * @param station where
 */
public record Plating(
    int people,
    BigDecimal platesPerMinute,
    List<LastStep> last,
    Optional<Text> plate,
    OptionalInt perTray,
    Optional<String> station) {
  private static final BigDecimal MINUTE = BigDecimal.valueOf(60);

  public Plating {
    last = List.copyOf(last);
  }

  /** Something done just before the plates go. */
  public record LastStep(Text text, int seconds) {}

  /**
   * From the first plate to the fire: plates over people times plates a minute, and the last steps;
   * up to whole seconds.
   *
   * <p>Example: 71 plates, 2 people at 2 plates a minute, 40 s of last steps: 18 min 25 s.
   */
  public Duration length(int plates) {
    return pace(plates).plusSeconds(last.stream().mapToLong(LastStep::seconds).sum());
  }

  /** How long so many plates take without the last steps, up to whole seconds. */
  public Duration pace(int plates) {
    BigDecimal perMinute = platesPerMinute.multiply(BigDecimal.valueOf(people));
    return Duration.ofSeconds(
        MINUTE
            .multiply(BigDecimal.valueOf(plates))
            .divide(perMinute, 0, RoundingMode.CEILING)
            .longValueExact());
  }

  /** Full trays and a rest; empty when nobody said what a tray carries. */
  public OptionalInt trays(int plates) {
    return perTray.isEmpty()
        ? OptionalInt.empty()
        : OptionalInt.of((plates + perTray.getAsInt() - 1) / perTray.getAsInt());
  }
}
