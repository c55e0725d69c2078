package halfgram.prep;

import static halfgram.db.schema.Tables.WASH;

import halfgram.db.Tx;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** What cooks said of the kit: washed, another used instead, undone. */
public final class WashStore {

  /** Everything said since a moment, in the order it was said. */
  public List<Wash> listSince(Tx tx, UUID kitchen, Instant since) {
    return tx.sql()
        .selectFrom(WASH)
        .where(WASH.KITCHEN_ID.eq(kitchen))
        .and(WASH.AT.ge(since))
        .orderBy(WASH.CHANGE_NUMBER)
        .fetch(
            row ->
                new Wash(
                    row.getId(),
                    row.getThing(),
                    row.getHow(),
                    Optional.ofNullable(row.getTask()),
                    row.getWho(),
                    row.getAt(),
                    Optional.ofNullable(row.getUndoes())));
  }

  public boolean has(Tx tx, UUID kitchen, UUID id) {
    return tx.sql().fetchExists(WASH, WASH.KITCHEN_ID.eq(kitchen), WASH.ID.eq(id));
  }

  /** Adds one; that it was not said before was found out under the lock. */
  public void add(Tx tx, UUID kitchen, Wash wash, long change) {
    tx.sql()
        .insertInto(WASH)
        .set(WASH.KITCHEN_ID, kitchen)
        .set(WASH.ID, wash.id())
        .set(WASH.THING, wash.thing())
        .set(WASH.HOW, wash.how())
        .set(WASH.TASK, wash.task().orElse(null))
        .set(WASH.WHO, wash.who())
        .set(WASH.AT, wash.at())
        .set(WASH.UNDOES, wash.undoes().orElse(null))
        .set(WASH.CHANGE_NUMBER, change)
        .execute();
  }
}
