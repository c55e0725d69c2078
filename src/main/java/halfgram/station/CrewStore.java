package halfgram.station;

import static halfgram.db.schema.Tables.CREW_ENTRY;

import halfgram.db.Tx;
import halfgram.db.schema.tables.records.CrewEntryRecord;
import halfgram.prep.TickStore.Origin;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** What was said of the crew and the machines; append-only, unique by device and sequence. */
public final class CrewStore {

  /** An entry as stored. */
  public record Stored(CrewEntry entry, Origin origin, long change) {}

  /** The entry that a device entered under a number. */
  public Optional<Stored> find(Tx tx, UUID kitchen, UUID device, long sequence) {
    return tx.sql()
        .selectFrom(CREW_ENTRY)
        .where(CREW_ENTRY.KITCHEN_ID.eq(kitchen))
        .and(CREW_ENTRY.DEVICE_ID.eq(device))
        .and(CREW_ENTRY.DEVICE_SEQUENCE.eq(sequence))
        .fetchOptional(CrewStore::stored);
  }

  public boolean has(Tx tx, UUID kitchen, UUID id) {
    return tx.sql()
        .fetchExists(CREW_ENTRY, CREW_ENTRY.KITCHEN_ID.eq(kitchen), CREW_ENTRY.ID.eq(id));
  }

  /**
   * What says who is in on a business day and which machines work, in the order it was said: a
   * machine that broke long ago may not work yet.
   */
  public List<CrewEntry> list(Tx tx, UUID kitchen, LocalDate day) {
    return tx.sql()
        .selectFrom(CREW_ENTRY)
        .where(CREW_ENTRY.KITCHEN_ID.eq(kitchen))
        .and(CREW_ENTRY.BUSINESS_DAY.eq(day).or(CREW_ENTRY.EQUIPMENT.ne("")))
        .orderBy(CREW_ENTRY.CHANGE_NUMBER)
        .fetch(row -> stored(row).entry());
  }

  /** Adds an entry; that its device has not entered it before was found out under the lock. */
  public void add(Tx tx, UUID kitchen, Stored stored) {
    CrewEntry entry = stored.entry();
    tx.sql()
        .insertInto(CREW_ENTRY)
        .set(CREW_ENTRY.KITCHEN_ID, kitchen)
        .set(CREW_ENTRY.ID, entry.id())
        .set(CREW_ENTRY.BUSINESS_DAY, entry.day())
        .set(CREW_ENTRY.KIND, entry.kind().name())
        .set(CREW_ENTRY.PERSON, entry.person())
        .set(CREW_ENTRY.EQUIPMENT, entry.machine())
        .set(CREW_ENTRY.UNITS, entry.units())
        .set(CREW_ENTRY.STARTS, entry.from().orElse(null))
        .set(CREW_ENTRY.ENDS, entry.until().orElse(null))
        .set(CREW_ENTRY.NOTE, entry.note().orElse(null))
        .set(CREW_ENTRY.WHO, entry.who())
        .set(CREW_ENTRY.DEVICE_ID, stored.origin().device())
        .set(CREW_ENTRY.DEVICE_SEQUENCE, stored.origin().sequence())
        .set(CREW_ENTRY.DEVICE_TIME, stored.origin().time())
        .set(CREW_ENTRY.DEVICE_OFFSET_MINUTES, stored.origin().offsetMinutes())
        .set(CREW_ENTRY.SERVER_TIME, entry.at())
        .set(CREW_ENTRY.ENDS_ENTRY, entry.ends().orElse(null))
        .set(CREW_ENTRY.UNDOES, entry.undoes().orElse(null))
        .set(CREW_ENTRY.CHANGE_NUMBER, stored.change())
        .execute();
  }

  private static Stored stored(CrewEntryRecord row) {
    CrewEntry entry =
        new CrewEntry(
            row.getId(),
            row.getBusinessDay(),
            CrewEntry.Kind.valueOf(row.getKind()),
            row.getPerson(),
            row.getEquipment(),
            row.getUnits(),
            Optional.ofNullable(row.getStarts()),
            Optional.ofNullable(row.getEnds()),
            Optional.ofNullable(row.getNote()),
            row.getWho(),
            row.getServerTime(),
            Optional.ofNullable(row.getEndsEntry()),
            Optional.ofNullable(row.getUndoes()));
    Origin origin =
        new Origin(
            row.getDeviceId(),
            row.getDeviceSequence(),
            row.getDeviceTime(),
            row.getDeviceOffsetMinutes());
    return new Stored(entry, origin, row.getChangeNumber());
  }
}
