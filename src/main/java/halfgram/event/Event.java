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
 * @param draft asked for and not agreed: an enquiry, which asks nothing of the kitchen
 */
public record Event(
    String code,
    Text name,
    LocalDate date,
    Covers covers,
    Optional<Ratio> buffer,
    List<DietCount> diets,
    List<Service> services,
    boolean draft) {
  public Event {
    diets = List.copyOf(diets);
    services = List.copyOf(services);
  }

  /** The same event once it is agreed. */
  public Event agreed() {
    return new Event(code, name, date, covers, buffer, diets, services, false);
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
