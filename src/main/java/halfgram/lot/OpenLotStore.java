package halfgram.lot;

import static halfgram.db.schema.Tables.LOT;
import static halfgram.db.schema.Tables.MOVEMENT;
import static halfgram.db.schema.Tables.OPEN_LOT;

import halfgram.db.Tx;
import java.math.BigDecimal;
import java.util.UUID;
import org.jooq.Condition;
import org.jooq.Field;
import org.jooq.Table;
import org.jooq.impl.DSL;

/**
 * Which tubs have something left or were emptied by assumption alone, kept beside the ledger: a
 * kitchen makes thousands of tubs in a year and has dozens.
 */
final class OpenLotStore {
  /** Their rows. */
  static final Table<?> LOTS =
      OPEN_LOT.join(LOT).on(LOT.KITCHEN_ID.eq(OPEN_LOT.KITCHEN_ID)).and(LOT.ID.eq(OPEN_LOT.LOT_ID));

  /** What is left in a tub. */
  static final Field<BigDecimal> LEFT =
      DSL.sum(
          DSL.when(MOVEMENT.KIND.notIn(LotStore.KEEPING), MOVEMENT.AMOUNT)
              .otherwise(BigDecimal.ZERO));

  static final Field<Long> ASSUMED = last(Movement.Kind.ASSUMED);
  static final Field<Long> COUNTED = last(Movement.Kind.COUNTED);

  /** Of a tub with something left, or emptied by assumption alone. */
  static final Condition SOME = LEFT.gt(BigDecimal.ZERO).or(ASSUMED.gt(COUNTED));

  private OpenLotStore() {}

  /** Number of the last change of a kind that was not taken back; 0 for none. */
  private static Field<Long> last(Movement.Kind kind) {
    Condition of = MOVEMENT.KIND.eq(kind.name()).and(LotStore.UNDONE.ID.isNull());
    return DSL.max(DSL.when(of, MOVEMENT.CHANGE_NUMBER).otherwise(0L));
  }

  /** Keeps what has become of a tub by a movement. */
  static void moved(Tx tx, UUID kitchen, UUID lot) {
    boolean open =
        tx.sql()
            .fetchExists(
                DSL.select(MOVEMENT.LOT_ID)
                    .from(MOVEMENT)
                    .leftJoin(LotStore.UNDONE)
                    .on(LotStore.TAKEN_BACK)
                    .where(MOVEMENT.KITCHEN_ID.eq(kitchen))
                    .and(MOVEMENT.LOT_ID.eq(lot))
                    .groupBy(MOVEMENT.LOT_ID)
                    .having(SOME));
    if (!open) {
      remove(tx, kitchen, lot);
    } else if (!tx.sql()
        .fetchExists(OPEN_LOT, OPEN_LOT.KITCHEN_ID.eq(kitchen).and(OPEN_LOT.LOT_ID.eq(lot)))) {
      tx.sql()
          .insertInto(OPEN_LOT)
          .set(OPEN_LOT.KITCHEN_ID, kitchen)
          .set(OPEN_LOT.LOT_ID, lot)
          .execute();
    }
  }

  /** Takes one out that nobody is asked for any more; a movement brings it back. */
  static void remove(Tx tx, UUID kitchen, UUID lot) {
    tx.sql()
        .deleteFrom(OPEN_LOT)
        .where(OPEN_LOT.KITCHEN_ID.eq(kitchen))
        .and(OPEN_LOT.LOT_ID.eq(lot))
        .execute();
  }
}
