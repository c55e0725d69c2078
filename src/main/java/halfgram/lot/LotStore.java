package halfgram.lot;

import static halfgram.db.schema.Tables.LOT;
import static halfgram.db.schema.Tables.MOVEMENT;
import static halfgram.db.schema.Tables.TICK;

import halfgram.db.Tx;
import halfgram.db.schema.tables.records.LotRecord;
import halfgram.db.schema.tables.records.MovementRecord;
import halfgram.formula.ComponentRef;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import org.jooq.Condition;
import org.jooq.Field;
import org.jooq.impl.DSL;

/** Tubs and their movements. */
public final class LotStore {
  private static final String RESERVED = Movement.Kind.RESERVED.name();
  private static final Field<BigDecimal> LEFT =
      DSL.sum(DSL.when(MOVEMENT.KIND.ne(RESERVED), MOVEMENT.AMOUNT).otherwise(BigDecimal.ZERO));

  private static final Field<Long> ASSUMED = last(Movement.Kind.ASSUMED);
  private static final Field<Long> COUNTED = last(Movement.Kind.COUNTED);

  /** Number of the last change of a kind; 0 for none. */
  private static Field<Long> last(Movement.Kind kind) {
    return DSL.max(DSL.when(MOVEMENT.KIND.eq(kind.name()), MOVEMENT.CHANGE_NUMBER).otherwise(0L));
  }

  /** Tubs with something left, first expired first. */
  public List<Tub> list(Tx tx, UUID kitchen) {
    return list(tx, kitchen, DSL.noCondition(), LEFT.gt(BigDecimal.ZERO));
  }

  /** Tubs with something left, and those that are empty by assumption alone and still in date. */
  public List<Tub> listToCount(Tx tx, UUID kitchen, Instant now) {
    Condition assumed = ASSUMED.gt(COUNTED).and(LOT.USE_BY.gt(now));
    return list(tx, kitchen, DSL.noCondition(), LEFT.gt(BigDecimal.ZERO).or(assumed));
  }

  /** All tubs, empty ones too. */
  public List<Tub> listAll(Tx tx, UUID kitchen) {
    return list(tx, kitchen, DSL.noCondition());
  }

  /**
   * Tubs of one output with something left, first expired first.
   *
   * @param first whether it is the first of its formula, which goes without saying
   */
  public List<Tub> listOfOutput(Tx tx, UUID kitchen, String formula, String output, boolean first) {
    Condition named = LOT.OUTPUT.eq(output);
    Condition which = LOT.FORMULA.eq(formula).and(first ? named.or(LOT.OUTPUT.eq("")) : named);
    return list(tx, kitchen, which, LEFT.gt(BigDecimal.ZERO));
  }

  /** A tub by its code, empty or not. */
  public Optional<Tub> find(Tx tx, UUID kitchen, String code) {
    return list(tx, kitchen, LOT.CODE.eq(code)).stream().findFirst();
  }

  /** The tubs of these codes, empty or not. */
  public List<Tub> list(Tx tx, UUID kitchen, List<String> codes) {
    return codes.isEmpty() ? List.of() : list(tx, kitchen, LOT.CODE.in(codes));
  }

  /** A tub by its id, if it is there. */
  public Optional<Tub> find(Tx tx, UUID kitchen, UUID id) {
    return list(tx, kitchen, LOT.ID.eq(id)).stream().findFirst();
  }

  /** A tub that is there by its id. */
  public Tub findById(Tx tx, UUID kitchen, UUID id) {
    return list(tx, kitchen, LOT.ID.eq(id)).get(0);
  }

  /** The tubs that the tasks whose ids begin so have used, empty ones too. */
  public List<Tub> listUsedByTasks(Tx tx, UUID kitchen, String prefix) {
    List<UUID> ids =
        tx.sql()
            .selectDistinct(MOVEMENT.LOT_ID)
            .from(MOVEMENT)
            .join(TICK)
            .on(TICK.KITCHEN_ID.eq(MOVEMENT.KITCHEN_ID))
            .and(TICK.ID.eq(MOVEMENT.TICK_ID))
            .where(MOVEMENT.KITCHEN_ID.eq(kitchen))
            .and(MOVEMENT.KIND.eq(Movement.Kind.USED.name()))
            .and(TICK.TASK.startsWith(prefix))
            .fetch(MOVEMENT.LOT_ID);
    return ids.isEmpty() ? List.of() : list(tx, kitchen, LOT.ID.in(ids));
  }

  /** The tubs that the tasks whose ids begin so have filled. */
  public List<Tub> listOfTasks(Tx tx, UUID kitchen, String prefix) {
    return list(tx, kitchen, LOT.TASK.startsWith(prefix));
  }

  /** The tubs that a task filled. */
  public List<Tub> listOfTask(Tx tx, UUID kitchen, String task) {
    return list(tx, kitchen, LOT.TASK.eq(task));
  }

  private static List<Tub> list(Tx tx, UUID kitchen, Condition which) {
    return list(tx, kitchen, which, DSL.noCondition());
  }

  private static List<Tub> list(Tx tx, UUID kitchen, Condition which, Condition having) {
    Map<UUID, List<Reservation>> reserved = new HashMap<>();
    Field<BigDecimal> kept = DSL.sum(MOVEMENT.AMOUNT);
    tx.sql()
        .select(MOVEMENT.LOT_ID, MOVEMENT.EVENT, kept, LOT.DIMENSION)
        .from(MOVEMENT)
        .join(LOT)
        .on(LOT.KITCHEN_ID.eq(MOVEMENT.KITCHEN_ID))
        .and(LOT.ID.eq(MOVEMENT.LOT_ID))
        .where(MOVEMENT.KITCHEN_ID.eq(kitchen))
        .and(MOVEMENT.KIND.eq(RESERVED))
        .groupBy(MOVEMENT.LOT_ID, MOVEMENT.EVENT, LOT.DIMENSION)
        .orderBy(MOVEMENT.EVENT)
        .forEach(
            row -> {
              Amount amount = new Amount(row.get(kept), Dimension.valueOf(row.get(LOT.DIMENSION)));
              if (amount.isPositive()) {
                reserved
                    .computeIfAbsent(row.get(MOVEMENT.LOT_ID), lot -> new ArrayList<>())
                    .add(new Reservation(row.get(MOVEMENT.EVENT), amount));
              }
            });
    return tx.sql()
        .select(LOT.fields())
        .select(LEFT, ASSUMED, COUNTED)
        .from(LOT)
        .join(MOVEMENT)
        .on(MOVEMENT.KITCHEN_ID.eq(LOT.KITCHEN_ID))
        .and(MOVEMENT.LOT_ID.eq(LOT.ID))
        .where(LOT.KITCHEN_ID.eq(kitchen))
        .and(which)
        .groupBy(LOT.fields())
        .having(having)
        .orderBy(LOT.USE_BY, LOT.MADE_AT, LOT.CODE)
        .fetch(
            row -> {
              LotRecord lot = row.into(LOT);
              boolean assumed = row.get(ASSUMED) > row.get(COUNTED);
              return tub(
                  lot, row.get(LEFT), assumed, reserved.getOrDefault(lot.getId(), List.of()));
            });
  }

  /** When each tub that ever was counted was counted last. */
  public Map<UUID, Instant> lastCounts(Tx tx, UUID kitchen) {
    Field<Instant> last = DSL.max(MOVEMENT.AT);
    return tx.sql()
        .select(MOVEMENT.LOT_ID, last)
        .from(MOVEMENT)
        .where(MOVEMENT.KITCHEN_ID.eq(kitchen))
        .and(MOVEMENT.KIND.eq(Movement.Kind.COUNTED.name()))
        .groupBy(MOVEMENT.LOT_ID)
        .fetchMap(MOVEMENT.LOT_ID, last);
  }

  /** How many tubs have codes that begin so; the next code of a day is one more. */
  public int count(Tx tx, UUID kitchen, String prefix) {
    return tx.sql()
        .fetchCount(
            tx.sql()
                .selectFrom(LOT)
                .where(LOT.KITCHEN_ID.eq(kitchen))
                .and(LOT.CODE.startsWith(prefix)));
  }

  /** Adds a tub, empty until its first movement. */
  public void add(Tx tx, UUID kitchen, Tub tub) {
    Lot lot = tub.lot();
    OptionalInt version = lot.component().version();
    tx.sql()
        .insertInto(LOT)
        .set(LOT.KITCHEN_ID, kitchen)
        .set(LOT.ID, tub.id())
        .set(LOT.CODE, lot.code())
        .set(LOT.FORMULA, lot.component().formula())
        .set(LOT.OUTPUT, lot.component().output().orElse(""))
        .set(LOT.VERSION, version.isPresent() ? Integer.valueOf(version.getAsInt()) : null)
        .set(LOT.DIMENSION, lot.left().dimension().name())
        .set(LOT.MADE_AT, lot.made())
        .set(LOT.USE_BY, lot.useBy())
        .set(LOT.PLACE, lot.place())
        .set(LOT.CONTAINER, lot.container().orElse(null))
        .set(LOT.TASK, tub.task().orElse(null))
        .set(LOT.CHANGE_NUMBER, tub.change())
        .execute();
  }

  public void move(Tx tx, UUID kitchen, Movement movement, long change) {
    tx.sql()
        .insertInto(MOVEMENT)
        .set(MOVEMENT.KITCHEN_ID, kitchen)
        .set(MOVEMENT.ID, UUID.randomUUID())
        .set(MOVEMENT.LOT_ID, movement.lot())
        .set(MOVEMENT.KIND, movement.kind().name())
        .set(MOVEMENT.AMOUNT, movement.amount().number())
        .set(MOVEMENT.STATED, movement.stated().map(Amount::number).orElse(null))
        .set(MOVEMENT.EVENT, movement.event().orElse(null))
        .set(MOVEMENT.REASON, movement.reason().orElse(null))
        .set(MOVEMENT.WHO, movement.who())
        .set(MOVEMENT.AT, movement.at())
        .set(MOVEMENT.TICK_ID, movement.tick().orElse(null))
        .set(MOVEMENT.CHANGE_NUMBER, change)
        .execute();
  }

  /** What a tick moved. */
  public List<Movement> listOfTick(Tx tx, UUID kitchen, UUID tick) {
    return movements(tx, kitchen, MOVEMENT.TICK_ID.eq(tick));
  }

  /** What happened to a tub, oldest first. */
  public List<Movement> listOf(Tx tx, UUID kitchen, UUID lot) {
    return movements(tx, kitchen, MOVEMENT.LOT_ID.eq(lot));
  }

  private static List<Movement> movements(Tx tx, UUID kitchen, Condition which) {
    return tx.sql()
        .select(MOVEMENT.fields())
        .select(LOT.DIMENSION)
        .from(MOVEMENT)
        .join(LOT)
        .on(LOT.KITCHEN_ID.eq(MOVEMENT.KITCHEN_ID))
        .and(LOT.ID.eq(MOVEMENT.LOT_ID))
        .where(MOVEMENT.KITCHEN_ID.eq(kitchen))
        .and(which)
        .orderBy(MOVEMENT.CHANGE_NUMBER, MOVEMENT.AT)
        .fetch(row -> movement(row.into(MOVEMENT), Dimension.valueOf(row.get(LOT.DIMENSION))));
  }

  private static Movement movement(MovementRecord row, Dimension dimension) {
    return new Movement(
        row.getLotId(),
        Movement.Kind.valueOf(row.getKind()),
        new Amount(row.getAmount(), dimension),
        Optional.ofNullable(row.getStated()).map(stated -> new Amount(stated, dimension)),
        Optional.ofNullable(row.getEvent()),
        Optional.ofNullable(row.getReason()),
        row.getWho(),
        row.getAt(),
        Optional.ofNullable(row.getTickId()));
  }

  private static Tub tub(
      LotRecord row, BigDecimal sum, boolean assumed, List<Reservation> reserved) {
    Integer version = row.getVersion();
    Amount left = new Amount(sum.stripTrailingZeros(), Dimension.valueOf(row.getDimension()));
    Lot lot =
        new Lot(
            row.getCode(),
            new ComponentRef(
                row.getFormula(),
                Optional.of(row.getOutput()).filter(output -> !output.isEmpty()),
                version == null ? OptionalInt.empty() : OptionalInt.of(version)),
            left,
            row.getMadeAt(),
            row.getUseBy(),
            row.getPlace(),
            Optional.ofNullable(row.getContainer()),
            Reservation.within(left, reserved));
    Optional<String> task = Optional.ofNullable(row.getTask());
    return new Tub(row.getId(), lot, task, row.getChangeNumber(), assumed);
  }
}
