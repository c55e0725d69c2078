package halfgram.pass;

import static halfgram.db.schema.Tables.SERVICE_ENTRY;

import halfgram.db.Tx;
import halfgram.db.schema.tables.records.ServiceEntryRecord;
import halfgram.prep.TickStore.Origin;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.UUID;

/** What was entered during service; append-only, unique by device and sequence. */
public final class EntryStore {
  private static final String BETWEEN = " ";

  /** An entry as stored. */
  public record Stored(Entry entry, Origin origin, long change) {}

  /** The entry that a device entered under a number. */
  public Optional<Stored> find(Tx tx, UUID kitchen, UUID device, long sequence) {
    return tx.sql()
        .selectFrom(SERVICE_ENTRY)
        .where(SERVICE_ENTRY.KITCHEN_ID.eq(kitchen))
        .and(SERVICE_ENTRY.DEVICE_ID.eq(device))
        .and(SERVICE_ENTRY.DEVICE_SEQUENCE.eq(sequence))
        .fetchOptional(EntryStore::stored);
  }

  public boolean has(Tx tx, UUID kitchen, UUID id) {
    return tx.sql()
        .fetchExists(SERVICE_ENTRY, SERVICE_ENTRY.KITCHEN_ID.eq(kitchen), SERVICE_ENTRY.ID.eq(id));
  }

  /** The entries of a business day, in the order they were entered. */
  public List<Entry> list(Tx tx, UUID kitchen, LocalDate day) {
    return tx.sql()
        .selectFrom(SERVICE_ENTRY)
        .where(SERVICE_ENTRY.KITCHEN_ID.eq(kitchen))
        .and(SERVICE_ENTRY.BUSINESS_DAY.eq(day))
        .orderBy(SERVICE_ENTRY.CHANGE_NUMBER)
        .fetch(row -> stored(row).entry());
  }

  /** Adds an entry; that its device has not entered it before was found out under the lock. */
  public void add(Tx tx, UUID kitchen, Stored stored) {
    Entry entry = stored.entry();
    tx.sql()
        .insertInto(SERVICE_ENTRY)
        .set(SERVICE_ENTRY.KITCHEN_ID, kitchen)
        .set(SERVICE_ENTRY.ID, entry.id())
        .set(SERVICE_ENTRY.BUSINESS_DAY, entry.day())
        .set(SERVICE_ENTRY.SERVICE, entry.service())
        .set(SERVICE_ENTRY.KIND, entry.kind().name())
        .set(SERVICE_ENTRY.COURSE, entry.course())
        .set(SERVICE_ENTRY.DISH, entry.dish())
        .set(SERVICE_ENTRY.DIETS, String.join(BETWEEN, entry.diets()))
        .set(SERVICE_ENTRY.ITEM, entry.item())
        .set(SERVICE_ENTRY.STAND_IN, entry.standIn())
        .set(SERVICE_ENTRY.CONFIRMED_BY, entry.confirmedBy().orElse(null))
        .set(SERVICE_ENTRY.STATION, entry.station())
        .set(SERVICE_ENTRY.NUMBER, entry.number())
        .set(SERVICE_ENTRY.PLATE, Portion.write(entry.plate()))
        .set(SERVICE_ENTRY.NOTE, entry.note().orElse(null))
        .set(SERVICE_ENTRY.WHO, entry.who())
        .set(SERVICE_ENTRY.DEVICE_ID, stored.origin().device())
        .set(SERVICE_ENTRY.DEVICE_SEQUENCE, stored.origin().sequence())
        .set(SERVICE_ENTRY.DEVICE_TIME, stored.origin().time())
        .set(SERVICE_ENTRY.DEVICE_OFFSET_MINUTES, stored.origin().offsetMinutes())
        .set(SERVICE_ENTRY.SERVER_TIME, entry.at())
        .set(SERVICE_ENTRY.UNDOES, entry.undoes().orElse(null))
        .set(SERVICE_ENTRY.CHANGE_NUMBER, stored.change())
        .execute();
  }

  private static Stored stored(ServiceEntryRecord row) {
    SortedSet<String> diets = new TreeSet<>(List.of(row.getDiets().split(BETWEEN, -1)));
    diets.remove("");
    Entry entry =
        new Entry(
            row.getId(),
            row.getBusinessDay(),
            row.getService(),
            Entry.Kind.valueOf(row.getKind()),
            row.getCourse(),
            row.getDish(),
            diets,
            row.getItem(),
            row.getStandIn(),
            Optional.ofNullable(row.getConfirmedBy()),
            row.getStation(),
            row.getNumber(),
            Portion.read(row.getPlate()),
            Optional.ofNullable(row.getNote()),
            row.getWho(),
            row.getServerTime(),
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
