package halfgram.formula;

import static halfgram.db.schema.Tables.FORMULA;
import static halfgram.db.schema.Tables.FORMULA_VERSION;

import halfgram.db.Tx;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Formulas and their versions as the book writes them; a version is written once. */
public final class FormulaStore {

  /** What belongs to a formula whatever its version. */
  public record Head(String code, String body, long change) {}

  /** One version. */
  public record Saved(String formula, int version, String body, String who, Instant at) {}

  public List<Head> listHeads(Tx tx, UUID kitchen) {
    return tx.sql()
        .selectFrom(FORMULA)
        .where(FORMULA.KITCHEN_ID.eq(kitchen))
        .orderBy(FORMULA.PLACE, FORMULA.CODE)
        .fetch(row -> new Head(row.getCode(), row.getBody(), row.getChangeNumber()));
  }

  /** All versions, in their order within each formula. */
  public List<Saved> listVersions(Tx tx, UUID kitchen) {
    return tx.sql()
        .select(
            FORMULA.CODE,
            FORMULA_VERSION.VERSION,
            FORMULA_VERSION.BODY,
            FORMULA_VERSION.WHO,
            FORMULA_VERSION.SAVED_AT)
        .from(FORMULA_VERSION)
        .join(FORMULA)
        .on(FORMULA.KITCHEN_ID.eq(FORMULA_VERSION.KITCHEN_ID))
        .and(FORMULA.ID.eq(FORMULA_VERSION.FORMULA_ID))
        .where(FORMULA_VERSION.KITCHEN_ID.eq(kitchen))
        .orderBy(FORMULA.PLACE, FORMULA.CODE, FORMULA_VERSION.VERSION)
        .fetch(
            row ->
                new Saved(
                    row.get(FORMULA.CODE),
                    row.get(FORMULA_VERSION.VERSION),
                    row.get(FORMULA_VERSION.BODY),
                    row.get(FORMULA_VERSION.WHO),
                    row.get(FORMULA_VERSION.SAVED_AT)));
  }

  /** What one version says. */
  public Optional<String> findVersion(Tx tx, UUID kitchen, String code, int version) {
    return tx.sql()
        .select(FORMULA_VERSION.BODY)
        .from(FORMULA_VERSION)
        .join(FORMULA)
        .on(FORMULA.KITCHEN_ID.eq(FORMULA_VERSION.KITCHEN_ID))
        .and(FORMULA.ID.eq(FORMULA_VERSION.FORMULA_ID))
        .where(FORMULA_VERSION.KITCHEN_ID.eq(kitchen))
        .and(FORMULA.CODE.eq(code))
        .and(FORMULA_VERSION.VERSION.eq(version))
        .fetchOptional(FORMULA_VERSION.BODY);
  }

  /** Adds a formula or replaces what belongs to all its versions. */
  public void saveHead(Tx tx, UUID kitchen, int place, Head head) {
    int updated =
        tx.sql()
            .update(FORMULA)
            .set(FORMULA.BODY, head.body())
            .set(FORMULA.CHANGE_NUMBER, head.change())
            .where(FORMULA.KITCHEN_ID.eq(kitchen))
            .and(FORMULA.CODE.eq(head.code()))
            .execute();
    if (updated == 0) {
      tx.sql()
          .insertInto(FORMULA)
          .set(FORMULA.KITCHEN_ID, kitchen)
          .set(FORMULA.ID, UUID.randomUUID())
          .set(FORMULA.CODE, head.code())
          .set(FORMULA.PLACE, place)
          .set(FORMULA.BODY, head.body())
          .set(FORMULA.CHANGE_NUMBER, head.change())
          .execute();
    }
  }

  /** Adds a version; it must not be there yet. */
  public void add(Tx tx, UUID kitchen, Saved saved, long change) {
    UUID formula =
        tx.sql()
            .select(FORMULA.ID)
            .from(FORMULA)
            .where(FORMULA.KITCHEN_ID.eq(kitchen))
            .and(FORMULA.CODE.eq(saved.formula()))
            .fetchSingle(FORMULA.ID);
    tx.sql()
        .insertInto(FORMULA_VERSION)
        .set(FORMULA_VERSION.KITCHEN_ID, kitchen)
        .set(FORMULA_VERSION.ID, UUID.randomUUID())
        .set(FORMULA_VERSION.FORMULA_ID, formula)
        .set(FORMULA_VERSION.VERSION, saved.version())
        .set(FORMULA_VERSION.BODY, saved.body())
        .set(FORMULA_VERSION.WHO, saved.who())
        .set(FORMULA_VERSION.SAVED_AT, saved.at())
        .set(FORMULA_VERSION.CHANGE_NUMBER, change)
        .execute();
  }
}
