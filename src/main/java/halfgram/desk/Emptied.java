package halfgram.desk;

import halfgram.formula.FormulaVersion;
import halfgram.formula.Output;
import halfgram.lot.LedgerStore;
import halfgram.lot.Lot;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.Rounding;
import halfgram.pass.Component;
import halfgram.prep.ServiceRun;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Function;

/**
 * Tubs out of which services take what they have used; on paper, nothing is kept.
 *
 * <p>Rule. What a service took out of a tub before somebody counted that tub is not in the count:
 * it is taken from what was in the tub before, and not again from what was counted. So the use is
 * gone through from count to count, and of each part the tubs that were counted after it give
 * theirs on paper alone.
 *
 * <p>Rule. Of a tub whose date ends while a service runs, nothing is assumed but what the plan drew
 * from it: else what lies there and is to be binned would be gone on paper.
 *
 * <p>Example: a tub of 300 g from which 200 g were planned, counted as 90 g after the service: 90 g
 * stay, and no other tub has to give the 200 g.
 */
final class Emptied {

  /** What a service took out of a tub, as the tub was before. */
  record Take(Tub tub, ServiceRun run, Amount amount) {
    private Tub after() {
      return less(tub, amount, run.event());
    }
  }

  /** What a service has used that was in no tub. */
  record Missing(String service, Component component, Amount amount) {}

  /**
   * What a service has used, and by which moment.
   *
   * @param used by component until a moment
   * @param given what tubs have given already
   * @param planned how much the plans took from tubs, by code; each from its moment until the next
   */
  record Demand(
      ServiceRun run,
      Function<Instant, List<ServiceRun.Use>> used,
      Map<Component, Amount> given,
      SortedMap<Instant, Map<String, Amount>> planned) {

    /** Until which moments one plan each counted. */
    private Set<Instant> ends(Instant now) {
      return planned.headMap(now).keySet();
    }
  }

  private final Instant now;
  private final Map<UUID, Tub> tubs = new LinkedHashMap<>();
  private final Map<UUID, Tub> before = new HashMap<>();
  private final Map<UUID, Instant> counted = new HashMap<>();
  private final List<Take> takes = new ArrayList<>();
  private final List<Missing> missing = new ArrayList<>();

  /**
   * @param list tubs as they are by the ledger
   * @param counts what was counted lately, oldest first
   */
  Emptied(List<Tub> list, List<LedgerStore.Entry> counts, Instant now) {
    this.now = now;
    list.forEach(tub -> tubs.put(tub.id(), tub));
    for (LedgerStore.Entry count : counts) {
      UUID id = count.tub().id();
      tubs.putIfAbsent(id, count.tub());
      Tub known = before.getOrDefault(id, count.tub());
      before.put(id, less(known, count.movement().amount(), Optional.empty()));
      counted.put(id, count.movement().at());
    }
  }

  private static Tub less(Tub tub, Amount amount, Optional<String> event) {
    Lot lot = tub.lot().less(amount, event);
    return new Tub(tub.id(), lot, tub.task(), tub.change(), true);
  }

  /** The tubs in which something is left. */
  List<Tub> left() {
    return tubs.values().stream().filter(tub -> tub.lot().left().isPositive()).toList();
  }

  List<Take> takes() {
    return takes;
  }

  List<Missing> missing() {
    return missing;
  }

  /** Takes what a service has used. */
  void take(Demand demand) {
    NavigableMap<Instant, Map<String, Amount>> planned = new TreeMap<>();
    demand.planned().forEach((since, draws) -> planned.put(since, new HashMap<>(draws)));
    for (ServiceRun.Use use : demand.used().apply(now)) {
      List<UUID> candidates = candidates(demand.run(), use);
      Component component = Component.of(use.version(), use.output());
      SortedSet<Instant> moments = new TreeSet<>(demand.ends(now));
      moments.add(now);
      for (UUID id : candidates) {
        Instant at = counted.get(id);
        if (at != null && at.isBefore(now)) {
          moments.add(at);
        }
      }
      Amount done = demand.given().getOrDefault(component, component.none());
      for (Instant moment : moments) {
        Amount all = used(demand, component, moment);
        if (done.compareTo(all) < 0) {
          Map.Entry<Instant, Map<String, Amount>> by = planned.lowerEntry(moment);
          Map<String, Amount> draws = (by == null ? planned.firstEntry() : by).getValue();
          take(demand.run(), component, candidates, all.minus(done), moment, draws);
          done = all;
        }
      }
    }
  }

  private static Amount used(Demand demand, Component component, Instant moment) {
    return demand.used().apply(moment).stream()
        .filter(use -> Component.of(use.version(), use.output()).equals(component))
        .map(ServiceRun.Use::amount)
        .reduce(component.none(), Amount::plus);
  }

  private void take(
      ServiceRun run,
      Component component,
      List<UUID> candidates,
      Amount amount,
      Instant until,
      Map<String, Amount> planned) {
    List<Tub> from = candidates.stream().map(id -> at(id, until)).toList();
    Amount left = amount;
    Instant end = run.window().end();
    Map<Tub, Amount> taken =
        Taking.of(from, amount, planned, run.event(), tub -> !tub.lot().useBy().isBefore(end));
    for (Map.Entry<Tub, Amount> one : taken.entrySet()) {
      Take take = new Take(one.getKey(), run, one.getValue().rounded(Rounding.TO_MICROGRAM));
      UUID id = take.tub().id();
      left = left.minus(take.amount());
      planned.computeIfPresent(
          take.tub().lot().code(), (code, more) -> more.minus(more.atMost(take.amount())));
      if (isCountedSince(id, until)) {
        before.put(id, take.after());
      } else {
        takes.add(take);
        tubs.put(id, take.after());
      }
    }
    if (left.isPositive()) {
      missing.add(new Missing(run.id(), component, left));
    }
  }

  private boolean isCountedSince(UUID id, Instant moment) {
    Instant at = counted.get(id);
    return at != null && !at.isBefore(moment);
  }

  private Tub at(UUID id, Instant moment) {
    return java.util.Objects.requireNonNull((isCountedSince(id, moment) ? before : tubs).get(id));
  }

  /**
   * What the service could have taken from: not made or thawed after it, not past its date before
   * it.
   */
  private List<UUID> candidates(ServiceRun run, ServiceRun.Use use) {
    FormulaVersion version = use.version();
    Output output = version.outputs().get(use.output());
    String first = version.outputs().get(0).code();
    return tubs.values().stream()
        .filter(tub -> tub.lot().component().formula().equals(version.formula()))
        .filter(tub -> tub.lot().component().output().orElse(first).equals(output.code()))
        .filter(tub -> tub.lot().left().dimension() == output.unit())
        .filter(tub -> !tub.lot().isFrozen())
        .filter(tub -> tub.lot().ready(output.thaw()).isBefore(run.window().end()))
        .filter(tub -> tub.lot().useBy().isAfter(run.window().start()))
        .map(Tub::id)
        .toList();
  }
}
