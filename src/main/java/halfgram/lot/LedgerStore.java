package halfgram.lot;

import static halfgram.db.schema.Tables.MOVEMENT;
import static halfgram.db.schema.Tables.TICK;

import halfgram.db.Keys;
import halfgram.db.Tx;
import java.time.Instant;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
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

  /** Ids of the tasks that have used some of a tub. */
  public List<String> listTasksUsing(Tx tx, UUID kitchen, UUID lot) {
    return tx.sql()
        .selectDistinct(TICK.TASK)
        .from(MOVEMENT)
        .join(TICK)
        .on(TICK.KITCHEN_ID.eq(MOVEMENT.KITCHEN_ID))
        .and(TICK.ID.eq(MOVEMENT.TICK_ID))
        .where(MOVEMENT.KITCHEN_ID.eq(kitchen))
        .and(MOVEMENT.LOT_ID.eq(lot))
        .and(MOVEMENT.KIND.eq(Movement.Kind.USED.name()))
        .and(STANDING)
        .fetch(TICK.TASK);
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
