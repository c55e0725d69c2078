package halfgram.desk;

import halfgram.db.Tx;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Output;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.News;
import halfgram.lot.Lot;
import halfgram.lot.LotStore;
import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.Rounding;
import halfgram.pass.Called;
import halfgram.pass.Consumed;
import halfgram.pass.EntryStore;
import halfgram.prep.PrepSheet;
import halfgram.prep.ServiceRun;
import halfgram.prep.netting.Draw;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * Closes services: what they were planned to use is assumed to be used once they are over, until
 * somebody counts.
 *
 * <p>Rules. A service is closed when a plan is followed by the next, which no longer has it: so
 * exactly once, however often the day is planned again. It takes what its plan had it use, out of
 * tubs that were there and in date when it began, as {@link Taking} says. Where less is found than
 * was planned, less is taken: nobody can eat what was never made. Of a course whose plates were
 * recorded as sent, what was sent is taken instead of what was planned ({@link Consumed}). Every
 * movement says that it is assumed, and for which service.
 */
final class Closing {
  private final LotStore lots = new LotStore();
  private final EntryStore entries = new EntryStore();
  private final KitchenStore kitchens = new KitchenStore();
  private final Posting posting = new Posting();

  /** What a service took out of a tub, as the tub was before. */
  private record Take(Tub tub, ServiceRun run, Amount amount) {
    private Tub after() {
      Lot less = tub.lot().less(amount, run.event());
      return new Tub(tub.id(), less, tub.task(), tub.change(), true);
    }
  }

  /** Tubs as they are once the services of a sheet that are over at a moment have taken theirs. */
  List<Tub> after(Tx tx, House house, PrepSheet sheet, Instant asOf) {
    Map<UUID, Tub> now = byId(lots.list(tx, house.id()));
    take(tx, house, sheet, now, asOf);
    return now.values().stream().filter(tub -> tub.lot().left().isPositive()).toList();
  }

  /**
   * Takes out of the tubs what the services of a sheet have used that are over at a moment.
   *
   * @param asOf moment of the plan that follows, which has no service that is over by then
   */
  void close(Tx tx, House house, PrepSheet sheet, Instant asOf, String who) {
    for (Take take : take(tx, house, sheet, byId(lots.list(tx, house.id())), asOf)) {
      Movement used = movement(take, who);
      List<Movement> rows = Posting.rows(house, take.tub(), used, take.run().event());
      // No fact: the plan that is being made has it in already.
      String detail = StockNews.detail(rows).toString();
      News news = News.note("stock", take.tub().lot().code(), detail, who);
      long change = kitchens.change(tx, house.id(), news, used.at());
      posting.keep(tx, house.id(), rows, change);
    }
  }

  private static Map<UUID, Tub> byId(List<Tub> tubs) {
    Map<UUID, Tub> byId = new LinkedHashMap<>();
    tubs.forEach(tub -> byId.put(tub.id(), tub));
    return byId;
  }

  private List<Take> take(Tx tx, House house, PrepSheet sheet, Map<UUID, Tub> tubs, Instant asOf) {
    Called called = Called.of(entries.list(tx, house.id(), sheet.request().from()));
    List<Take> takes = new ArrayList<>();
    for (ServiceRun run : sheet.services()) {
      if (!run.window().end().isAfter(asOf)) {
        Map<String, Amount> planned = planned(sheet, run);
        for (ServiceRun.Use use : Consumed.of(house.book(), run, called)) {
          Taking.of(candidates(tubs, run, use), use.amount(), planned, run.event())
              .forEach(
                  (tub, amount) -> {
                    Take take = new Take(tub, run, amount.rounded(Rounding.TO_MICROGRAM));
                    takes.add(take);
                    tubs.put(tub.id(), take.after());
                  });
        }
      }
    }
    return takes;
  }

  /** How much the plan had a service take from which tub, by code. */
  private static Map<String, Amount> planned(PrepSheet sheet, ServiceRun run) {
    Map<String, Amount> planned = new HashMap<>();
    for (Draw draw : sheet.draws()) {
      if (draw.need().user().equals(run.id())) {
        planned.merge(draw.lot().code(), draw.amount(), Amount::plus);
      }
    }
    return planned;
  }

  /** What the service could have taken from: not made after it, not past its date before it. */
  private static List<Tub> candidates(Map<UUID, Tub> tubs, ServiceRun run, ServiceRun.Use use) {
    FormulaVersion version = use.version();
    Output output = version.outputs().get(use.output());
    String first = version.outputs().get(0).code();
    return tubs.values().stream()
        .filter(tub -> tub.lot().component().formula().equals(version.formula()))
        .filter(tub -> tub.lot().component().output().orElse(first).equals(output.code()))
        .filter(tub -> tub.lot().left().dimension() == output.unit())
        .filter(tub -> !tub.lot().isFrozen())
        .filter(tub -> tub.lot().made().isBefore(run.window().end()))
        .filter(tub -> tub.lot().useBy().isAfter(run.window().start()))
        .toList();
  }

  private static Movement movement(Take take, String who) {
    return new Movement(
        take.tub().id(),
        Movement.Kind.ASSUMED,
        take.amount().times(-1),
        Optional.empty(),
        take.run().event(),
        Optional.of(take.run().id()),
        who,
        take.run().window().end(),
        Optional.empty());
  }
}
