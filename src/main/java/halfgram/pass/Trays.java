package halfgram.pass;

import halfgram.formula.Formulary;
import halfgram.lot.Lot;
import halfgram.lot.Reservation;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.prep.Thaw;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * The tubs and trays that stand ready, less what plates sent have taken out of them.
 *
 * <p>Rules. First what is kept for the event itself, then what is free, and of each the first to
 * expire first. What another event keeps is not there, nor is what is past its date, frozen or
 * still thawing.
 */
public final class Trays {

  /**
   * One to take from.
   *
   * @param free what of it may be taken
   * @param kept whether it is kept for the event that asks
   */
  public record Tray(Tub tub, Amount free, boolean kept) {}

  private static final Comparator<Tray> ORDER =
      Comparator.comparing((Tray tray) -> !tray.kept())
          .thenComparing(tray -> tray.tub().lot().useBy())
          .thenComparing(tray -> tray.tub().lot().made())
          .thenComparing(tray -> tray.tub().lot().code());

  private final Formulary formulary;
  private final Instant now;
  private final Map<UUID, Tub> tubs = new LinkedHashMap<>();

  public Trays(Formulary formulary, List<Tub> tubs, Instant now) {
    this.formulary = formulary;
    this.now = now;
    tubs.forEach(tub -> this.tubs.put(tub.id(), tub));
  }

  /** What an event, or a service of none, may take, in the order to take it. */
  public List<Tray> list(Component component, Optional<String> event) {
    List<Tray> trays = new ArrayList<>();
    for (Tub tub : tubs.values()) {
      Lot lot = tub.lot();
      if (component.isIn(formulary, lot) && lot.useBy().isAfter(now) && isReady(lot)) {
        Amount free = free(lot, event);
        if (free.isPositive()) {
          trays.add(new Tray(tub, free, lot.keptFor(event).isPositive()));
        }
      }
    }
    trays.sort(ORDER);
    return trays;
  }

  private boolean isReady(Lot lot) {
    return !lot.isFrozen() && !Thaw.ready(formulary, lot).isAfter(now);
  }

  private static Amount free(Lot lot, Optional<String> event) {
    Amount free = lot.left();
    for (Reservation kept : lot.reserved()) {
      if (!event.equals(Optional.of(kept.event()))) {
        free = free.minus(kept.amount());
      }
    }
    return free;
  }

  /** How much there is for an event. */
  public Amount inStock(Component component, Optional<String> event) {
    return list(component, event).stream().map(Tray::free).reduce(component.none(), Amount::plus);
  }

  /** Takes out what went on plates, as far as there is any. */
  public void take(Component component, Optional<String> event, Amount amount) {
    Amount left = amount;
    for (Tray tray : list(component, event)) {
      Amount taken = left.atMost(tray.free());
      if (taken.isPositive()) {
        Tub tub = tray.tub();
        Lot less = tub.lot().less(taken, event);
        tubs.put(tub.id(), new Tub(tub.id(), less, tub.task(), tub.change(), tub.assumed()));
        left = left.minus(taken);
      }
    }
  }
}
