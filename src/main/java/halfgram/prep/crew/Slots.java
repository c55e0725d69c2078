package halfgram.prep.crew;

import java.time.Duration;
import java.time.Instant;

/**
 * Time cut into slots. What takes time, and shortest times, are rounded up to the slot; longest
 * times and hours by which something must be ready are rounded down.
 *
 * @param from start of slot 0
 */
public record Slots(Instant from) {
  /** Length of a slot. */
  public static final Duration SLOT = Duration.ofMinutes(5);

  private static final long SECONDS = SLOT.toSeconds();

  /** Slot 0 begins at the last whole slot before a moment. */
  public static Slots startingAt(Instant moment) {
    return new Slots(
        Instant.ofEpochSecond(Math.floorDiv(moment.getEpochSecond(), SECONDS) * SECONDS));
  }

  /** The slot a moment lies in; of one before the first, negative. */
  public int down(Instant moment) {
    return within(Math.floorDiv(Duration.between(from, moment).toSeconds(), SECONDS));
  }

  /** The first slot that starts at a moment or later. */
  public int up(Instant moment) {
    return within(-Math.floorDiv(-Duration.between(from, moment).toSeconds(), SECONDS));
  }

  public static int up(Duration length) {
    return within(-Math.floorDiv(-length.toSeconds(), SECONDS));
  }

  public static int down(Duration length) {
    return within(Math.floorDiv(length.toSeconds(), SECONDS));
  }

  public Instant at(int slot) {
    return from.plusSeconds(slot * SECONDS);
  }

  public static Duration length(long slots) {
    return Duration.ofSeconds(slots * SECONDS);
  }

  /** Ten years of slots are as good as never. */
  private static int within(long slots) {
    return (int) Math.max(-MOST, Math.min(MOST, slots));
  }

  private static final long MOST = 1_000_000;
}
