package halfgram.event;

import static halfgram.db.schema.Tables.EVENT;

import halfgram.db.Tx;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Events as the book writes them. */
public final class EventStore {

  /**
   * One event.
   *
   * @param change number of its last change: who edits it says which one they saw
   */
  public record Saved(String code, LocalDate date, String body, long change) {}

  public List<Saved> list(Tx tx, UUID kitchen) {
    return tx.sql()
        .selectFrom(EVENT)
        .where(EVENT.KITCHEN_ID.eq(kitchen))
        .orderBy(EVENT.PLACE, EVENT.CODE)
        .fetch(
            row -> new Saved(row.getCode(), row.getHeldOn(), row.getBody(), row.getChangeNumber()));
  }

  public Optional<Saved> find(Tx tx, UUID kitchen, String code) {
    return list(tx, kitchen).stream().filter(saved -> saved.code().equals(code)).findFirst();
  }

  /** Adds or replaces an event. */
  public void save(Tx tx, UUID kitchen, int place, Saved saved) {
    int updated =
        tx.sql()
            .update(EVENT)
            .set(EVENT.BODY, saved.body())
            .set(EVENT.HELD_ON, saved.date())
            .set(EVENT.CHANGE_NUMBER, saved.change())
            .where(EVENT.KITCHEN_ID.eq(kitchen))
            .and(EVENT.CODE.eq(saved.code()))
            .execute();
    if (updated == 0) {
      tx.sql()
          .insertInto(EVENT)
          .set(EVENT.KITCHEN_ID, kitchen)
          .set(EVENT.ID, UUID.randomUUID())
          .set(EVENT.CODE, saved.code())
          .set(EVENT.PLACE, place)
          .set(EVENT.HELD_ON, saved.date())
          .set(EVENT.BODY, saved.body())
          .set(EVENT.CHANGE_NUMBER, saved.change())
          .execute();
    }
  }

  /** Takes an event out; the log keeps what it was. */
  public void remove(Tx tx, UUID kitchen, String code) {
    tx.sql()
        .deleteFrom(EVENT)
        .where(EVENT.KITCHEN_ID.eq(kitchen))
        .and(EVENT.CODE.eq(code))
        .execute();
  }
}
