package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.book.Moments;
import halfgram.db.Tx;
import halfgram.kitchen.KitchenStore;
import halfgram.prep.PlanStore;
import halfgram.prep.Task;
import halfgram.prep.TickStore;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Predicate;

/** What happened in a kitchen: what cooks entered and what else changed, in one order. */
public final class Logbook {
  /** As many at a time are fetched of each kind. */
  private static final int BATCH = 200;

  /** A search that finds too little gives up after so many batches. */
  private static final int BATCHES = 25;

  /** Something that happened. */
  public sealed interface Entry permits Entered, Changed {
    /** Number of the change: a later one has a higher. */
    long number();

    String who();

    Instant at();
  }

  /** A cook entered something, perhaps later than it was done. */
  public record Entered(TickStore.Entered tick) implements Entry {
    @Override
    public long number() {
      return tick.change();
    }

    @Override
    public String who() {
      return tick.tick().cook();
    }

    @Override
    public Instant at() {
      return tick.later().map(TickStore.Later::came).orElse(tick.tick().at());
    }
  }

  /** Something else changed. */
  public record Changed(KitchenStore.Change change) implements Entry {
    @Override
    public long number() {
      return change.number();
    }

    @Override
    public String who() {
      return change.who();
    }

    @Override
    public Instant at() {
      return change.at();
    }
  }

  /** A task with the plan it was ticked on. */
  public record Ticked(Plans.Computation plan, Task task) {}

  /**
   * Part of the log.
   *
   * @param entries newest first
   * @param before the number to go on before; empty when there is nothing older
   * @param tasks by task id, those of the entries that their plan still knows
   */
  public record Part(List<Entry> entries, Optional<Long> before, Map<String, Ticked> tasks) {}

  private final Desk desk;
  private final Plans plans;
  private final KitchenStore kitchens = new KitchenStore();
  private final TickStore ticks = new TickStore();
  private final PlanStore planStore = new PlanStore();

  public Logbook(Desk desk, Plans plans) {
    this.desk = desk;
    this.plans = plans;
  }

  /**
   * The last entries before a number that are wanted.
   *
   * @param most how many, at least 1
   */
  public Part list(House house, long before, int most, Predicate<Entry> wanted) {
    return desk.read(tx -> list(tx, house, before, most, wanted));
  }

  private Part list(Tx tx, House house, long before, int most, Predicate<Entry> wanted) {
    List<Entry> found = new ArrayList<>();
    long from = before;
    for (int i = 0; i < BATCHES; i++) {
      List<Entry> batch = batch(tx, house, from);
      for (Entry entry : batch) {
        if (wanted.test(entry)) {
          if (found.size() == most) {
            return part(tx, house, found, Optional.of(from));
          }
          found.add(entry);
        }
        from = entry.number();
      }
      if (batch.size() < BATCH) {
        return part(tx, house, found, Optional.empty());
      }
    }
    return part(tx, house, found, Optional.of(from));
  }

  /** The newest of both kinds: none is left out between the first and the last. */
  private List<Entry> batch(Tx tx, House house, long before) {
    List<Entry> both = new ArrayList<>();
    ticks.listBefore(tx, house.id(), before, BATCH).forEach(tick -> both.add(new Entered(tick)));
    kitchens
        .listBefore(tx, house.id(), before, LogKind.ofChanges(), BATCH)
        .forEach(change -> both.add(new Changed(change)));
    return both.stream()
        .sorted(Comparator.comparingLong(Entry::number).reversed())
        .limit(BATCH)
        .toList();
  }

  private Part part(Tx tx, House house, List<Entry> entries, Optional<Long> before) {
    Map<UUID, Optional<Plans.Computation>> ofPlan = new HashMap<>();
    Map<String, Ticked> tasks = new HashMap<>();
    for (Entry entry : entries) {
      if (entry instanceof Entered entered) {
        String task = entered.tick().tick().task();
        ofPlan
            .computeIfAbsent(
                entered.tick().plan(),
                id ->
                    planStore.find(tx, house.id(), id).map(plan -> plans.computed(tx, house, plan)))
            .flatMap(plan -> find(plan, task))
            .ifPresent(ticked -> tasks.putIfAbsent(task, ticked));
      } else if (((Changed) entry).change().kind().equals(LogKind.LANES.word())) {
        ofLanes(tx, house, ((Changed) entry).change(), tasks);
      }
    }
    return new Part(List.copyOf(entries), before, tasks);
  }

  /** The task that the lanes were told of, as the plan in force of its day has it. */
  private void ofLanes(Tx tx, House house, KitchenStore.Change change, Map<String, Ticked> tasks) {
    JsonNode detail = BookStore.parse(change.detail());
    String task = detail.path("task").asText();
    if (!task.isEmpty() && !tasks.containsKey(task)) {
      Moments.date(detail.path("day").asText())
          .flatMap(day -> plans.inForce(tx, house, day))
          .flatMap(plan -> find(plans.computed(tx, house, plan), task))
          .ifPresent(ticked -> tasks.put(task, ticked));
    }
  }

  private static Optional<Ticked> find(Plans.Computation plan, String id) {
    return plan.sheet().tasks().stream()
        .filter(task -> task.id().equals(id))
        .findFirst()
        .map(task -> new Ticked(plan, task));
  }

  /** What formulas say is not for everybody who may read the log: the audit has it. */
  public static ObjectNode detail(KitchenStore.Change change) {
    ObjectNode detail = (ObjectNode) BookStore.parse(change.detail());
    detail.remove("items");
    if (change.kind().equals(LogKind.FORMULA.word())) {
      detail.remove(List.of("before", "after"));
    }
    return detail;
  }
}
