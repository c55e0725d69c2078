package halfgram.desk;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.db.Tx;
import halfgram.kitchen.KitchenStore;
import halfgram.measure.Message;
import halfgram.prep.PlanStore;
import halfgram.prep.PrepSheet;
import halfgram.prep.TaskState;
import halfgram.prep.Tick;
import halfgram.prep.TickStore;
import halfgram.technique.bath.BathEntry;
import halfgram.technique.bath.BathStore;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/**
 * Takes what cooks enter at the baths, and says how the baths of a day stand.
 *
 * <p>Rules. An entry that its device has sent before changes nothing and gets the same answer. One
 * that {@link BathRules} refuse is not kept, and whoever sent it is told why; nor is a drop into a
 * worn bath, until they say that they know. The first drop of a run starts its task; when every
 * drop is taken back, so is the start. What the day does not have is looked for on the day before.
 */
public final class Bathing {
  private static final int DAYS = 30;

  /** What has the test piece in the bath, or had. */
  private static final Set<Tick.Kind> BEGINS =
      EnumSet.of(Tick.Kind.START, Tick.Kind.PART_DONE, Tick.Kind.DONE);

  /**
   * An entry as sent; the moment comes here.
   *
   * @param id made by the device; when it made none, one is made here
   * @param formula of the bath; may be empty where the run, the drop or the day has only one
   * @param label of the bath; may be empty where the drop tells
   * @param worn of a drop: that the bath is worn, and the cook knows
   */
  public record Entry(
      Optional<UUID> id,
      BathEntry.Kind kind,
      String formula,
      String label,
      Optional<String> run,
      Optional<UUID> drop,
      OptionalLong pieces,
      Optional<BigDecimal> millimetres,
      Optional<String> fresh,
      Optional<String> tub,
      Optional<String> note,
      boolean worn,
      String cook,
      Optional<UUID> undoes,
      TickStore.Origin origin) {}

  /** What became of it. */
  public sealed interface Outcome permits Taken, Refused, Worn, Unknown {}

  /**
   * It is kept, now or before.
   *
   * @param repeated whether it was here before
   */
  public record Taken(BathEntry entry, long change, boolean repeated) implements Outcome {}

  /** A rule does not let it. */
  public record Refused(Message because) implements Outcome {}

  /** The bath is worn: whoever sent it has to say that it goes in all the same. */
  public record Worn(Message because) implements Outcome {}

  /** The day has no such run, bath, drop or entry. */
  public record Unknown(String what) implements Outcome {}

  private final Desk desk;
  private final Plans plans;
  private final Starting starting;
  private final KitchenStore kitchens = new KitchenStore();
  private final PlanStore planStore = new PlanStore();
  private final TickStore ticks = new TickStore();
  private final BathStore store = new BathStore();
  private final BathTubs tubs = new BathTubs();

  public Bathing(Desk desk, Plans plans, Ticking ticking) {
    this.desk = desk;
    this.plans = plans;
    this.starting = ticking.starting();
  }

  /** How the baths of a day stand. */
  public BathBoard board(House house, InForce inForce) {
    return desk.remembered(
            house,
            new EnteredOf(inForce.plan().id()),
            (before, ticked) ->
                Optional.of(before)
                    .filter(any -> !BathBoard.isTest(ticked.entered().tick().task())),
            tx -> entered(tx, house, inForce))
        .board(inForce);
  }

  /** What was entered at the baths of a plan, by name. */
  private record EnteredOf(UUID plan) {}

  /**
   * What was entered at the baths of a plan.
   *
   * @param earlier runs of entries that a later plan has withdrawn
   * @param tested when each run's test piece was begun
   */
  private record AtBaths(
      List<BathStore.Entered> entered,
      List<PrepSheet.BathRun> earlier,
      Map<String, Instant> tested) {

    private BathBoard board(InForce inForce) {
      return BathBoard.of(inForce, entered, earlier, tested);
    }
  }

  /** The last days on which anything was entered at a bath, newest first. */
  public List<LocalDate> listDays(House house) {
    return desk.read(tx -> store.listDays(tx, house.id(), DAYS));
  }

  /** Takes an entry on a business day. */
  public Outcome enter(House house, LocalDate day, Entry entry) {
    return desk.write(
        house,
        tx -> enter(tx, house, day, entry),
        outcome -> outcome instanceof Taken taken && !taken.repeated() ? taken.change() : 0);
  }

  private BathBoard board(Tx tx, House house, InForce inForce) {
    return entered(tx, house, inForce).board(inForce);
  }

  private AtBaths entered(Tx tx, House house, InForce inForce) {
    List<BathStore.Entered> entered = store.list(tx, house.id(), inForce.plan().day());
    List<PrepSheet.BathRun> earlier = earlier(tx, house, inForce, entered);
    return new AtBaths(entered, earlier, tested(tx, house, inForce, earlier));
  }

  /** Runs of entries that a later plan has withdrawn. */
  private List<PrepSheet.BathRun> earlier(
      Tx tx, House house, InForce inForce, List<BathStore.Entered> entered) {
    Map<String, UUID> missing = new LinkedHashMap<>();
    for (BathStore.Entered one : entered) {
      one.entry().run().ifPresent(run -> missing.put(run, one.plan()));
    }
    inForce.sheet().runs().forEach(run -> missing.remove(run.make().id()));
    List<PrepSheet.BathRun> earlier = new ArrayList<>();
    missing.forEach(
        (run, plan) ->
            planStore.find(tx, house.id(), plan).stream()
                .flatMap(of -> plans.computed(tx, house, of).sheet().runs().stream())
                .filter(one -> one.make().id().equals(run))
                .findFirst()
                .ifPresent(earlier::add));
    return earlier;
  }

  /** When somebody began with the test piece of a run. */
  private Map<String, Instant> tested(
      Tx tx, House house, InForce inForce, List<PrepSheet.BathRun> earlier) {
    Map<String, String> byTask = new LinkedHashMap<>();
    inForce.sheet().runs().forEach(run -> byTask.put(BathBoard.testTask(run), run.make().id()));
    earlier.forEach(run -> byTask.put(BathBoard.testTask(run), run.make().id()));
    Map<String, Instant> tested = new HashMap<>();
    ticks
        .listOfTasks(tx, house.id(), byTask.keySet())
        .forEach(
            (task, all) ->
                all.stream()
                    .filter(tick -> BEGINS.contains(tick.kind()))
                    .filter(tick -> all.stream().noneMatch(one -> undoes(one, tick)))
                    .map(Tick::at)
                    .min(Instant::compareTo)
                    .ifPresent(
                        at -> tested.put(java.util.Objects.requireNonNull(byTask.get(task)), at)));
    return tested;
  }

  private static boolean undoes(Tick one, Tick tick) {
    return one.undoes().equals(Optional.of(tick.id()));
  }

  private Outcome enter(Tx tx, House house, LocalDate day, Entry entry) {
    kitchens.lock(tx, house.id());
    TickStore.Origin origin = entry.origin();
    Optional<BathStore.Entered> before =
        store.find(tx, house.id(), origin.device(), origin.sequence());
    if (before.isPresent()) {
      return new Taken(before.get().entry(), before.get().change(), true);
    }
    Optional<UUID> taken = entry.id().filter(id -> store.has(tx, house.id(), id));
    if (taken.isPresent()) {
      return new Refused(Message.of("tick.refused.id-taken", taken.get()));
    }
    Outcome outcome = enterOn(tx, house, day, entry);
    // Work at a bath does not end with the clock.
    return outcome instanceof Unknown ? enterOn(tx, house, day.minusDays(1), entry) : outcome;
  }

  private Outcome enterOn(Tx tx, House house, LocalDate day, Entry entry) {
    Optional<InForce> inForce =
        plans.inForce(tx, house, day).map(plan -> plans.inForce(tx, house, plan));
    if (inForce.isEmpty()) {
      return new Unknown(day.toString());
    }
    BathBoard board = board(tx, house, inForce.get());
    BathRules rules = new BathRules(board, desk.now());
    BathRules.Found found = rules.find(entry);
    if (found.unknown().isPresent()) {
      return new Unknown(found.unknown().get());
    }
    Optional<FoundTask> task =
        found.run().flatMap(run -> starting.find(tx, house, day, BathBoard.task(run)));
    Optional<Message> because =
        task.flatMap(of -> refused(tx, house, entry, of))
            .or(() -> overdue(tx, house, day, entry, found))
            .or(() -> rules.refused(entry, found))
            .or(() -> tubs.refuses(tx, house, inForce.get(), entry, found));
    if (because.isPresent()) {
      return new Refused(because.get());
    }
    Optional<Message> worn = rules.worn(entry, found);
    if (worn.isPresent()) {
      return new Worn(worn.get());
    }
    BathEntry kept = rules.entry(entry, found);
    UUID plan = task.map(FoundTask::plan).orElse(inForce.get().plan()).id();
    KitchenStore.News news =
        KitchenStore.News.note("bath", kept.bath().label(), detail(kept), kept.cook());
    long change = kitchens.change(tx, house.id(), news, kept.at());
    TickStore.Origin origin = entry.origin();
    store.add(
        tx,
        house.id(),
        new BathStore.Entered(kept, plan, origin.sequence(), origin.offsetMinutes(), change));
    tubs.follow(tx, house, inForce.get(), found.basin().orElseThrow(), kept, change);
    task.ifPresent(of -> start(tx, house, entry, kept, of, found.basin().orElseThrow()));
    return new Taken(kept, change, false);
  }

  /** Why the run takes no more of these. */
  private Optional<Message> refused(Tx tx, House house, Entry entry, FoundTask task) {
    boolean goesOn = entry.kind() == BathEntry.Kind.DROP || entry.kind() == BathEntry.Kind.BROKE;
    if (goesOn && starting.isLost(tx, house, task)) {
      return Optional.of(Message.of("tick.refused.make-failed"));
    }
    if (entry.kind() == BathEntry.Kind.DROP) {
      Ticking.Entry start =
          tick(entry, Optional.empty(), task.task().id(), Tick.Kind.START, Optional.empty());
      Optional<Message> held = starting.held(tx, house, task, start);
      if (held.isPresent()) {
        return held;
      }
    }
    boolean moves = goesOn || entry.kind() == BathEntry.Kind.UNDO;
    return switch (starting.progress(tx, house, task.task().id()).state()) {
      case DONE -> moves ? Optional.of(Message.of("bath.refused.run-done")) : Optional.empty();
      case FAILED -> moves ? Optional.of(Message.of("tick.refused.failed")) : Optional.empty();
      case PROBLEM ->
          entry.kind() == BathEntry.Kind.DROP
              ? Optional.of(Message.of("tick.refused.problem"))
              : Optional.empty();
      case TO_DO, ON_IT, PART_DONE -> Optional.empty();
    };
  }

  /** Why nothing of the run can go in any more, when nobody has begun with its test piece. */
  private Optional<Message> overdue(
      Tx tx, House house, LocalDate day, Entry entry, BathRules.Found found) {
    return found
        .run()
        .filter(run -> entry.kind() == BathEntry.Kind.DROP)
        .filter(run -> !hasBegun(tx, house, run))
        .flatMap(run -> starting.find(tx, house, day, BathBoard.testTask(run)))
        .flatMap(
            test ->
                starting.overdue(
                    tx,
                    house,
                    test,
                    tick(
                        entry,
                        Optional.empty(),
                        test.task().id(),
                        Tick.Kind.START,
                        Optional.empty())));
  }

  private boolean hasBegun(Tx tx, House house, PrepSheet.BathRun run) {
    return starting.progress(tx, house, BathBoard.task(run)).state() != TaskState.TO_DO;
  }

  private void start(
      Tx tx, House house, Entry entry, BathEntry kept, FoundTask task, BathBoard.Basin before) {
    String id = task.task().id();
    if (kept.kind() == BathEntry.Kind.DROP) {
      starting.start(tx, house, task, start(entry, kept.id(), id));
    }
    if (kept.kind() == BathEntry.Kind.UNDO && !goesOn(before, kept)) {
      starting
          .progress(tx, house, id)
          .last()
          .map(Tick::id)
          .filter(startsOf(before, kept)::contains)
          .ifPresent(start -> starting.takeStartBack(tx, house, task, back(entry, start, id)));
    }
  }

  /** Whether pieces of the run have gone in beside those that are taken back. */
  private static boolean goesOn(BathBoard.Basin before, BathEntry undo) {
    return before.live().dropsOf(undo.run().orElse("")).stream()
        .anyMatch(drop -> !undo.undoes().equals(Optional.of(drop.id())));
  }

  /** The ticks that any drop of the run, also one that was taken back, can have started it with. */
  private static Set<UUID> startsOf(BathBoard.Basin before, BathEntry undo) {
    return before.entered().stream()
        .map(BathStore.Entered::entry)
        .filter(one -> one.kind() == BathEntry.Kind.DROP && one.run().equals(undo.run()))
        .map(drop -> startOf(drop.id()))
        .collect(Collectors.toSet());
  }

  private static Ticking.Entry start(Entry entry, UUID drop, String task) {
    return tick(entry, Optional.of(startOf(drop)), task, Tick.Kind.START, Optional.empty());
  }

  private static Ticking.Entry back(Entry entry, UUID start, String task) {
    return tick(entry, Optional.empty(), task, Tick.Kind.UNDO, Optional.of(start));
  }

  private static Ticking.Entry tick(
      Entry entry, Optional<UUID> id, String task, Tick.Kind kind, Optional<UUID> undoes) {
    TickStore.Origin origin = entry.origin();
    // A number of its own: the device counts its ticks and its entries at baths apart.
    UUID device = named("device", origin.device());
    return new Ticking.Entry(
        id,
        task,
        kind,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        entry.cook(),
        undoes,
        new TickStore.Origin(device, origin.sequence(), origin.time(), origin.offsetMinutes()));
  }

  /** The tick that a drop has started its task with. */
  private static UUID startOf(UUID drop) {
    return named("start", drop);
  }

  private static UUID named(String what, UUID of) {
    return UUID.nameUUIDFromBytes(("bath/" + what + "/" + of).getBytes(StandardCharsets.UTF_8));
  }

  /** An entry for the log. */
  private static String detail(BathEntry entry) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("entry", entry.id().toString());
    node.put("kind", entry.kind().name().toLowerCase(Locale.ROOT));
    node.put("formula", entry.bath().formula());
    node.put("day", entry.bath().day().toString());
    entry.run().ifPresent(run -> node.put("run", run));
    entry.drop().ifPresent(drop -> node.put("drop", drop.toString()));
    entry.pieces().ifPresent(pieces -> node.put("pieces", pieces));
    entry.millimetres().ifPresent(mm -> node.put("millimetres", mm));
    entry.fresh().ifPresent(fresh -> node.put("fresh", fresh));
    entry.rule().ifPresent(rule -> node.put("rule", rule.name().toLowerCase(Locale.ROOT)));
    entry.tub().ifPresent(tub -> node.put("tub", tub));
    entry.note().ifPresent(note -> node.put("note", note));
    entry.undoes().ifPresent(undoes -> node.put("undoes", undoes.toString()));
    return node.toString();
  }
}
