package halfgram.prep;

import static halfgram.db.schema.Tables.BOOK_SNAPSHOT;
import static halfgram.db.schema.Tables.PLAN;
import static halfgram.db.schema.Tables.PLAN_RESULT;

import halfgram.db.Tx;
import halfgram.db.schema.tables.records.PlanRecord;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Accepted plans: written once, never changed. */
public final class PlanStore {
  /**
   * An accepted plan, without the book it was computed from and its result.
   *
   * @param number first is 1; the highest of a day is in force
   * @param previous the plan whose begun work it carries on
   * @param snapshot id of the book it was computed from
   * @param begun the work that had begun, as JSON
   * @param summary what it changed against the plan before, as JSON
   * @param facts number of the last fact it takes into account
   */
  public record Accepted(
      UUID id,
      LocalDate day,
      int number,
      Optional<UUID> previous,
      UUID snapshot,
      Instant asOf,
      String begun,
      String engine,
      String summary,
      long facts,
      String who,
      Instant at,
      long change) {}

  /** What it computed, and a hash over it. */
  public record Result(String json, String hash) {}

  public Optional<Accepted> find(Tx tx, UUID kitchen, UUID id) {
    return tx.sql()
        .selectFrom(PLAN)
        .where(PLAN.KITCHEN_ID.eq(kitchen))
        .and(PLAN.ID.eq(id))
        .fetchOptional(PlanStore::accepted);
  }

  /** The id of the plan in force on a day. */
  public Optional<UUID> findInForce(Tx tx, UUID kitchen, LocalDate day) {
    return tx.sql()
        .select(PLAN.ID)
        .from(PLAN)
        .where(PLAN.KITCHEN_ID.eq(kitchen))
        .and(PLAN.BUSINESS_DAY.eq(day))
        .orderBy(PLAN.NUMBER.desc())
        .limit(1)
        .fetchOptional(PLAN.ID);
  }

  /** The last plan of the days before, back to the earliest day asked for. */
  public Optional<Accepted> findBefore(Tx tx, UUID kitchen, LocalDate day, LocalDate earliest) {
    return tx.sql()
        .selectFrom(PLAN)
        .where(PLAN.KITCHEN_ID.eq(kitchen))
        .and(PLAN.BUSINESS_DAY.between(earliest, day.minusDays(1)))
        .orderBy(PLAN.BUSINESS_DAY.desc(), PLAN.NUMBER.desc())
        .limit(1)
        .fetchOptional(PlanStore::accepted);
  }

  /** Every plan of a day, in order. */
  public List<Accepted> list(Tx tx, UUID kitchen, LocalDate day) {
    return tx.sql()
        .selectFrom(PLAN)
        .where(PLAN.KITCHEN_ID.eq(kitchen))
        .and(PLAN.BUSINESS_DAY.eq(day))
        .orderBy(PLAN.NUMBER)
        .fetch(PlanStore::accepted);
  }

  /** A book as it was when a plan was computed from it. */
  public String snapshot(Tx tx, UUID kitchen, UUID id) {
    return tx.sql()
        .select(BOOK_SNAPSHOT.BODY)
        .from(BOOK_SNAPSHOT)
        .where(BOOK_SNAPSHOT.KITCHEN_ID.eq(kitchen))
        .and(BOOK_SNAPSHOT.ID.eq(id))
        .fetchSingle(BOOK_SNAPSHOT.BODY);
  }

  /** Keeps a book once, by its hash; answers its id. */
  public UUID keep(Tx tx, UUID kitchen, String hash, String body) {
    tx.sql()
        .insertInto(BOOK_SNAPSHOT)
        .set(BOOK_SNAPSHOT.KITCHEN_ID, kitchen)
        .set(BOOK_SNAPSHOT.ID, UUID.randomUUID())
        .set(BOOK_SNAPSHOT.HASH, hash)
        .set(BOOK_SNAPSHOT.BODY, body)
        .onConflict(BOOK_SNAPSHOT.KITCHEN_ID, BOOK_SNAPSHOT.HASH)
        .doNothing()
        .execute();
    return tx.sql()
        .select(BOOK_SNAPSHOT.ID)
        .from(BOOK_SNAPSHOT)
        .where(BOOK_SNAPSHOT.KITCHEN_ID.eq(kitchen))
        .and(BOOK_SNAPSHOT.HASH.eq(hash))
        .fetchSingle(BOOK_SNAPSHOT.ID);
  }

  public void add(Tx tx, UUID kitchen, Accepted plan, Result result) {
    tx.sql()
        .insertInto(PLAN)
        .set(PLAN.KITCHEN_ID, kitchen)
        .set(PLAN.ID, plan.id())
        .set(PLAN.BUSINESS_DAY, plan.day())
        .set(PLAN.NUMBER, plan.number())
        .set(PLAN.PREVIOUS_ID, plan.previous().orElse(null))
        .set(PLAN.SNAPSHOT_ID, plan.snapshot())
        .set(PLAN.AS_OF, plan.asOf())
        .set(PLAN.BEGUN, plan.begun())
        .set(PLAN.ENGINE, plan.engine())
        .set(PLAN.SEED, 0L)
        .set(PLAN.SUMMARY, plan.summary())
        .set(PLAN.FACTS_NUMBER, plan.facts())
        .set(PLAN.WHO, plan.who())
        .set(PLAN.ACCEPTED_AT, plan.at())
        .set(PLAN.CHANGE_NUMBER, plan.change())
        .execute();
    tx.sql()
        .insertInto(PLAN_RESULT)
        .set(PLAN_RESULT.KITCHEN_ID, kitchen)
        .set(PLAN_RESULT.PLAN_ID, plan.id())
        .set(PLAN_RESULT.BODY, result.json())
        .set(PLAN_RESULT.HASH, result.hash())
        .execute();
  }

  public Result result(Tx tx, UUID kitchen, UUID id) {
    return tx.sql()
        .selectFrom(PLAN_RESULT)
        .where(PLAN_RESULT.KITCHEN_ID.eq(kitchen))
        .and(PLAN_RESULT.PLAN_ID.eq(id))
        .fetchSingle(row -> new Result(row.getBody(), row.getHash()));
  }

  private static Accepted accepted(PlanRecord row) {
    return new Accepted(
        row.getId(),
        row.getBusinessDay(),
        row.getNumber(),
        Optional.ofNullable(row.getPreviousId()),
        row.getSnapshotId(),
        row.getAsOf(),
        row.getBegun(),
        row.getEngine(),
        row.getSummary(),
        row.getFactsNumber(),
        row.getWho(),
        row.getAcceptedAt(),
        row.getChangeNumber());
  }
}
