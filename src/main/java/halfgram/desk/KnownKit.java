package halfgram.desk;

import halfgram.prep.Carrying;
import halfgram.prep.Things;
import halfgram.prep.Tick;
import halfgram.prep.TickStore;
import halfgram.prep.Wash;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * What went through the kit in the last week, and what was said of it.
 *
 * <p>Rules. A task uses the things that its plan has for it. Only of baths it is entered which they
 * really were: where that was done for a task, it says so in place of the plan.
 *
 * @param ticks by task, in the order they were entered
 * @param used by task: each thing it uses, from its first tick to its last
 * @param dropped by task: the baths its pieces were dropped into
 * @param said washes, baths emptied, and other words
 */
record KnownKit(
    Map<String, List<TickStore.Entered>> ticks,
    Map<String, List<Carrying.Use>> used,
    Map<String, List<Carrying.Use>> dropped,
    List<Wash> said) {

  /**
   * As read from the database.
   *
   * @param plan what a plan computed, by its id
   */
  static KnownKit of(
      List<TickStore.Entered> entered,
      Function<UUID, Optional<Plans.Computation>> plan,
      BathUses baths,
      List<Wash> said) {
    Map<String, List<TickStore.Entered>> ticks = new LinkedHashMap<>();
    for (TickStore.Entered one : entered) {
      ticks.computeIfAbsent(one.tick().task(), task -> new ArrayList<>()).add(one);
    }
    Map<String, List<Carrying.Use>> used = new LinkedHashMap<>();
    ticks.forEach((task, all) -> used.put(task, uses(plan, all)));
    List<Wash> all = new ArrayList<>(said);
    all.addAll(baths.changes());
    return new KnownKit(ticks, used, baths.byTask(), List.copyOf(all));
  }

  /**
   * The same after one more tick.
   *
   * @param of what the plan of its task computed
   */
  KnownKit after(TickStore.Entered entered, Plans.Computation of) {
    String task = entered.tick().task();
    List<TickStore.Entered> all = new ArrayList<>(ticks.getOrDefault(task, List.of()));
    all.add(entered);
    Map<String, List<TickStore.Entered>> more = new HashMap<>(ticks);
    more.put(task, List.copyOf(all));
    Map<String, List<Carrying.Use>> now = new LinkedHashMap<>(used);
    now.put(task, uses(any -> Optional.of(of), all));
    return new KnownKit(more, now, dropped, said);
  }

  List<Carrying.Use> uses() {
    Stream<Carrying.Use> planned =
        used.values().stream()
            .flatMap(List::stream)
            .filter(use -> !dropped.containsKey(use.task()) || !Things.isBath(use.thing()));
    return Stream.concat(planned, dropped.values().stream().flatMap(List::stream)).toList();
  }

  Carrying of(String thing) {
    return Carrying.of(thing, uses(), said);
  }

  /** What was so at a moment: what began later, or was washed later, is not. */
  KnownKit by(Instant moment) {
    return new KnownKit(
        ticks,
        by(moment, used),
        by(moment, dropped),
        said.stream().filter(one -> !one.cleans() || !one.at().isAfter(moment)).toList());
  }

  private static Map<String, List<Carrying.Use>> by(
      Instant moment, Map<String, List<Carrying.Use>> uses) {
    Map<String, List<Carrying.Use>> before = new LinkedHashMap<>();
    uses.forEach(
        (task, all) ->
            before.put(task, all.stream().filter(use -> !use.first().isAfter(moment)).toList()));
    return before;
  }

  /** The uses of one task. */
  private static List<Carrying.Use> uses(
      Function<UUID, Optional<Plans.Computation>> plan, List<TickStore.Entered> all) {
    Set<UUID> undone = new HashSet<>();
    all.forEach(entered -> entered.tick().undoes().ifPresent(undone::add));
    List<Tick> counting =
        all.stream()
            .map(TickStore.Entered::tick)
            .filter(tick -> Ticking.USES.contains(tick.kind()) && !undone.contains(tick.id()))
            .toList();
    if (counting.isEmpty()) {
      return List.of();
    }
    TickStore.Entered last = all.get(all.size() - 1);
    return plan.apply(last.plan()).stream()
        .flatMap(of -> uses(of, last.tick().task(), counting).stream())
        .toList();
  }

  private static List<Carrying.Use> uses(Plans.Computation of, String id, List<Tick> counting) {
    List<Carrying.Use> uses = new ArrayList<>();
    Instant first = counting.get(0).at();
    Instant last = counting.get(counting.size() - 1).at();
    of.sheet().tasks().stream()
        .filter(task -> task.id().equals(id) && !task.allergens().isEmpty())
        .forEach(
            task ->
                Things.of(of.book(), of.sheet(), task)
                    .forEach(
                        thing ->
                            uses.add(
                                new Carrying.Use(
                                    thing,
                                    id,
                                    task.version().name(),
                                    task.allergens(),
                                    first,
                                    last))));
    return uses;
  }
}
