package halfgram.prep;

import static halfgram.db.schema.Tables.CREW_PLAN;
import static halfgram.db.schema.Tables.PLAN;

import halfgram.db.Tx;
import halfgram.db.schema.tables.records.CrewPlanRecord;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Who does what when, of accepted plans: written once, never changed. */
public final class CrewPlanStore {
  /**
   * A crew plan as kept.
   *
   * @param plan id of the accepted plan whose tasks it places
   * @param number first is 1; the highest of a plan is in force
   * @param body what it places and why, as JSON
   */
  public record Kept(
      UUID id,
      UUID plan,
      int number,
      Instant at,
      String who,
      long seed,
      int iterations,
      String body,
      long change) {}

  public Optional<Kept> find(Tx tx, UUID kitchen, UUID id) {
    return tx.sql()
        .selectFrom(CREW_PLAN)
        .where(CREW_PLAN.KITCHEN_ID.eq(kitchen))
        .and(CREW_PLAN.ID.eq(id))
        .fetchOptional(CrewPlanStore::kept);
  }

  /** The id of the crew plan in force of a plan. */
  public Optional<UUID> findInForce(Tx tx, UUID kitchen, UUID plan) {
    return tx.sql()
        .select(CREW_PLAN.ID)
        .from(CREW_PLAN)
        .where(CREW_PLAN.KITCHEN_ID.eq(kitchen))
        .and(CREW_PLAN.PLAN_ID.eq(plan))
        .orderBy(CREW_PLAN.NUMBER.desc())
        .limit(1)
        .fetchOptional(CREW_PLAN.ID);
  }

  /** The id of the last crew plan of a day, of whichever of its plans. */
  public Optional<UUID> findLast(Tx tx, UUID kitchen, LocalDate day) {
    return tx.sql()
        .select(CREW_PLAN.ID)
        .from(CREW_PLAN)
        .join(PLAN)
        .on(PLAN.KITCHEN_ID.eq(CREW_PLAN.KITCHEN_ID))
        .and(PLAN.ID.eq(CREW_PLAN.PLAN_ID))
        .where(CREW_PLAN.KITCHEN_ID.eq(kitchen))
        .and(PLAN.BUSINESS_DAY.eq(day))
        .orderBy(PLAN.NUMBER.desc(), CREW_PLAN.NUMBER.desc())
        .limit(1)
        .fetchOptional(CREW_PLAN.ID);
  }

  /** Every crew plan of a plan, in order. */
  public List<Kept> list(Tx tx, UUID kitchen, UUID plan) {
    return tx.sql()
        .selectFrom(CREW_PLAN)
        .where(CREW_PLAN.KITCHEN_ID.eq(kitchen))
        .and(CREW_PLAN.PLAN_ID.eq(plan))
        .orderBy(CREW_PLAN.NUMBER)
        .fetch(CrewPlanStore::kept);
  }

  /** Adds one; that its number is free was found out under the lock. */
  public void add(Tx tx, UUID kitchen, Kept kept) {
    tx.sql()
        .insertInto(CREW_PLAN)
        .set(CREW_PLAN.KITCHEN_ID, kitchen)
        .set(CREW_PLAN.ID, kept.id())
        .set(CREW_PLAN.PLAN_ID, kept.plan())
        .set(CREW_PLAN.NUMBER, kept.number())
        .set(CREW_PLAN.MADE_AT, kept.at())
        .set(CREW_PLAN.MADE_BY, kept.who())
        .set(CREW_PLAN.SEED, kept.seed())
        .set(CREW_PLAN.ITERATIONS, kept.iterations())
        .set(CREW_PLAN.BODY, kept.body())
        .set(CREW_PLAN.CHANGE_NUMBER, kept.change())
        .execute();
  }

  private static Kept kept(CrewPlanRecord row) {
    return new Kept(
        row.getId(),
        row.getPlanId(),
        row.getNumber(),
        row.getMadeAt(),
        row.getMadeBy(),
        row.getSeed(),
        row.getIterations(),
        row.getBody(),
        row.getChangeNumber());
  }
}
