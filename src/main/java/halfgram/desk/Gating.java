package halfgram.desk;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.db.Tx;
import halfgram.formula.Gate;
import halfgram.kitchen.KitchenStore;
import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.Message;
import halfgram.measure.Rounding;
import halfgram.prep.GateEntry;
import halfgram.prep.GateProgress;
import halfgram.prep.GateStore;
import halfgram.prep.Make;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.prep.Tick;
import halfgram.prep.TickStore;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * Takes what is said at test pieces and tastings, and what becomes of parts held back to taste.
 *
 * <p>What was added comes out of the tubs it came from ({@link TasteTubs}).
 *
 * <p>Rules. An entry that its device has sent before changes nothing and gets the same answer. One
 * that {@link GateRules} refuse is not kept, and whoever sent it is told why. Of a batch that has
 * failed nobody says go, and nothing is added to it. Fail loses the batch by the same tick that a
 * cook would give, and undoing it takes that tick back. What is entered later says a time of its
 * day that has been, not before its task was begun nor before what was said at the gate before it.
 */
public final class Gating {

  /**
   * An entry as sent; the moment comes here.
   *
   * @param when it was said, for what is entered later; empty: now
   */
  public record Entry(
      Optional<UUID> id,
      GateEntry.Kind kind,
      String task,
      Map<Gate.Check, String> said,
      List<GateEntry.Added> added,
      Optional<String> line,
      Optional<String> note,
      String cook,
      Optional<UUID> undoes,
      TickStore.Origin origin,
      Optional<Said> when) {

    /** One that is entered as it is said. */
    public Entry(
        Optional<UUID> id,
        GateEntry.Kind kind,
        String task,
        Map<Gate.Check, String> said,
        List<GateEntry.Added> added,
        Optional<String> line,
        Optional<String> note,
        String cook,
        Optional<UUID> undoes,
        TickStore.Origin origin) {
      this(id, kind, task, said, added, line, note, cook, undoes, origin, Optional.empty());
    }

    /** The same, said at another time than now. */
    public Entry saying(Said other) {
      return new Entry(
          id, kind, task, said, added, line, note, cook, undoes, origin, Optional.of(other));
    }
  }

  /** What became of it. */
  public sealed interface Outcome permits Taken, Refused, Unknown {}

  /**
   * It is kept, now or before.
   *
   * @param repeated whether it was here before
   */
  public record Taken(GateEntry entry, long change, boolean repeated) implements Outcome {}

  /** A rule does not let it. */
  public record Refused(Message because) implements Outcome {}

  /** There is no such task or entry. */
  public record Unknown(String what) implements Outcome {}

  private final Desk desk;
  private final Ticking ticking;
  private final Starting starting;
  private final KitchenStore kitchens = new KitchenStore();
  private final GateStore store = new GateStore();
  private final TasteTubs tubs = new TasteTubs();

  public Gating(Desk desk, Ticking ticking) {
    this.desk = desk;
    this.ticking = ticking;
    this.starting = ticking.starting();
  }

  /** What was said at some tasks, each in the order it was said. */
  public Map<String, List<GateEntry>> list(House house, Collection<String> tasks) {
    return desk.remembered(
        house,
        new OfTasks(Set.copyOf(tasks)),
        Memory.AfterTick.same(),
        tx -> store.listOfTasks(tx, house.id(), tasks));
  }

  /** Gates of these tasks, by name. */
  private record OfTasks(Set<String> tasks) {}

  /** What was said of batches of one version. */
  public List<GateEntry> listOfVersion(House house, String formula, int version) {
    return desk.read(tx -> store.listOfVersion(tx, house.id(), formula, version));
  }

  /** Takes an entry about a task of a day. */
  public Outcome enter(House house, LocalDate day, Entry entry) {
    return desk.write(
        house,
        tx -> enter(tx, house, day, entry),
        outcome -> outcome instanceof Taken taken && !taken.repeated() ? taken.change() : 0);
  }

  /** As {@link #enter(House, LocalDate, Entry)}, as part of something more. */
  Outcome enter(Tx tx, House house, LocalDate day, Entry entry) {
    kitchens.lock(tx, house.id());
    TickStore.Origin origin = entry.origin();
    Optional<GateStore.Entered> before =
        store.find(tx, house.id(), origin.device(), origin.sequence());
    if (before.isPresent()) {
      return new Taken(before.get().entry(), before.get().change(), true);
    }
    Optional<UUID> taken = entry.id().filter(id -> store.findById(tx, house.id(), id).isPresent());
    if (taken.isPresent()) {
      return new Refused(Message.of("tick.refused.id-taken", taken.get()));
    }
    Optional<GateStore.Entered> back =
        entry.undoes().flatMap(id -> store.findById(tx, house.id(), id));
    Optional<GateEntry> undone = back.map(GateStore.Entered::entry);
    if (entry.kind() == GateEntry.Kind.UNDO && undone.isEmpty()) {
      return new Unknown(entry.undoes().map(UUID::toString).orElse(""));
    }
    String id = undone.map(one -> one.of().task()).orElse(entry.task());
    Optional<FoundTask> found = starting.find(tx, house, day, id);
    if (found.isEmpty()) {
      return new Unknown(id);
    }
    List<GateEntry> entries = store.listOfTask(tx, house.id(), id);
    GateRules rules = new GateRules(house, entries);
    Optional<Message> ruled =
        entry
            .when()
            .flatMap(when -> untimely(tx, house, found.get(), entry, entries))
            .or(
                () ->
                    rules.refused(
                        entry, found.get().task(), undone, goesOn(tx, house, found.get())))
            .or(() -> lost(tx, house, found.get(), entry.kind()));
    List<Movement> given =
        entry.kind() == GateEntry.Kind.UNDO
            ? back.map(of -> tubs.taken(tx, house, of)).orElse(List.of())
            : List.of();
    Optional<Message> because =
        ruled.or(
            () ->
                tubs.findCombined(tx, house, given)
                    .map(tub -> Message.of("tick.refused.tub-combined", tub.lot().code())));
    if (because.isPresent()) {
      return new Refused(because.get());
    }
    Optional<Message> failing = tick(tx, house, day, entry, id, undone);
    return failing.isPresent()
        ? new Refused(failing.get())
        : keep(tx, house, entry, found.get(), undone, given);
  }

  /** Why it cannot have been said at the time it says. */
  private Optional<Message> untimely(
      Tx tx, House house, FoundTask found, Entry entry, List<GateEntry> entries) {
    Instant at = entry.when().orElseThrow().at();
    if (entry.kind() == GateEntry.Kind.UNDO) {
      return Optional.of(Message.of("tick.refused.time-undo"));
    }
    Optional<Instant> begun =
        starting.progress(tx, house, found.task().id()).onIt().map(TaskProgress.OnIt::since);
    Optional<Instant> before = GateProgress.fold(entries).last().map(GateEntry::at);
    return SaidTimes.outside(desk, house, found, at)
        .or(
            () ->
                begun
                    .filter(at::isBefore)
                    .map(since -> Message.of("tick.refused.time-before-start", since)))
        .or(
            () ->
                before
                    .filter(last -> entry.kind().isVerdict() && at.isBefore(last))
                    .map(last -> Message.of("gate.refused.time-before", last)));
  }

  /** The work behind the gate that has begun: it rests on what was said. */
  private Optional<Task> goesOn(Tx tx, House house, FoundTask found) {
    return GateLock.find(found.task()).stream()
        .flatMap(
            at ->
                found.others().stream().filter(other -> GateLock.holds(other, at, Tick.Kind.START)))
        .filter(other -> starting.progress(tx, house, other.id()).last().isPresent())
        .findFirst()
        .or(
            () ->
                Optional.of(found.task())
                    .filter(task -> !starting.progress(tx, house, task.id()).dones().isEmpty()));
  }

  /** That nothing is said of a batch any more that has failed, nor added to it. */
  private Optional<Message> lost(Tx tx, House house, FoundTask found, GateEntry.Kind kind) {
    if (kind != GateEntry.Kind.GO && kind != GateEntry.Kind.ADJUST) {
      return Optional.empty();
    }
    if (starting.progress(tx, house, found.task().id()).state() == TaskState.FAILED) {
      return Optional.of(Message.of("tick.refused.failed"));
    }
    return starting.isLost(tx, house, found)
        ? Optional.of(Message.of("tick.refused.make-failed"))
        : Optional.empty();
  }

  /** Loses the batch, or takes that back; why that cannot be, when it cannot. */
  private Optional<Message> tick(
      Tx tx, House house, LocalDate day, Entry entry, String task, Optional<GateEntry> undone) {
    boolean back = undone.filter(one -> one.kind() == GateEntry.Kind.FAIL).isPresent();
    if (entry.kind() != GateEntry.Kind.FAIL && !back) {
      return Optional.empty();
    }
    UUID id = entry.id().orElseGet(() -> ofEntry(entry));
    Ticking.Entry tick =
        new Ticking.Entry(
            back ? Optional.empty() : Optional.of(failing(id)),
            task,
            back ? Tick.Kind.UNDO : Tick.Kind.FAILED,
            Optional.empty(),
            Optional.empty(),
            entry.note(),
            entry.cook(),
            undone.map(one -> failing(one.id())),
            new TickStore.Origin(
                named("device", entry.origin().device()),
                entry.origin().sequence(),
                entry.origin().time(),
                entry.origin().offsetMinutes()));
    Ticking.Outcome outcome =
        ticking.tick(tx, house, day, entry.when().map(tick::saying).orElse(tick));
    return outcome instanceof Ticking.Refused refused
        ? Optional.of(refused.because())
        : Optional.empty();
  }

  private Outcome keep(
      Tx tx,
      House house,
      Entry entry,
      FoundTask found,
      Optional<GateEntry> undone,
      List<Movement> back) {
    Task task = found.task();
    Make make = task.make();
    GateEntry kept =
        new GateEntry(
            entry.id().orElseGet(() -> ofEntry(entry)),
            entry.kind(),
            new GateEntry.Of(
                task.id(),
                make.id(),
                make.version().formula(),
                make.version().number(),
                task.step().code(),
                make.scaled().basis().rounded(Rounding.TO_MICROGRAM)),
            entry.said(),
            entry.kind() == GateEntry.Kind.ADJUST ? entry.added() : List.of(),
            entry.line().or(() -> undone.flatMap(GateEntry::line)),
            entry.note(),
            entry.cook(),
            entry.when().map(Said::at).orElseGet(desk::now),
            undone.map(GateEntry::id));
    Optional<TickStore.Later> later =
        entry.when().map(when -> new TickStore.Later(desk.now(), when.by()));
    Map<Tub, Amount> taken = tubs.of(tx, house, entry, make);
    String detail = detail(kept, undone, later);
    // What comes out of a tub without the plan knowing may be lacking elsewhere: that is a fact.
    KitchenStore.News news =
        taken.isEmpty() && back.isEmpty()
            ? KitchenStore.News.note("gate", task.id(), detail, kept.cook())
            : KitchenStore.News.fact("gate", task.id(), detail, kept.cook());
    long change = kitchens.change(tx, house.id(), news, desk.now());
    tubs.take(tx, house, taken, kept, make, change);
    tubs.giveBack(tx, house, back, kept, change);
    store.add(
        tx,
        house.id(),
        new GateStore.Entered(kept, found.plan().id(), entry.origin(), change, later));
    return new Taken(kept, change, false);
  }

  /** An id for an entry whose device made none: the same for the same press. */
  private static UUID ofEntry(Entry entry) {
    return named("entry/" + entry.origin().sequence(), entry.origin().device());
  }

  /** The tick that a fail has lost its batch with. */
  private static UUID failing(UUID entry) {
    return named("failed", entry);
  }

  private static UUID named(String what, UUID of) {
    return UUID.nameUUIDFromBytes(("gate/" + what + "/" + of).getBytes(StandardCharsets.UTF_8));
  }

  /** An entry for the log. */
  private static String detail(
      GateEntry entry, Optional<GateEntry> undone, Optional<TickStore.Later> later) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("entry", entry.id().toString());
    node.put("kind", entry.kind().name().toLowerCase(Locale.ROOT));
    node.put("formula", entry.of().formula());
    node.put("step", entry.of().step());
    ObjectNode said = node.putObject("said");
    entry.said().forEach((check, word) -> said.put(check.word(), word));
    ArrayNode added = node.putArray("added");
    entry
        .added()
        .forEach(
            one ->
                added
                    .addObject()
                    .put("item", one.item())
                    .put("grams", one.amount().number().stripTrailingZeros().toPlainString()));
    entry.line().ifPresent(line -> node.put("line", line));
    entry.note().ifPresent(note -> node.put("note", note));
    undone.ifPresent(one -> node.put("undoes", one.id().toString()));
    later.ifPresent(of -> node.put("doneAt", entry.at().toString()).put("enteredBy", of.by()));
    return node.toString();
  }
}
