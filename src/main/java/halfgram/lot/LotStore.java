package halfgram.lot;

import static halfgram.db.schema.Tables.LOT;
import static halfgram.db.schema.Tables.MOVEMENT;
import static halfgram.db.schema.Tables.OPEN_LOT;
import static halfgram.db.schema.Tables.TICK;

import halfgram.db.Keys;
import halfgram.db.Tx;
import halfgram.db.schema.tables.records.LotRecord;
import halfgram.db.schema.tables.records.MovementRecord;
import halfgram.measure.Amount;
import halfgram.measure.Money;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.UUID;
import java.util.function.Predicate;
import org.jooq.Condition;
import org.jooq.Field;
import org.jooq.Table;
import org.jooq.impl.DSL;

/** Tubs and their movements. */
public final class LotStore {
  static final List<String> KEEPING = names(Movement.Kind::keeps);
  private static final List<String> TURNING = names(Movement.Kind::turns);

  /** The row that takes a movement back, when there is one. */
  static final halfgram.db.schema.tables.Movement UNDONE = MOVEMENT.as("undone");

  static final Condition TAKEN_BACK =
      UNDONE
          .KITCHEN_ID
          .eq(MOVEMENT.KITCHEN_ID)
          .and(UNDONE.LOT_ID.eq(MOVEMENT.LOT_ID))
          .and(UNDONE.UNDOES.eq(MOVEMENT.CHANGE_NUMBER));

  private static final Condition OF_LOT =
      MOVEMENT.KITCHEN_ID.eq(LOT.KITCHEN_ID).and(MOVEMENT.LOT_ID.eq(LOT.ID));

  /** Whether a movement was not taken back. */
  private static Condition standing() {
    return DSL.notExists(DSL.selectOne().from(UNDONE).where(TAKEN_BACK));
  }

  /** Within one change: what moved first, then what it turned, then what is kept. */
  private static final Field<Integer> RANK =
      DSL.when(MOVEMENT.KIND.in(KEEPING), 2).when(MOVEMENT.KIND.in(TURNING), 1).otherwise(0);

  private static final Comparator<Tub> FIRST_EXPIRED =
      Comparator.comparing(
          Tub::lot,
          Comparator.comparing(Lot::useBy).thenComparing(Lot::made).thenComparing(Lot::code));

  private static List<String> names(Predicate<Movement.Kind> which) {
    return Arrays.stream(Movement.Kind.values()).filter(which).map(Enum::name).toList();
  }

  /** Tubs with something left, first expired first. */
  public List<Tub> list(Tx tx, UUID kitchen) {
    return listOpen(tx, kitchen, DSL.noCondition(), OpenLotStore.LEFT.gt(BigDecimal.ZERO));
  }

  /** Tubs with something left, and those that are empty by assumption alone and still in date. */
  public List<Tub> listToCount(Tx tx, UUID kitchen, Instant now) {
    return listOpen(tx, kitchen, DSL.noCondition(), OpenLotStore.SOME).stream()
        .filter(tub -> !isOver(tub, now))
        .toList();
  }

  /** Asks nobody any more to count what is empty by assumption alone and out of date. */
  public void endAssumed(Tx tx, UUID kitchen, Instant now) {
    listOpen(tx, kitchen, DSL.noCondition(), OpenLotStore.SOME).stream()
        .filter(tub -> isOver(tub, now))
        .forEach(tub -> OpenLotStore.remove(tx, kitchen, tub.id()));
  }

  private static boolean isOver(Tub tub, Instant now) {
    return !tub.lot().left().isPositive() && !tub.lot().useBy().isAfter(now);
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
    return listOpen(tx, kitchen, which, OpenLotStore.LEFT.gt(BigDecimal.ZERO));
  }

  /** A tub by its code, empty or not. */
  public Optional<Tub> find(Tx tx, UUID kitchen, String code) {
    return list(tx, kitchen, LOT.CODE.eq(code)).stream().findFirst();
  }

  /** The tubs of these codes, empty or not. */
  public List<Tub> list(Tx tx, UUID kitchen, List<String> codes) {
    return listOf(tx, kitchen, LOT.CODE, codes);
  }

  /** A tub by its id, if it is there. */
  public Optional<Tub> find(Tx tx, UUID kitchen, UUID id) {
    return listOfIds(tx, kitchen, List.of(id)).stream().findFirst();
  }

  /** A tub that is there by its id. */
  public Tub findById(Tx tx, UUID kitchen, UUID id) {
    return find(tx, kitchen, id).orElseThrow();
  }

  /** The tubs of these ids, empty or not. */
  List<Tub> listOfIds(Tx tx, UUID kitchen, List<UUID> ids) {
    return listOf(tx, kitchen, LOT.ID, ids);
  }

  /** The tubs that the tasks whose ids begin so have used, empty ones too. */
  public List<Tub> listUsedByTasks(Tx tx, UUID kitchen, String prefix) {
    List<UUID> ticks =
        tx.sql()
            .select(TICK.ID)
            .from(TICK)
            .where(TICK.KITCHEN_ID.eq(kitchen))
            .and(TICK.TASK.startsWith(prefix))
            .fetch(TICK.ID);
    List<UUID> ids =
        tx.sql()
            .selectDistinct(MOVEMENT.LOT_ID)
            .from(MOVEMENT)
            .where(Keys.in(MOVEMENT.KITCHEN_ID, kitchen, MOVEMENT.TICK_ID, ticks))
            .and(MOVEMENT.KIND.eq(Movement.Kind.USED.name()))
            .and(standing())
            .fetch(MOVEMENT.LOT_ID);
    return listOfIds(tx, kitchen, ids);
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
    return list(tx, LOT, LOT.KITCHEN_ID.eq(kitchen).and(which), DSL.noCondition());
  }

  private static <T> List<Tub> listOf(Tx tx, UUID kitchen, Field<T> column, List<T> values) {
    Condition which = Keys.in(LOT.KITCHEN_ID, kitchen, column, values);
    return values.isEmpty() ? List.of() : list(tx, LOT, which, DSL.noCondition());
  }

  private static List<Tub> listOpen(Tx tx, UUID kitchen, Condition which, Condition having) {
    return list(tx, OpenLotStore.LOTS, OPEN_LOT.KITCHEN_ID.eq(kitchen).and(which), having);
  }

  private static List<Tub> list(Tx tx, Table<?> of, Condition which, Condition having) {
    Map<UUID, List<Reservation>> reserved = reserved(tx, of, which);
    Map<UUID, List<Movement>> turns = turns(tx, of, which);
    return tx
        .sql()
        .select(LOT.fields())
        .select(OpenLotStore.LEFT, OpenLotStore.ASSUMED, OpenLotStore.COUNTED)
        .from(of)
        .join(MOVEMENT)
        .on(OF_LOT)
        .leftJoin(UNDONE)
        .on(TAKEN_BACK)
        .where(which)
        .groupBy(LOT.fields())
        .having(having)
        .fetch(
            row -> {
              LotRecord lot = row.into(LOT);
              boolean assumed = row.get(OpenLotStore.ASSUMED) > row.get(OpenLotStore.COUNTED);
              Amount left =
                  LotRowStore.amount(
                      row.get(OpenLotStore.LEFT).stripTrailingZeros(), lot.getDimension());
              List<Reservation> kept = reserved.getOrDefault(lot.getId(), List.of());
              Lot now = LotRowStore.lot(lot, left, Reservation.within(left, kept));
              for (Movement turn : turns.getOrDefault(lot.getId(), List.of())) {
                now = now.turned(turn);
              }
              Optional<String> task = Optional.ofNullable(lot.getTask());
              return new Tub(lot.getId(), now, task, lot.getChangeNumber(), assumed);
            })
        .stream()
        .sorted(FIRST_EXPIRED)
        .toList();
  }

  /** What tubs keep for events, by tub. */
  private static Map<UUID, List<Reservation>> reserved(Tx tx, Table<?> of, Condition which) {
    Map<UUID, List<Reservation>> reserved = new HashMap<>();
    Field<BigDecimal> kept = DSL.sum(MOVEMENT.AMOUNT);
    tx.sql()
        .select(MOVEMENT.LOT_ID, MOVEMENT.EVENT, kept, LOT.DIMENSION)
        .from(of)
        .join(MOVEMENT)
        .on(OF_LOT)
        .where(MOVEMENT.KIND.in(KEEPING))
        .and(which)
        .groupBy(MOVEMENT.LOT_ID, MOVEMENT.EVENT, LOT.DIMENSION)
        .orderBy(MOVEMENT.EVENT)
        .forEach(
            row -> {
              Amount amount = LotRowStore.amount(row.get(kept), row.get(LOT.DIMENSION));
              if (amount.isPositive()) {
                reserved
                    .computeIfAbsent(row.get(MOVEMENT.LOT_ID), lot -> new ArrayList<>())
                    .add(new Reservation(row.get(MOVEMENT.EVENT), amount));
              }
            });
    return reserved;
  }

  /** What changed places and dates and was not taken back, by tub, oldest first. */
  private static Map<UUID, List<Movement>> turns(Tx tx, Table<?> of, Condition which) {
    Condition standing = standing().and(MOVEMENT.KIND.in(TURNING));
    Map<UUID, List<Movement>> turns = new HashMap<>();
    for (Movement turn : movements(tx, of, which.and(standing))) {
      turns.computeIfAbsent(turn.lot(), lot -> new ArrayList<>()).add(turn);
    }
    return turns;
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
        .set(LOT.USE_BY, lot.ownUseBy())
        .set(LOT.PLACE, lot.place())
        .set(LOT.CONTAINER, lot.container().orElse(null))
        .set(LOT.TASK, tub.task().orElse(null))
        .set(LOT.ALLERGENS, LotRowStore.joined(lot.known().allergens()))
        .set(LOT.TAGS, LotRowStore.joined(lot.known().tags()))
        .set(LOT.CHANGE_NUMBER, tub.change())
        .execute();
  }

  public void move(Tx tx, UUID kitchen, Movement movement, long change) {
    move(tx, kitchen, UUID.randomUUID(), movement, change);
  }

  /**
   * As above, for what may be sent again.
   *
   * @param id of whoever enters it
   */
  public void move(Tx tx, UUID kitchen, UUID id, Movement movement, long change) {
    Movement.Turn turn = movement.turn();
    Optional<Loss> loss = movement.loss();
    tx.sql()
        .insertInto(MOVEMENT)
        .set(MOVEMENT.KITCHEN_ID, kitchen)
        .set(MOVEMENT.ID, id)
        .set(MOVEMENT.LOT_ID, movement.lot())
        .set(MOVEMENT.KIND, movement.kind().name())
        .set(MOVEMENT.AMOUNT, movement.amount().number())
        .set(MOVEMENT.STATED, movement.stated().map(Amount::number).orElse(null))
        .set(MOVEMENT.EVENT, movement.event().orElse(null))
        .set(MOVEMENT.REASON, movement.reason().orElse(null))
        .set(MOVEMENT.WHO, movement.who())
        .set(MOVEMENT.AT, movement.at())
        .set(MOVEMENT.TICK_ID, movement.tick().orElse(null))
        .set(MOVEMENT.PLACE, turn.place().orElse(null))
        .set(MOVEMENT.USE_BY, turn.useBy().orElse(null))
        .set(MOVEMENT.DAYS, turn.days().stream().boxed().findFirst().orElse(null))
        .set(MOVEMENT.UNDOES, movement.undoes().stream().boxed().findFirst().orElse(null))
        .set(MOVEMENT.COST, loss.filter(Loss::isKnown).map(of -> of.cost().number()).orElse(null))
        .set(
            MOVEMENT.UNPRICED,
            loss.map(of -> String.join(",", of.unpriced()))
                .filter(of -> !of.isEmpty())
                .orElse(null))
        .set(MOVEMENT.CHANGE_NUMBER, change)
        .execute();
    OpenLotStore.moved(tx, kitchen, movement.lot());
  }

  /** What a tick moved. */
  public List<Movement> listOfTick(Tx tx, UUID kitchen, UUID tick) {
    return movements(tx, kitchen, MOVEMENT.TICK_ID.eq(tick));
  }

  /** What a change moved. */
  public List<Movement> listOfChange(Tx tx, UUID kitchen, long change) {
    return movements(tx, kitchen, MOVEMENT.CHANGE_NUMBER.eq(change));
  }

  /** What happened to a tub, oldest first. */
  public List<Movement> listOf(Tx tx, UUID kitchen, UUID lot) {
    return movements(tx, kitchen, MOVEMENT.LOT_ID.eq(lot));
  }

  static List<Movement> movements(Tx tx, UUID kitchen, Condition which) {
    return movements(tx, LOT, MOVEMENT.KITCHEN_ID.eq(kitchen).and(which));
  }

  private static List<Movement> movements(Tx tx, Table<?> of, Condition which) {
    return tx.sql()
        .select(MOVEMENT.fields())
        .select(LOT.DIMENSION)
        .from(of)
        .join(MOVEMENT)
        .on(OF_LOT)
        .where(which)
        .orderBy(MOVEMENT.CHANGE_NUMBER, RANK, MOVEMENT.AT, MOVEMENT.EVENT)
        .fetch(row -> movement(row.into(MOVEMENT), row.get(LOT.DIMENSION)));
  }

  private static Movement movement(MovementRecord row, String dimension) {
    Integer days = row.getDays();
    Long undoes = row.getUndoes();
    return new Movement(
        row.getLotId(),
        Movement.Kind.valueOf(row.getKind()),
        LotRowStore.amount(row.getAmount(), dimension),
        Optional.ofNullable(row.getStated()).map(stated -> LotRowStore.amount(stated, dimension)),
        Optional.ofNullable(row.getEvent()),
        Optional.ofNullable(row.getReason()),
        row.getWho(),
        row.getAt(),
        Optional.ofNullable(row.getTickId()),
        new Movement.Turn(
            Optional.ofNullable(row.getPlace()),
            Optional.ofNullable(row.getUseBy()),
            days == null ? OptionalInt.empty() : OptionalInt.of(days)),
        loss(row),
        undoes == null ? OptionalLong.empty() : OptionalLong.of(undoes),
        row.getChangeNumber());
  }

  private static Optional<Loss> loss(MovementRecord row) {
    Optional<Money> cost = Optional.ofNullable(row.getCost()).map(Money::of);
    List<String> unpriced =
        row.getUnpriced() == null ? List.of() : List.of(row.getUnpriced().split(",", -1));
    return cost.isEmpty() && unpriced.isEmpty()
        ? Optional.empty()
        : Optional.of(new Loss(cost.orElse(Money.UNKNOWN), unpriced));
  }
}
