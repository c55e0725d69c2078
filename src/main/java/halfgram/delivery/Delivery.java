package halfgram.delivery;

import halfgram.measure.Amount;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What a supplier is to bring on a business day.
 *
 * @param expected when, as it was ordered; {@link DeliveryStand} has what was said since
 * @param checkIn how long goods take from the door to where they are worked on
 * @param checkInStated whether the book says so; else it is the default
 * @param entries what was entered of it, in that order
 */
public record Delivery(
    String code,
    String supplier,
    LocalDate date,
    Instant expected,
    Duration checkIn,
    boolean checkInStated,
    List<Line> lines,
    List<DeliveryEntry> entries) {
  /** Of a delivery that does not say how long checking in takes: a guess. */
  public static final Duration USUAL_CHECK_IN = Duration.ofMinutes(10);

  /**
   * An ingredient of it.
   *
   * @param amount grams, as bought
   * @param typed the amount as written
   * @param inHouse whether the kitchen has enough to begin with: then no work waits for it
   */
  public record Line(String ingredient, Amount amount, String typed, boolean inHouse) {}

  public Delivery {
    lines = List.copyOf(lines);
    entries = List.copyOf(entries);
  }

  public Optional<Line> findLine(String ingredient) {
    return lines.stream().filter(line -> line.ingredient().equals(ingredient)).findFirst();
  }

  /** What has come of it by what was entered. */
  public DeliveryStand stand() {
    return DeliveryStand.of(this);
  }
}
