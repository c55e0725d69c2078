package halfgram.desk;

import halfgram.db.Tx;
import halfgram.formula.ComponentRef;
import halfgram.formula.Formulary;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.News;
import halfgram.lot.LedgerStore;
import halfgram.lot.LotStore;
import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.pass.Called;
import halfgram.pass.Component;
import halfgram.pass.Consumed;
import halfgram.pass.EntryStore;
import halfgram.prep.PrepSheet;
import halfgram.prep.ServiceRun;
import halfgram.prep.netting.Draw;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;

/**
 * Closes services: what they were planned to use is assumed to be used once they are over, until
 * somebody counts.
 *
 * <p>Rules. A service is closed when a plan is followed by the next, which no longer has it, and is
 * over when the book says so, whatever the plan said. What it has taken before is not taken again,
 * though it slips to another time: so exactly once, however often the day is planned again. It
 * takes what it has used ({@link Consumed}) out of tubs that were there and in date: what the plans
 * drew, each for as long as it was in force ({@link EarlierSheets}), the rest out of those that
 * were until it ended, as {@link Taking} says. Where less is found, less is taken: nobody can eat
 * what was never made. What somebody counted since is not taken out of what was counted ({@link
 * Emptied}). A service that the book has no more took nothing. Every movement says that it is
 * assumed, and for which service; nobody did it, so the kitchen's clock signs it, whoever asked for
 * the plan.
 */
final class Closing {
  private final LotStore lots = new LotStore();
  private final LedgerStore ledger = new LedgerStore();
  private final EntryStore entries = new EntryStore();
  private final KitchenStore kitchens = new KitchenStore();
  private final Posting posting = new Posting();

  /**
   * Tubs as they are when the services of a sheet and its book have taken theirs by a moment.
   *
   * @param sheets the newest first
   */
  List<Tub> after(Tx tx, House house, List<PrepSheet> sheets, Instant asOf) {
    return emptied(tx, house, sheets, asOf, run -> true, run -> true).left();
  }

  /**
   * As above for the pass: of a service that is not over, what was sent alone is gone, since what
   * was not is still to go.
   */
  Emptied atPass(Tx tx, House house, List<PrepSheet> sheets, Instant now) {
    return emptied(tx, house, sheets, now, run -> true, run -> run.isOver(now));
  }

  /**
   * Takes out of the tubs what the services have used that are over at a moment; and answers with
   * the tubs as they are then, less what those have used that go on.
   *
   * @param asOf moment of the plan that follows, which has no service that is over by then
   * @param now what is assumed to be empty and out of date by then, nobody is to count any more
   */
  List<Tub> close(Tx tx, House house, List<PrepSheet> sheets, Instant asOf, Instant now) {
    Emptied emptied = emptied(tx, house, sheets, asOf, run -> run.isOver(asOf), run -> true);
    for (Emptied.Take take : emptied.takes()) {
      Movement used = movement(take);
      List<Movement> rows = Posting.rows(house, take.tub(), used, take.run().event());
      // No fact: the plan that is being made has it in already.
      String detail = StockNews.detail(rows).toString();
      News news = News.note("stock", take.tub().lot().code(), detail, Movement.CLOCK);
      long change = kitchens.change(tx, house.id(), news, used.at());
      posting.keep(tx, house.id(), rows, change);
    }
    lots.endAssumed(tx, house.id(), now);
    return emptied(tx, house, sheets, asOf, run -> !run.isOver(asOf), run -> true).left();
  }

  /**
   * The tubs without what services took.
   *
   * @param which services take
   * @param planned which of them take what they were planned to, where nothing was recorded
   */
  private Emptied emptied(
      Tx tx,
      House house,
      List<PrepSheet> sheets,
      Instant asOf,
      Predicate<ServiceRun> which,
      Predicate<ServiceRun> planned) {
    PrepSheet sheet = sheets.get(0);
    List<ServiceRun> runs =
        runs(house, sheet, asOf).stream()
            .filter(which)
            // Those over come first, as they do where they are closed before the rest is looked at.
            .sorted(Comparator.comparing(run -> !run.isOver(asOf)))
            .toList();
    Instant from = house.book().kitchen().clock().start(sheet.request().from());
    List<LedgerStore.Entry> counts =
        runs.isEmpty() ? List.of() : ledger.listCounted(tx, house.id(), from);
    Emptied emptied = new Emptied(lots.list(tx, house.id()), counts, asOf);
    Map<LocalDate, Called> called = new HashMap<>();
    for (ServiceRun run : runs) {
      Called of =
          called.computeIfAbsent(run.date(), day -> Called.of(entries.list(tx, house.id(), day)));
      Consumed consumed = new Consumed(house.book(), run, of, asOf);
      SortedMap<Instant, Map<String, Amount>> draws = new TreeMap<>();
      if (planned.test(run)) {
        sheets.forEach(one -> draws.put(one.request().asOf(), draws(one, run)));
      } else {
        draws.put(from, kept(emptied.left(), run.event()));
      }
      emptied.take(
          new Emptied.Demand(
              run,
              planned.test(run) ? consumed::by : consumed::sentBy,
              given(tx, house, run),
              draws));
    }
    return emptied;
  }

  /**
   * The services by the book that the plan before has not closed: those of its sheet, and those
   * that were not over when it came.
   */
  private static List<ServiceRun> runs(House house, PrepSheet sheet, Instant asOf) {
    Set<String> listed = new HashSet<>();
    SortedSet<LocalDate> days = new TreeSet<>(Set.of(sheet.request().from()));
    for (ServiceRun run : sheet.services()) {
      listed.add(run.id());
      days.add(run.date());
    }
    days.tailSet(house.day(asOf).plusDays(1)).clear();
    return days.stream()
        .flatMap(day -> Services.runs(house.book(), day).stream())
        .filter(run -> listed.contains(run.id()) || !run.isOver(sheet.request().asOf()))
        .toList();
  }

  /** What tubs have given for a service before. */
  private Map<Component, Amount> given(Tx tx, House house, ServiceRun run) {
    Instant from = house.book().kitchen().clock().start(run.date());
    Formulary formulary = house.book().formulary();
    Map<Component, Amount> given = new HashMap<>();
    for (LedgerStore.Entry entry : ledger.listAssumed(tx, house.id(), run.id(), from)) {
      ComponentRef ref = entry.tub().lot().component();
      if (formulary.find(ref).isPresent()) {
        given.merge(
            Component.of(formulary, ref), entry.movement().amount().times(-1), Amount::plus);
      }
    }
    return given;
  }

  /** What tubs keep for an event, by code: it is taken first. */
  private static Map<String, Amount> kept(List<Tub> tubs, Optional<String> event) {
    Map<String, Amount> kept = new HashMap<>();
    tubs.forEach(tub -> kept.put(tub.lot().code(), tub.lot().keptFor(event)));
    return kept;
  }

  /** How much the plan had a service take from which tub, by code. */
  private static Map<String, Amount> draws(PrepSheet sheet, ServiceRun run) {
    Map<String, Amount> draws = new HashMap<>();
    for (Draw draw : sheet.draws()) {
      if (draw.need().user().equals(run.id())) {
        draws.merge(draw.lot().code(), draw.amount(), Amount::plus);
      }
    }
    return draws;
  }

  private static Movement movement(Emptied.Take take) {
    return new Movement(
        take.tub().id(),
        Movement.Kind.ASSUMED,
        take.amount().times(-1),
        Optional.empty(),
        take.run().event(),
        Optional.of(take.run().id()),
        Movement.CLOCK,
        take.run().window().end(),
        Optional.empty());
  }
}
