package halfgram.lot;

import static halfgram.db.schema.Tables.BATH_ENTRY;
import static halfgram.db.schema.Tables.GATE_ENTRY;
import static halfgram.db.schema.Tables.MOVEMENT;
import static halfgram.db.schema.Tables.TICK;

import halfgram.db.Keys;
import halfgram.db.Tx;
import java.time.Instant;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.UUID;
import org.jooq.Condition;
import org.jooq.impl.DSL;

/** The ledger across tubs: what belongs to one change, what was lost, what was dipped into. */
public final class LedgerStore {
  private static final halfgram.db.schema.tables.Movement UNDONE = MOVEMENT.as("undone");

  /** That nothing takes a movement back. */
  private static final Condition STANDING =
      DSL.notExists(
          DSL.selectOne()
              .from(UNDONE)
              .where(UNDONE.KITCHEN_ID.eq(MOVEMENT.KITCHEN_ID))
              .and(UNDONE.LOT_ID.eq(MOVEMENT.LOT_ID))
              .and(UNDONE.UNDOES.eq(MOVEMENT.CHANGE_NUMBER)));

  /** The entry by which a bath was filled, and one that takes an entry back. */
  private static final halfgram.db.schema.tables.BathEntry FILL = BATH_ENTRY.as("fill");

  private static final halfgram.db.schema.tables.BathEntry BACK = BATH_ENTRY.as("back");

  /** That pieces went into the bath that was filled so, and nobody took that back. */
  private static final Condition DROPPED_IN =
      BATH_ENTRY
          .KITCHEN_ID
          .eq(FILL.KITCHEN_ID)
          .and(BATH_ENTRY.KIND.eq("DROP"))
          .and(BATH_ENTRY.FORMULA.eq(FILL.FORMULA))
          .and(BATH_ENTRY.BUSINESS_DAY.eq(FILL.BUSINESS_DAY))
          .and(BATH_ENTRY.LABEL.eq(DSL.coalesce(FILL.FRESH, FILL.LABEL)))
          .and(
              DSL.notExists(
                  DSL.selectOne()
                      .from(BACK)
                      .where(BACK.KITCHEN_ID.eq(BATH_ENTRY.KITCHEN_ID))
                      .and(BACK.UNDOES.eq(BATH_ENTRY.ID))));

  /** A movement with the tub it happened to. */
  public record Entry(Tub tub, Movement movement) {}

  private final LotStore lots = new LotStore();

  /** Whether a movement of this id is kept. */
  public boolean has(Tx tx, UUID kitchen, UUID id) {
    return tx.sql()
        .fetchExists(
            tx.sql()
                .selectFrom(MOVEMENT)
                .where(MOVEMENT.KITCHEN_ID.eq(kitchen))
                .and(MOVEMENT.ID.eq(id)));
  }

  /** What happened to tubs by one change. */
  public List<Movement> listOfChange(Tx tx, UUID kitchen, long change) {
    return LotStore.movements(tx, kitchen, MOVEMENT.CHANGE_NUMBER.eq(change));
  }

  /** Codes of the tubs that a change filled out of another. */
  public List<String> listSplit(Tx tx, UUID kitchen, long change) {
    List<UUID> ids =
        listOfChange(tx, kitchen, change).stream()
            .filter(row -> row.kind() == Movement.Kind.SPLIT && row.amount().isPositive())
            .map(Movement::lot)
            .toList();
    return ids.isEmpty()
        ? List.of()
        : lots.listOfIds(tx, kitchen, ids).stream()
            .map(tub -> tub.lot().code())
            .sorted(Comparator.comparing(String::length).thenComparing(Comparator.naturalOrder()))
            .toList();
  }

  /** What these changes used out of tubs and was not taken back. */
  public List<Movement> listUsed(Tx tx, UUID kitchen, List<Long> changes) {
    Condition used = MOVEMENT.KIND.eq(Movement.Kind.USED.name()).and(STANDING);
    Condition of = Keys.in(MOVEMENT.KITCHEN_ID, kitchen, MOVEMENT.CHANGE_NUMBER, changes);
    return changes.isEmpty() ? List.of() : LotStore.movements(tx, kitchen, of.and(used));
  }

  /**
   * The tubs that a make has used: its tasks, what was added to it to taste, and the baths its
   * pieces went into.
   */
  public List<Tub> listUsedBy(Tx tx, UUID kitchen, String make) {
    SortedSet<Long> changes = new TreeSet<>();
    changes.addAll(
        tx.sql()
            .select(TICK.CHANGE_NUMBER)
            .from(TICK)
            .where(TICK.KITCHEN_ID.eq(kitchen))
            .and(TICK.TASK.startsWith(make + "/"))
            .fetch(TICK.CHANGE_NUMBER));
    changes.addAll(
        tx.sql()
            .select(GATE_ENTRY.CHANGE_NUMBER)
            .from(GATE_ENTRY)
            .where(GATE_ENTRY.KITCHEN_ID.eq(kitchen))
            .and(GATE_ENTRY.TASK.startsWith(make + "/"))
            .fetch(GATE_ENTRY.CHANGE_NUMBER));
    changes.addAll(
        tx.sql()
            .select(FILL.CHANGE_NUMBER)
            .from(BATH_ENTRY)
            .join(FILL)
            .on(DROPPED_IN)
            .where(BATH_ENTRY.KITCHEN_ID.eq(kitchen))
            .and(BATH_ENTRY.RUN.eq(make))
            .fetch(FILL.CHANGE_NUMBER));
    List<UUID> ids =
        listUsed(tx, kitchen, List.copyOf(changes)).stream().map(Movement::lot).distinct().toList();
    return lots.listOfIds(tx, kitchen, ids);
  }

  /** Ids of the makes that have used some of a tub, in the same ways. */
  public List<String> listMakesUsing(Tx tx, UUID kitchen, UUID lot) {
    Condition used =
        MOVEMENT
            .KITCHEN_ID
            .eq(kitchen)
            .and(MOVEMENT.LOT_ID.eq(lot))
            .and(MOVEMENT.KIND.eq(Movement.Kind.USED.name()))
            .and(STANDING);
    SortedSet<String> makes = new TreeSet<>();
    tx.sql()
        .select(TICK.TASK)
        .from(MOVEMENT)
        .join(TICK)
        .on(TICK.KITCHEN_ID.eq(MOVEMENT.KITCHEN_ID))
        .and(TICK.ID.eq(MOVEMENT.TICK_ID))
        .where(used)
        .fetch(TICK.TASK)
        .forEach(task -> makes.add(make(task)));
    makes.addAll(
        tx.sql()
            .select(GATE_ENTRY.MAKE)
            .from(MOVEMENT)
            .join(GATE_ENTRY)
            .on(GATE_ENTRY.KITCHEN_ID.eq(MOVEMENT.KITCHEN_ID))
            .and(GATE_ENTRY.CHANGE_NUMBER.eq(MOVEMENT.CHANGE_NUMBER))
            .where(used)
            .fetch(GATE_ENTRY.MAKE));
    makes.addAll(
        tx.sql()
            .select(BATH_ENTRY.RUN)
            .from(MOVEMENT)
            .join(FILL)
            .on(FILL.KITCHEN_ID.eq(MOVEMENT.KITCHEN_ID))
            .and(FILL.CHANGE_NUMBER.eq(MOVEMENT.CHANGE_NUMBER))
            .join(BATH_ENTRY)
            .on(DROPPED_IN)
            .where(used)
            .fetch(BATH_ENTRY.RUN));
    return List.copyOf(makes);
  }

  /** The make of a task: formula, service and number. */
  public static String make(String task) {
    String[] parts = task.split("/", 4);
    return String.join("/", Arrays.asList(parts).subList(0, Math.min(3, parts.length)));
  }

  /** What was lost from one moment until before another and was not taken back, oldest first. */
  public List<Entry> listLost(Tx tx, UUID kitchen, Instant from, Instant until) {
    List<String> lost =
        Arrays.stream(Movement.Kind.values()).filter(Movement.Kind::loses).map(Enum::name).toList();
    Condition between = MOVEMENT.AT.ge(from).and(MOVEMENT.AT.lt(until));
    return entries(tx, kitchen, MOVEMENT.KIND.in(lost).and(between).and(STANDING));
  }

  /**
   * What was taken since a change of what is kept for events, below zero, and what was found again,
   * oldest first; nothing that was taken back.
   */
  public List<Entry> listDipped(Tx tx, UUID kitchen, long after) {
    Condition undoing =
        DSL.exists(
            DSL.selectOne()
                .from(UNDONE)
                .where(UNDONE.KITCHEN_ID.eq(MOVEMENT.KITCHEN_ID))
                .and(UNDONE.LOT_ID.eq(MOVEMENT.LOT_ID))
                .and(UNDONE.CHANGE_NUMBER.eq(MOVEMENT.CHANGE_NUMBER))
                .and(UNDONE.UNDOES.isNotNull()));
    return entries(
        tx,
        kitchen,
        MOVEMENT
            .KIND
            .eq(Movement.Kind.DIPPED.name())
            .and(MOVEMENT.CHANGE_NUMBER.gt(after))
            .and(STANDING)
            .andNot(undoing));
  }

  /** What was counted at or after a moment and was not taken back, oldest first. */
  public List<Entry> listCounted(Tx tx, UUID kitchen, Instant from) {
    Condition counted = MOVEMENT.KIND.eq(Movement.Kind.COUNTED.name()).and(MOVEMENT.AT.ge(from));
    return entries(tx, kitchen, counted.and(STANDING));
  }

  /**
   * What a service was assumed to use, below zero, where nobody took it back.
   *
   * @param from a moment before its end
   */
  public List<Entry> listAssumed(Tx tx, UUID kitchen, String service, Instant from) {
    Condition assumed = MOVEMENT.KIND.eq(Movement.Kind.ASSUMED.name()).and(MOVEMENT.AT.ge(from));
    return entries(tx, kitchen, assumed.and(MOVEMENT.REASON.eq(service)).and(STANDING));
  }

  private List<Entry> entries(Tx tx, UUID kitchen, Condition which) {
    List<Movement> movements = LotStore.movements(tx, kitchen, which);
    if (movements.isEmpty()) {
      return List.of();
    }
    List<UUID> ids = movements.stream().map(Movement::lot).distinct().toList();
    List<Tub> tubs = lots.listOfIds(tx, kitchen, ids);
    return movements.stream()
        .map(
            one ->
                new Entry(
                    tubs.stream()
                        .filter(tub -> tub.id().equals(one.lot()))
                        .findFirst()
                        .orElseThrow(),
                    one))
        .toList();
  }
}
