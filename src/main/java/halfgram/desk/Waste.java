package halfgram.desk;

import halfgram.formula.ComponentRef;
import halfgram.lot.LedgerStore;
import halfgram.lot.Loss;
import halfgram.lot.Movement;
import halfgram.measure.Amount;
import halfgram.measure.BusinessDay;
import halfgram.measure.Dimension;
import halfgram.measure.Money;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * What was thrown away or broke, by business day and component, with what it had cost.
 *
 * <p>Rules. Money is what was worked out when it was lost; where a price was missing then, nothing
 * stands for it: the sum is of the rest, and says for what it has no price. What was taken back
 * again is not in it.
 */
public final class Waste {

  /**
   * One component on one day.
   *
   * @param reasons how much for which reason, in the order they were first given
   * @param cost of what had a price
   * @param unpriced codes of ingredients without a price
   * @param planned whether the amount is what a batch would have given, and nobody weighed it
   */
  public record Line(
      ComponentRef component,
      Amount amount,
      Map<String, Amount> reasons,
      Money cost,
      SortedSet<String> unpriced,
      boolean planned) {}

  /**
   * One business day.
   *
   * @param cost of all that had a price
   * @param unpriced codes of ingredients without a price
   */
  public record Day(LocalDate date, List<Line> lines, Money cost, SortedSet<String> unpriced) {}

  private final Desk desk;
  private final FailedBatches failed;
  private final LedgerStore ledger = new LedgerStore();

  public Waste(Desk desk, Plans plans) {
    this.desk = desk;
    this.failed = new FailedBatches(desk, plans);
  }

  /** The days in which something was lost, the first and the last included, oldest first. */
  public List<Day> list(House house, LocalDate first, LocalDate last) {
    BusinessDay clock = house.book().kitchen().clock();
    List<LedgerStore.Entry> lost =
        desk.read(
            tx ->
                ledger.listLost(tx, house.id(), clock.start(first), clock.start(last.plusDays(1))));
    Map<LocalDate, Map<String, List<LedgerStore.Entry>>> days = new TreeMap<>();
    for (LedgerStore.Entry entry : lost) {
      days.computeIfAbsent(house.day(entry.movement().at()), day -> new LinkedHashMap<>())
          .computeIfAbsent(key(house, entry), key -> new ArrayList<>())
          .add(entry);
    }
    Map<LocalDate, List<Line>> batches = new TreeMap<>();
    for (FailedBatches.Batch batch :
        failed.list(house, clock.start(first), clock.start(last.plusDays(1)))) {
      LocalDate date = house.day(batch.at());
      batches.computeIfAbsent(date, day -> new ArrayList<>()).add(line(batch));
      days.computeIfAbsent(date, day -> new LinkedHashMap<>());
    }
    List<Day> list = new ArrayList<>();
    days.forEach(
        (date, byKey) -> list.add(day(house, date, byKey, batches.getOrDefault(date, List.of()))));
    return list;
  }

  private static Line line(FailedBatches.Batch batch) {
    return new Line(
        batch.component(),
        batch.planned(),
        Map.of(batch.reason(), batch.planned()),
        batch.cost(),
        batch.unpriced(),
        true);
  }

  private static String key(House house, LedgerStore.Entry entry) {
    ComponentRef ref = component(house, entry);
    Dimension unit = entry.movement().amount().dimension();
    return ref.formula() + ":" + ref.output().orElse("") + ":" + unit;
  }

  /** Formula and output without a version; its first output goes without saying. */
  private static ComponentRef component(House house, LedgerStore.Entry entry) {
    ComponentRef ref = entry.tub().lot().component();
    String first = house.book().formulary().get(ref).outputs().get(0).code();
    Optional<String> output = ref.output().filter(code -> !code.equals(first));
    return new ComponentRef(ref.formula(), output, OptionalInt.empty());
  }

  private static Day day(
      House house, LocalDate date, Map<String, List<LedgerStore.Entry>> byKey, List<Line> batches) {
    List<Line> lines = new ArrayList<>();
    Money sum = Money.ZERO;
    SortedSet<String> unpriced = new TreeSet<>();
    byKey.values().forEach(entries -> lines.add(line(house, entries)));
    lines.addAll(batches);
    for (Line line : lines) {
      sum = sum.plus(line.cost());
      unpriced.addAll(line.unpriced());
    }
    return new Day(date, lines, sum, unpriced);
  }

  private static Line line(House house, List<LedgerStore.Entry> entries) {
    Map<String, Amount> reasons = new LinkedHashMap<>();
    List<Amount> amounts = new ArrayList<>();
    Money cost = Money.ZERO;
    SortedSet<String> unpriced = new TreeSet<>();
    for (LedgerStore.Entry entry : entries) {
      Movement movement = entry.movement();
      Amount amount = movement.amount().times(-1);
      amounts.add(amount);
      reasons.merge(movement.reason().orElse(""), amount, Amount::plus);
      Loss loss = movement.loss().orElse(new Loss(Money.UNKNOWN, List.of()));
      cost = cost.plus(loss.cost());
      unpriced.addAll(loss.unpriced());
    }
    return new Line(
        component(house, entries.get(0)), Amount.sum(amounts), reasons, cost, unpriced, false);
  }
}
