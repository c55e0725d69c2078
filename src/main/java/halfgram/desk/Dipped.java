package halfgram.desk;

import halfgram.db.Tx;
import halfgram.kitchen.KitchenStore;
import halfgram.lot.LedgerStore;
import halfgram.lot.LotStore;
import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.prep.PlanStore;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * What somebody took of what is kept for an event, until a plan that knows of it is accepted or
 * somebody in the office has seen it.
 *
 * <p>Rules. Nobody has accepted the first plan of a day: what was taken since the plan before it is
 * still to be told. What was taken back, or found again by a later count, is told no more; nor is
 * what was kept for an event that is over, or no longer there.
 */
public final class Dipped {
  /** Where it is looked at, beside the stations that look at changes. */
  private static final String OFFICE = "office/kept";

  /**
   * Something taken.
   *
   * @param amount how much of it is still missing
   * @param change by which it is seen
   */
  public record Dip(Tub tub, String event, Amount amount, Movement movement, long change) {
    private Dip less(Amount found) {
      return new Dip(tub, event, amount.minus(found), movement, change);
    }
  }

  private final Desk desk;
  private final KitchenStore kitchens = new KitchenStore();
  private final LedgerStore ledger = new LedgerStore();
  private final LotStore lots = new LotStore();
  private final PlanStore plans = new PlanStore();

  public Dipped(Desk desk) {
    this.desk = desk;
  }

  /** What is to be told beside a plan in force; of a day without a plan all that is missing. */
  public List<Dip> list(House house, Optional<InForce> inForce) {
    return desk.read(
        tx -> {
          long after = inForce.map(of -> known(tx, house, of.plan())).orElse(0L);
          Set<Long> seen = kitchens.seen(tx, house.id(), OFFICE, after);
          Set<String> coming = coming(house);
          return missing(ledger.listDipped(tx, house.id(), after)).stream()
              .filter(dip -> coming.contains(dip.event()) && !seen.contains(dip.change()))
              .toList();
        });
  }

  /** Number of the last change that whoever accepted a plan can have known. */
  private long known(Tx tx, House house, PlanStore.Accepted plan) {
    if (plan.number() > 1) {
      return plan.change();
    }
    return plan.previous()
        .flatMap(id -> plans.find(tx, house.id(), id))
        .map(PlanStore.Accepted::change)
        .orElse(0L);
  }

  /** Events that are not over. */
  private Set<String> coming(House house) {
    Set<String> coming = new HashSet<>();
    house.book().events().stream()
        .filter(event -> !event.date().isBefore(house.day(desk.now())))
        .forEach(event -> coming.add(event.code()));
    return coming;
  }

  /** What was taken, less what was found again in the same tub for the same event. */
  private static List<Dip> missing(List<LedgerStore.Entry> entries) {
    List<Dip> dips = new ArrayList<>();
    for (LedgerStore.Entry entry : entries) {
      Movement movement = entry.movement();
      String event = movement.event().orElse("");
      if (movement.amount().isPositive()) {
        Amount found = movement.amount();
        for (int i = dips.size() - 1; i >= 0; i--) {
          Dip dip = dips.get(i);
          if (dip.event().equals(event) && dip.tub().id().equals(movement.lot())) {
            Amount part = dip.amount().atMost(found);
            dips.set(i, dip.less(part));
            found = found.minus(part);
          }
        }
      } else {
        Amount amount = movement.amount().times(-1);
        dips.add(new Dip(entry.tub(), event, amount, movement, movement.change()));
      }
    }
    dips.removeIf(dip -> !dip.amount().isPositive());
    return dips;
  }

  /** What a tick took of what others keep. */
  public List<Dip> listOfTick(House house, UUID tick) {
    return desk.read(
        tx ->
            lots.listOfTick(tx, house.id(), tick).stream()
                .filter(one -> one.kind() == Movement.Kind.DIPPED)
                .map(
                    one ->
                        new Dip(
                            lots.findById(tx, house.id(), one.lot()),
                            one.event().orElse(""),
                            one.amount().times(-1),
                            one,
                            one.change()))
                .toList());
  }

  /** Notes that somebody has seen what was taken; a repeat is harmless. */
  public void see(House house, Collection<Long> numbers, String who) {
    desk.write(
        house,
        tx -> {
          KitchenStore.Stand stand = kitchens.lock(tx, house.id());
          numbers.forEach(number -> kitchens.see(tx, house.id(), number, OFFICE, who, desk.now()));
          return kitchens.next(tx, stand);
        });
  }
}
