package halfgram.par;

import static halfgram.db.schema.Tables.PAR;

import halfgram.db.Tx;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import java.time.DayOfWeek;
import java.util.List;
import java.util.UUID;
import org.jooq.impl.DSL;

/** Pars, one row for each cell of the week. */
public final class ParStore {

  /**
   * One cell.
   *
   * @param output empty for a formula of one output
   * @param typed the amount as typed: "3.2 kg"
   */
  public record Cell(
      String service,
      String component,
      String output,
      DayOfWeek weekday,
      String typed,
      Amount amount,
      long change) {}

  public List<Cell> list(Tx tx, UUID kitchen) {
    return tx.sql()
        .selectFrom(PAR)
        .where(PAR.KITCHEN_ID.eq(kitchen))
        .orderBy(PAR.PLACE, PAR.SERVICE, PAR.COMPONENT, PAR.OUTPUT, PAR.WEEKDAY)
        .fetch(
            row ->
                new Cell(
                    row.getService(),
                    row.getComponent(),
                    row.getOutput(),
                    DayOfWeek.of(row.getWeekday()),
                    row.getTyped(),
                    new Amount(row.getAmount(), Dimension.valueOf(row.getDimension())),
                    row.getChangeNumber()));
  }

  /** Where the row of a cell stands among the rows; behind the last when it is new. */
  public int place(Tx tx, UUID kitchen, Cell cell) {
    var row =
        PAR.KITCHEN_ID
            .eq(kitchen)
            .and(PAR.SERVICE.eq(cell.service()))
            .and(PAR.COMPONENT.eq(cell.component()))
            .and(PAR.OUTPUT.eq(cell.output()));
    return tx.sql()
        .select(PAR.PLACE)
        .from(PAR)
        .where(row)
        .orderBy(PAR.PLACE)
        .limit(1)
        .fetchOptional(PAR.PLACE)
        .orElseGet(
            () ->
                tx.sql()
                        .select(DSL.coalesce(DSL.max(PAR.PLACE), -1))
                        .from(PAR)
                        .where(PAR.KITCHEN_ID.eq(kitchen))
                        .fetchSingle(0, Integer.class)
                    + 1);
  }

  /** Sets one cell. */
  public void save(Tx tx, UUID kitchen, int place, Cell cell) {
    remove(tx, kitchen, cell);
    tx.sql()
        .insertInto(PAR)
        .set(PAR.KITCHEN_ID, kitchen)
        .set(PAR.ID, UUID.randomUUID())
        .set(PAR.SERVICE, cell.service())
        .set(PAR.COMPONENT, cell.component())
        .set(PAR.OUTPUT, cell.output())
        .set(PAR.WEEKDAY, (short) cell.weekday().getValue())
        .set(PAR.PLACE, place)
        .set(PAR.TYPED, cell.typed())
        .set(PAR.AMOUNT, cell.amount().number())
        .set(PAR.DIMENSION, cell.amount().dimension().name())
        .set(PAR.CHANGE_NUMBER, cell.change())
        .execute();
  }

  /** Empties one cell. */
  public void remove(Tx tx, UUID kitchen, Cell cell) {
    tx.sql()
        .deleteFrom(PAR)
        .where(PAR.KITCHEN_ID.eq(kitchen))
        .and(PAR.SERVICE.eq(cell.service()))
        .and(PAR.COMPONENT.eq(cell.component()))
        .and(PAR.OUTPUT.eq(cell.output()))
        .and(PAR.WEEKDAY.eq((short) cell.weekday().getValue()))
        .execute();
  }
}
