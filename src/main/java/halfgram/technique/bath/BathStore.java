package halfgram.technique.bath;

import static halfgram.db.schema.Tables.BATH_ENTRY;

import halfgram.db.Tx;
import halfgram.db.schema.tables.records.BathEntryRecord;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;

/** What cooks entered at the baths; append-only, unique by device and sequence. */
public final class BathStore {

  /**
   * An entry as stored.
   *
   * @param plan the plan whose run it belongs to
   * @param sequence the device's own number of it: the same number is the same entry
   * @param offsetMinutes of the device's clock against UTC
   */
  public record Entered(
      BathEntry entry, UUID plan, long sequence, int offsetMinutes, long change) {}

  /** The entry that a device made under a number. */
  public Optional<Entered> find(Tx tx, UUID kitchen, UUID device, long sequence) {
    return tx.sql()
        .selectFrom(BATH_ENTRY)
        .where(BATH_ENTRY.KITCHEN_ID.eq(kitchen))
        .and(BATH_ENTRY.DEVICE_ID.eq(device))
        .and(BATH_ENTRY.DEVICE_SEQUENCE.eq(sequence))
        .fetchOptional(BathStore::entered);
  }

  public boolean has(Tx tx, UUID kitchen, UUID id) {
    return tx.sql()
        .fetchExists(BATH_ENTRY, BATH_ENTRY.KITCHEN_ID.eq(kitchen), BATH_ENTRY.ID.eq(id));
  }

  /** Adds an entry; that its device has not made it before was found out under the lock. */
  public void add(Tx tx, UUID kitchen, Entered entered) {
    BathEntry entry = entered.entry();
    tx.sql()
        .insertInto(BATH_ENTRY)
        .set(BATH_ENTRY.KITCHEN_ID, kitchen)
        .set(BATH_ENTRY.ID, entry.id())
        .set(BATH_ENTRY.PLAN_ID, entered.plan())
        .set(BATH_ENTRY.KIND, entry.kind().name())
        .set(BATH_ENTRY.FORMULA, entry.bath().formula())
        .set(BATH_ENTRY.BUSINESS_DAY, entry.bath().day())
        .set(BATH_ENTRY.LABEL, entry.bath().label())
        .set(BATH_ENTRY.RUN, entry.run().orElse(null))
        .set(BATH_ENTRY.DROP_ID, entry.drop().orElse(null))
        .set(BATH_ENTRY.PIECES, entry.pieces().isPresent() ? entry.pieces().getAsLong() : null)
        .set(BATH_ENTRY.MILLIMETRES, entry.millimetres().orElse(null))
        .set(BATH_ENTRY.FRESH, entry.fresh().orElse(null))
        .set(BATH_ENTRY.RULE, entry.rule().map(Renewal::name).orElse(null))
        .set(BATH_ENTRY.TUB, entry.tub().orElse(null))
        .set(BATH_ENTRY.NOTE, entry.note().orElse(null))
        .set(BATH_ENTRY.COOK, entry.cook())
        .set(BATH_ENTRY.DEVICE_ID, entry.sent().device())
        .set(BATH_ENTRY.DEVICE_SEQUENCE, entered.sequence())
        .set(BATH_ENTRY.DEVICE_TIME, entry.sent().time())
        .set(BATH_ENTRY.DEVICE_OFFSET_MINUTES, entered.offsetMinutes())
        .set(BATH_ENTRY.SERVER_TIME, entry.at())
        .set(BATH_ENTRY.UNDOES, entry.undoes().orElse(null))
        .set(BATH_ENTRY.CHANGE_NUMBER, entered.change())
        .execute();
  }

  /** The entries of a business day, in the order they were made. */
  public List<Entered> list(Tx tx, UUID kitchen, LocalDate day) {
    return tx.sql()
        .selectFrom(BATH_ENTRY)
        .where(BATH_ENTRY.KITCHEN_ID.eq(kitchen))
        .and(BATH_ENTRY.BUSINESS_DAY.eq(day))
        .orderBy(BATH_ENTRY.CHANGE_NUMBER)
        .fetch(BathStore::entered);
  }

  /** The entries from a business day on, in the order they were made. */
  public List<Entered> listFrom(Tx tx, UUID kitchen, LocalDate day) {
    return tx.sql()
        .selectFrom(BATH_ENTRY)
        .where(BATH_ENTRY.KITCHEN_ID.eq(kitchen))
        .and(BATH_ENTRY.BUSINESS_DAY.ge(day))
        .orderBy(BATH_ENTRY.CHANGE_NUMBER)
        .fetch(BathStore::entered);
  }

  /** The last days on which anything was entered, newest first. */
  public List<LocalDate> listDays(Tx tx, UUID kitchen, int most) {
    return tx.sql()
        .selectDistinct(BATH_ENTRY.BUSINESS_DAY)
        .from(BATH_ENTRY)
        .where(BATH_ENTRY.KITCHEN_ID.eq(kitchen))
        .orderBy(BATH_ENTRY.BUSINESS_DAY.desc())
        .limit(most)
        .fetch(BATH_ENTRY.BUSINESS_DAY);
  }

  private static Entered entered(BathEntryRecord row) {
    BathEntry entry =
        new BathEntry(
            row.getId(),
            BathEntry.Kind.valueOf(row.getKind()),
            new BathEntry.Bath(row.getFormula(), row.getBusinessDay(), row.getLabel()),
            Optional.ofNullable(row.getRun()),
            Optional.ofNullable(row.getDropId()),
            row.getPieces() == null ? OptionalLong.empty() : OptionalLong.of(row.getPieces()),
            Optional.ofNullable(row.getMillimetres()),
            Optional.ofNullable(row.getFresh()),
            Optional.ofNullable(row.getRule()).map(Renewal::valueOf),
            Optional.ofNullable(row.getTub()),
            Optional.ofNullable(row.getNote()),
            row.getCook(),
            row.getServerTime(),
            new BathEntry.Sent(row.getDeviceId(), row.getDeviceTime()),
            Optional.ofNullable(row.getUndoes()));
    return new Entered(
        entry,
        row.getPlanId(),
        row.getDeviceSequence(),
        row.getDeviceOffsetMinutes(),
        row.getChangeNumber());
  }
}
