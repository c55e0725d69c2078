package halfgram.prep;

import static halfgram.db.schema.Tables.GATE_ENTRY;

import halfgram.db.Keys;
import halfgram.db.Tx;
import halfgram.db.schema.tables.records.GateEntryRecord;
import halfgram.formula.Gate;
import halfgram.measure.Amount;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;

/** What was said at gates; append-only, unique by device and sequence. */
public final class GateStore {

  /**
   * An entry as stored.
   *
   * @param later when and by whom it was entered, if that was not when it was said
   */
  public record Entered(
      GateEntry entry,
      UUID plan,
      TickStore.Origin origin,
      long change,
      Optional<TickStore.Later> later) {}

  /** The entry that a device made under a number. */
  public Optional<Entered> find(Tx tx, UUID kitchen, UUID device, long sequence) {
    return tx.sql()
        .selectFrom(GATE_ENTRY)
        .where(GATE_ENTRY.KITCHEN_ID.eq(kitchen))
        .and(GATE_ENTRY.DEVICE_ID.eq(device))
        .and(GATE_ENTRY.DEVICE_SEQUENCE.eq(sequence))
        .fetchOptional(GateStore::entered);
  }

  public Optional<Entered> findById(Tx tx, UUID kitchen, UUID id) {
    return tx.sql()
        .selectFrom(GATE_ENTRY)
        .where(GATE_ENTRY.KITCHEN_ID.eq(kitchen))
        .and(GATE_ENTRY.ID.eq(id))
        .fetchOptional(GateStore::entered);
  }

  /** Adds an entry; that its device has not made it before was found out under the lock. */
  public void add(Tx tx, UUID kitchen, Entered entered) {
    GateEntry entry = entered.entry();
    tx.sql()
        .insertInto(GATE_ENTRY)
        .set(GATE_ENTRY.KITCHEN_ID, kitchen)
        .set(GATE_ENTRY.ID, entry.id())
        .set(GATE_ENTRY.PLAN_ID, entered.plan())
        .set(GATE_ENTRY.KIND, entry.kind().name())
        .set(GATE_ENTRY.TASK, entry.of().task())
        .set(GATE_ENTRY.MAKE, entry.of().make())
        .set(GATE_ENTRY.FORMULA, entry.of().formula())
        .set(GATE_ENTRY.VERSION, entry.of().version())
        .set(GATE_ENTRY.STEP, entry.of().step())
        .set(GATE_ENTRY.BASIS, entry.of().basis().number())
        .set(GATE_ENTRY.SAID, said(entry.said()))
        .set(GATE_ENTRY.ADDED, added(entry.added()))
        .set(GATE_ENTRY.LINE, entry.line().orElse(null))
        .set(GATE_ENTRY.NOTE, entry.note().orElse(null))
        .set(GATE_ENTRY.COOK, entry.cook())
        .set(GATE_ENTRY.DEVICE_ID, entered.origin().device())
        .set(GATE_ENTRY.DEVICE_SEQUENCE, entered.origin().sequence())
        .set(GATE_ENTRY.DEVICE_TIME, entered.origin().time())
        .set(GATE_ENTRY.DEVICE_OFFSET_MINUTES, entered.origin().offsetMinutes())
        .set(GATE_ENTRY.SERVER_TIME, entered.later().map(TickStore.Later::came).orElse(entry.at()))
        .set(GATE_ENTRY.SAID_TIME, entered.later().map(later -> entry.at()).orElse(null))
        .set(GATE_ENTRY.SAID_BY, entered.later().map(TickStore.Later::by).orElse(null))
        .set(GATE_ENTRY.UNDOES, entry.undoes().orElse(null))
        .set(GATE_ENTRY.CHANGE_NUMBER, entered.change())
        .execute();
  }

  /** Entries of several tasks, each in the order they were made. */
  public Map<String, List<GateEntry>> listOfTasks(Tx tx, UUID kitchen, Collection<String> tasks) {
    Map<String, List<GateEntry>> byTask = new LinkedHashMap<>();
    tx.sql()
        .selectFrom(GATE_ENTRY)
        .where(Keys.in(GATE_ENTRY.KITCHEN_ID, kitchen, GATE_ENTRY.TASK, tasks))
        .orderBy(GATE_ENTRY.CHANGE_NUMBER)
        .forEach(
            row ->
                byTask
                    .computeIfAbsent(row.getTask(), task -> new ArrayList<>())
                    .add(entered(row).entry()));
    return byTask;
  }

  /** What came since then, in the order it came. */
  public List<Entered> listSince(Tx tx, UUID kitchen, Instant from) {
    return tx.sql()
        .selectFrom(GATE_ENTRY)
        .where(GATE_ENTRY.KITCHEN_ID.eq(kitchen))
        .and(GATE_ENTRY.SERVER_TIME.ge(from))
        .orderBy(GATE_ENTRY.CHANGE_NUMBER)
        .fetch(GateStore::entered);
  }

  /** Entries of one task, in the order they were made. */
  public List<GateEntry> listOfTask(Tx tx, UUID kitchen, String task) {
    return listOfTasks(tx, kitchen, List.of(task)).getOrDefault(task, List.of());
  }

  /** What was said of batches of one version, in the order it was said. */
  public List<GateEntry> listOfVersion(Tx tx, UUID kitchen, String formula, int version) {
    return tx.sql()
        .selectFrom(GATE_ENTRY)
        .where(GATE_ENTRY.KITCHEN_ID.eq(kitchen))
        .and(GATE_ENTRY.FORMULA.eq(formula))
        .and(GATE_ENTRY.VERSION.eq(version))
        .orderBy(GATE_ENTRY.CHANGE_NUMBER)
        .fetch(row -> entered(row).entry());
  }

  private static String said(Map<Gate.Check, String> said) {
    return said.entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .map(one -> one.getKey().word() + " " + one.getValue())
        .collect(Collectors.joining("; "));
  }

  private static String added(List<GateEntry.Added> added) {
    return added.stream()
        .map(one -> one.item() + " " + one.amount().number().toPlainString())
        .collect(Collectors.joining("; "));
  }

  /** "salt 3; water 10" as pairs. */
  private static List<String[]> pairs(String text) {
    return text.isEmpty()
        ? List.of()
        : java.util.Arrays.stream(text.split("; ", -1)).map(one -> one.split(" ", 2)).toList();
  }

  private static Entered entered(GateEntryRecord row) {
    Map<Gate.Check, String> said = new EnumMap<>(Gate.Check.class);
    pairs(row.getSaid())
        .forEach(one -> Gate.Check.find(one[0]).ifPresent(check -> said.put(check, one[1])));
    GateEntry entry =
        new GateEntry(
            row.getId(),
            GateEntry.Kind.valueOf(row.getKind()),
            new GateEntry.Of(
                row.getTask(),
                row.getMake(),
                row.getFormula(),
                row.getVersion(),
                row.getStep(),
                Amount.grams(row.getBasis())),
            said,
            pairs(row.getAdded()).stream()
                .map(one -> new GateEntry.Added(one[0], Amount.grams(new BigDecimal(one[1]))))
                .toList(),
            Optional.ofNullable(row.getLine()),
            Optional.ofNullable(row.getNote()),
            row.getCook(),
            Optional.ofNullable(row.getSaidTime()).orElse(row.getServerTime()),
            Optional.ofNullable(row.getUndoes()));
    return new Entered(
        entry,
        row.getPlanId(),
        new TickStore.Origin(
            row.getDeviceId(),
            row.getDeviceSequence(),
            row.getDeviceTime(),
            row.getDeviceOffsetMinutes()),
        row.getChangeNumber(),
        Optional.ofNullable(row.getSaidBy())
            .map(by -> new TickStore.Later(row.getServerTime(), by)));
  }
}
