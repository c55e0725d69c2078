package halfgram.event;

import halfgram.kitchen.Text;
import halfgram.measure.Ratio;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * A guests' occasion.
 *
 * @param buffer its own extra share instead of the kitchen's tiers
 */
public record Event(
    String code,
    Text name,
    LocalDate date,
    Covers covers,
    Optional<Ratio> buffer,
    List<DietCount> diets,
    List<Service> services) {
  public Event {
    diets = List.copyOf(diets);
    services = List.copyOf(services);
  }

  /** Covers made: the counted ones and the buffer. */
  public int prepared(Buffer house) {
    return buffer.map(Buffer::flat).orElse(house).prepared(covers.counted());
  }

  /** Guests with a diet. */
  public int dietGuests() {
    return diets.stream().mapToInt(DietCount::count).sum();
  }
}
