package halfgram.kitchen;

import static halfgram.db.schema.Tables.CHANGE_LOG;
import static halfgram.db.schema.Tables.CHANGE_SEEN;
import static halfgram.db.schema.Tables.KITCHEN;

import halfgram.db.Tx;
import halfgram.db.schema.tables.records.ChangeLogRecord;
import halfgram.db.schema.tables.records.KitchenRecord;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jooq.Condition;
import org.jooq.impl.DSL;

/** Kitchens, and the log of what changed in each, in order. */
public final class KitchenStore {

  /**
   * Where a kitchen stands.
   *
   * @param change number of its last change of any kind
   * @param facts number of the last change to what a plan is computed from
   */
  public record Stand(UUID id, String code, long change, long facts) {}

  /** Something that changed, as the log keeps it; the detail is JSON. */
  public record Change(
      long number,
      String kind,
      String subject,
      String detail,
      String who,
      Instant at,
      Optional<Origin> origin) {}

  /**
   * From where a change came.
   *
   * @param via "page", "call", "tablet" or "command"
   * @param account what the one who called is called
   */
  public record Origin(String via, String account, String address) {}

  /** Of whatever this thread is doing; a request and a command say it once, here. */
  private static final ThreadLocal<Origin> ORIGIN = new ThreadLocal<>();

  /** Says from where comes what this thread does next; nothing, when it is over. */
  public static void asked(Optional<Origin> origin) {
    origin.ifPresentOrElse(ORIGIN::set, ORIGIN::remove);
  }

  /** A change about to be logged; a fact is what a plan is computed from. */
  public record News(String kind, String subject, String detail, String who, boolean fact) {
    public static News fact(String kind, String subject, String detail, String who) {
      return new News(kind, subject, detail, who, true);
    }

    public static News note(String kind, String subject, String detail, String who) {
      return new News(kind, subject, detail, who, false);
    }
  }

  /**
   * Which changes are looked for; empty texts and days leave nothing out.
   *
   * @param who part of the name of who did it or of the account
   * @param from the first moment
   * @param until the first moment no longer
   */
  public record Which(
      Optional<String> kind,
      String who,
      String subject,
      Optional<Instant> from,
      Optional<Instant> until) {}

  public List<Stand> list(Tx tx) {
    return tx.sql().selectFrom(KITCHEN).orderBy(KITCHEN.CODE).fetch(KitchenStore::stand);
  }

  public Optional<Stand> find(Tx tx, String code) {
    return tx.sql()
        .selectFrom(KITCHEN)
        .where(KITCHEN.CODE.eq(code))
        .fetchOptional(KitchenStore::stand);
  }

  /** The number of a kitchen's last change. */
  public long change(Tx tx, UUID kitchen) {
    return tx.sql()
        .select(KITCHEN.CHANGE_NUMBER)
        .from(KITCHEN)
        .where(KITCHEN.ID.eq(kitchen))
        .fetchSingle(KITCHEN.CHANGE_NUMBER);
  }

  /** Says that a kitchen is the demo, with invented people who need no password. */
  public void markDemo(Tx tx, UUID kitchen) {
    tx.sql().update(KITCHEN).set(KITCHEN.DEMO, true).where(KITCHEN.ID.eq(kitchen)).execute();
  }

  public boolean isDemo(Tx tx, UUID kitchen) {
    return tx.sql()
        .select(KITCHEN.DEMO)
        .from(KITCHEN)
        .where(KITCHEN.ID.eq(kitchen))
        .fetchOptional(KITCHEN.DEMO)
        .orElse(false);
  }

  public Stand create(Tx tx, UUID id, String code, Instant at) {
    tx.sql()
        .insertInto(KITCHEN)
        .set(KITCHEN.ID, id)
        .set(KITCHEN.CODE, code)
        .set(KITCHEN.CREATED_AT, at)
        .execute();
    return new Stand(id, code, 0, 0);
  }

  /** Locks the kitchen's row until the transaction ends, so that what is decided next holds. */
  public Stand lock(Tx tx, UUID kitchen) {
    return tx.sql()
        .selectFrom(KITCHEN)
        .where(KITCHEN.ID.eq(kitchen))
        .forUpdate()
        .fetchSingle(KitchenStore::stand);
  }

  /**
   * Takes the number after the last under the lock of the kitchen's row, once: for what is its own
   * log.
   */
  public long next(Tx tx, Stand locked) {
    long number = locked.change() + 1;
    set(tx, locked.id(), number);
    return number;
  }

  /**
   * As {@link #lock} and {@link #next} in one.
   *
   * @return how it stood before
   */
  public Stand take(Tx tx, UUID kitchen) {
    KitchenRecord after =
        tx.sql()
            .update(KITCHEN)
            .set(KITCHEN.CHANGE_NUMBER, KITCHEN.CHANGE_NUMBER.plus(1))
            .where(KITCHEN.ID.eq(kitchen))
            .returning(KITCHEN.ID, KITCHEN.CODE, KITCHEN.CHANGE_NUMBER, KITCHEN.FACTS_NUMBER)
            .fetchSingle();
    return new Stand(
        after.getId(), after.getCode(), after.getChangeNumber() - 1, after.getFactsNumber());
  }

  /** Gives a number back that nothing was kept under. */
  public void giveBack(Tx tx, Stand before) {
    set(tx, before.id(), before.change());
  }

  /** Makes the last change a fact, when it turns out that a plan is computed from it. */
  public void makeFact(Tx tx, UUID kitchen, long number) {
    tx.sql()
        .update(KITCHEN)
        .set(KITCHEN.FACTS_NUMBER, number)
        .where(KITCHEN.ID.eq(kitchen))
        .and(KITCHEN.CHANGE_NUMBER.eq(number))
        .execute();
  }

  private static void set(Tx tx, UUID kitchen, long number) {
    tx.sql()
        .update(KITCHEN)
        .set(KITCHEN.CHANGE_NUMBER, number)
        .where(KITCHEN.ID.eq(kitchen))
        .execute();
  }

  /** Takes the next number under the lock of the kitchen's row, and logs the change with it. */
  public long change(Tx tx, UUID kitchen, News news, Instant at) {
    long number =
        tx.sql()
            .update(KITCHEN)
            .set(KITCHEN.CHANGE_NUMBER, KITCHEN.CHANGE_NUMBER.plus(1))
            .set(
                KITCHEN.FACTS_NUMBER,
                news.fact() ? KITCHEN.CHANGE_NUMBER.plus(1) : KITCHEN.FACTS_NUMBER)
            .where(KITCHEN.ID.eq(kitchen))
            .returningResult(KITCHEN.CHANGE_NUMBER)
            .fetchSingle()
            .value1();
    Optional<Origin> origin = Optional.ofNullable(ORIGIN.get());
    tx.sql()
        .insertInto(CHANGE_LOG)
        .set(CHANGE_LOG.KITCHEN_ID, kitchen)
        .set(CHANGE_LOG.ID, UUID.randomUUID())
        .set(CHANGE_LOG.NUMBER, number)
        .set(CHANGE_LOG.KIND, news.kind())
        .set(CHANGE_LOG.SUBJECT, news.subject())
        .set(CHANGE_LOG.DETAIL, news.detail())
        .set(CHANGE_LOG.WHO, news.who())
        .set(CHANGE_LOG.AT, at)
        .set(CHANGE_LOG.VIA, origin.map(Origin::via).orElse(null))
        .set(CHANGE_LOG.ACCOUNT, origin.map(Origin::account).orElse(null))
        .set(CHANGE_LOG.ADDRESS, origin.map(Origin::address).orElse(null))
        .execute();
    return number;
  }

  /** Changes of some kinds after a number, oldest first. */
  public List<Change> listSince(Tx tx, UUID kitchen, long number, Set<String> kinds) {
    return tx.sql()
        .selectFrom(CHANGE_LOG)
        .where(CHANGE_LOG.KITCHEN_ID.eq(kitchen))
        .and(CHANGE_LOG.NUMBER.gt(number))
        .and(kinds.isEmpty() ? DSL.noCondition() : CHANGE_LOG.KIND.in(kinds))
        .orderBy(CHANGE_LOG.NUMBER)
        .fetch(KitchenStore::changeOf);
  }

  /** The last changes of some kinds before a number, newest first; no kinds means all. */
  public List<Change> listBefore(Tx tx, UUID kitchen, long number, Set<String> kinds, int most) {
    return tx.sql()
        .selectFrom(CHANGE_LOG)
        .where(CHANGE_LOG.KITCHEN_ID.eq(kitchen))
        .and(CHANGE_LOG.NUMBER.lt(number))
        .and(kinds.isEmpty() ? DSL.noCondition() : CHANGE_LOG.KIND.in(kinds))
        .orderBy(CHANGE_LOG.KITCHEN_ID.desc(), CHANGE_LOG.NUMBER.desc())
        .limit(most)
        .fetch(KitchenStore::changeOf);
  }

  /** The last changes before a number of those looked for, newest first. */
  public List<Change> listWhich(Tx tx, UUID kitchen, Which which, long number, int most) {
    Condition who =
        CHANGE_LOG
            .WHO
            .containsIgnoreCase(which.who())
            .or(CHANGE_LOG.ACCOUNT.containsIgnoreCase(which.who()));
    return tx.sql()
        .selectFrom(CHANGE_LOG)
        .where(CHANGE_LOG.KITCHEN_ID.eq(kitchen))
        .and(CHANGE_LOG.NUMBER.lt(number))
        .and(which.kind().map(CHANGE_LOG.KIND::eq).orElse(DSL.noCondition()))
        .and(which.who().isEmpty() ? DSL.noCondition() : who)
        .and(
            which.subject().isEmpty()
                ? DSL.noCondition()
                : CHANGE_LOG.SUBJECT.containsIgnoreCase(which.subject()))
        .and(which.from().map(CHANGE_LOG.AT::ge).orElse(DSL.noCondition()))
        .and(which.until().map(CHANGE_LOG.AT::lt).orElse(DSL.noCondition()))
        .orderBy(CHANGE_LOG.KITCHEN_ID.desc(), CHANGE_LOG.NUMBER.desc())
        .limit(most)
        .fetch(KitchenStore::changeOf);
  }

  /** The numbers of changes that a station has seen, of those after a number. */
  public Set<Long> seen(Tx tx, UUID kitchen, String station, long after) {
    return tx.sql()
        .select(CHANGE_SEEN.NUMBER)
        .from(CHANGE_SEEN)
        .where(CHANGE_SEEN.KITCHEN_ID.eq(kitchen))
        .and(CHANGE_SEEN.STATION.eq(station))
        .and(CHANGE_SEEN.NUMBER.gt(after))
        .fetchSet(CHANGE_SEEN.NUMBER);
  }

  /** Notes that a station has seen a change; a repeat is harmless. */
  public void see(Tx tx, UUID kitchen, long number, String station, String who, Instant at) {
    tx.sql()
        .insertInto(CHANGE_SEEN)
        .set(CHANGE_SEEN.KITCHEN_ID, kitchen)
        .set(CHANGE_SEEN.ID, UUID.randomUUID())
        .set(CHANGE_SEEN.NUMBER, number)
        .set(CHANGE_SEEN.STATION, station)
        .set(CHANGE_SEEN.WHO, who)
        .set(CHANGE_SEEN.AT, at)
        .onConflict(CHANGE_SEEN.KITCHEN_ID, CHANGE_SEEN.NUMBER, CHANGE_SEEN.STATION)
        .doNothing()
        .execute();
  }

  private static Stand stand(KitchenRecord row) {
    return new Stand(row.getId(), row.getCode(), row.getChangeNumber(), row.getFactsNumber());
  }

  private static Change changeOf(ChangeLogRecord row) {
    return new Change(
        row.getNumber(),
        row.getKind(),
        row.getSubject(),
        row.getDetail(),
        row.getWho(),
        row.getAt(),
        Optional.ofNullable(row.getVia())
            .map(via -> new Origin(via, row.getAccount(), row.getAddress())));
  }
}
