package halfgram.desk;

import halfgram.db.Tx;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Output;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.News;
import halfgram.lot.LotStore;
import halfgram.lot.Movement;
import halfgram.lot.Reservation;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.Exact;
import halfgram.measure.Rounding;
import halfgram.prep.ServiceRun;
import halfgram.prep.netting.Draw;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Closes days: what their services were planned to use is assumed to be used, until somebody
 * counts.
 *
 * <p>Rules. A service that is over takes what its plan had it use, out of tubs that were there and
 * in date when it began, as {@link Taking} says. Where less is found than was planned, less is
 * taken: nobody can eat what was never made. Every movement says that it is assumed, and for which
 * service.
 */
final class Closing {
  private final LotStore lots = new LotStore();
  private final KitchenStore kitchens = new KitchenStore();

  /**
   * Assumes the use of the services of a plan that lie before a day; called once, when the first
   * plan of that day is made.
   */
  void close(Tx tx, House house, InForce plan, LocalDate day, String who, Instant now) {
    for (ServiceRun run : plan.sheet().services()) {
      boolean planned = !run.date().isBefore(plan.plan().day()) && run.date().isBefore(day);
      if (planned && !run.window().end().isAfter(now)) {
        for (ServiceRun.Use use : run.uses()) {
          use(tx, house, plan, run, use, who);
        }
      }
    }
  }

  private void use(
      Tx tx, House house, InForce plan, ServiceRun run, ServiceRun.Use use, String who) {
    Map<String, Amount> planned = new HashMap<>();
    for (Draw draw : plan.sheet().draws()) {
      boolean mine = draw.need().user().equals(run.id());
      if (mine && draw.amount().dimension() == use.amount().dimension()) {
        planned.merge(draw.lot().code(), draw.amount(), Amount::plus);
      }
    }
    List<Tub> tubs = candidates(tx, house, run, use);
    Taking.of(tubs, use.amount(), planned, run.event())
        .forEach((tub, amount) -> move(tx, house, run, tub, amount, who));
  }

  /** What the service could have taken from: not made after it, not past its date before it. */
  private List<Tub> candidates(Tx tx, House house, ServiceRun run, ServiceRun.Use use) {
    FormulaVersion version = use.version();
    Output output = version.outputs().get(use.output());
    return lots
        .listOfOutput(tx, house.id(), version.formula(), output.code(), use.output() == 0)
        .stream()
        .filter(tub -> tub.lot().left().dimension() == output.unit())
        .filter(tub -> tub.lot().made().isBefore(run.window().end()))
        .filter(tub -> tub.lot().useBy().isAfter(run.window().start()))
        .toList();
  }

  private void move(Tx tx, House house, ServiceRun run, Tub tub, Amount amount, String who) {
    Amount taken = amount.rounded(Rounding.TO_MICROGRAM);
    String detail =
        "{\"kind\":\""
            + Movement.Kind.ASSUMED
            + "\",\"amount\":\"-"
            + Exact.plain(taken.number(), 6)
            + "\"}";
    Instant at = run.window().end();
    // No fact: the plan that is being made has it in already.
    long change =
        kitchens.change(tx, house.id(), News.note("stock", tub.lot().code(), detail, who), at);
    lots.move(
        tx, house.id(), movement(tub, Movement.Kind.ASSUMED, taken.times(-1), run, who), change);
    for (Reservation kept : tub.lot().reserved()) {
      if (run.event().equals(Optional.of(kept.event()))) {
        Amount freed = kept.amount().atMost(taken).times(-1);
        lots.move(tx, house.id(), movement(tub, Movement.Kind.RESERVED, freed, run, who), change);
      }
    }
  }

  private static Movement movement(
      Tub tub, Movement.Kind kind, Amount amount, ServiceRun run, String who) {
    return new Movement(
        tub.id(),
        kind,
        amount,
        Optional.empty(),
        run.event(),
        Optional.of(run.id()),
        who,
        run.window().end(),
        Optional.empty());
  }
}
