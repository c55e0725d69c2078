package halfgram.people;

import static halfgram.db.schema.Tables.ACTING;
import static halfgram.db.schema.Tables.KEPT_ENTRY;
import static halfgram.db.schema.Tables.PAIRING;
import static halfgram.db.schema.Tables.PIN;
import static halfgram.db.schema.Tables.TABLET;

import halfgram.db.Tx;
import halfgram.db.schema.tables.records.KeptEntryRecord;
import halfgram.db.schema.tables.records.PairingRecord;
import halfgram.db.schema.tables.records.TabletRecord;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jooq.Record;

/** Tablets, their pairing, PINs, and what a revoked one sent. */
public final class TabletStore {

  /**
   * A pairing that was offered: for which kitchen, what the tablet is to be called, what to show.
   */
  public record Offer(
      UUID id, UUID kitchen, String name, List<String> stations, String by, Instant expires) {}

  /** What a revoked tablet sent, as it sent it; the cook is whom it said works on it. */
  public record Kept(
      UUID id,
      UUID tablet,
      Instant at,
      String path,
      String body,
      String cook,
      Optional<Instant> settled,
      boolean entered) {}

  public void offer(Tx tx, Offer offer, String codeHash) {
    tx.sql()
        .insertInto(PAIRING)
        .set(PAIRING.ID, offer.id())
        .set(PAIRING.KITCHEN_ID, offer.kitchen())
        .set(PAIRING.CODE_HASH, codeHash)
        .set(PAIRING.NAME, offer.name())
        .set(PAIRING.STATIONS, String.join(",", offer.stations()))
        .set(PAIRING.MADE_BY, offer.by())
        .set(PAIRING.EXPIRES_AT, offer.expires())
        .execute();
  }

  /** An offer that still counts. */
  public Optional<Offer> findOffer(Tx tx, String codeHash, Instant now) {
    return tx.sql()
        .selectFrom(PAIRING)
        .where(PAIRING.CODE_HASH.eq(codeHash))
        .and(PAIRING.USED_AT.isNull())
        .and(PAIRING.EXPIRES_AT.gt(now))
        .fetchOptional(TabletStore::offer);
  }

  /** Uses an offer up; false when somebody was quicker. */
  public boolean use(Tx tx, UUID offer, Instant now) {
    return tx.sql()
            .update(PAIRING)
            .set(PAIRING.USED_AT, now)
            .where(PAIRING.ID.eq(offer))
            .and(PAIRING.USED_AT.isNull())
            .execute()
        == 1;
  }

  public void add(Tx tx, UUID kitchen, Tablet tablet, String tokenHash) {
    tx.sql()
        .insertInto(TABLET)
        .set(TABLET.KITCHEN_ID, kitchen)
        .set(TABLET.ID, tablet.id())
        .set(TABLET.NAME, tablet.name())
        .set(TABLET.STATIONS, String.join(",", tablet.stations()))
        .set(TABLET.TOKEN_HASH, tokenHash)
        .set(TABLET.PAIRED_AT, tablet.paired())
        .set(TABLET.PAIRED_BY, tablet.pairedBy())
        .execute();
  }

  /** A tablet by its token, revoked or not, with who works on it. */
  public Optional<Caller> find(Tx tx, UUID kitchen, String tokenHash) {
    return tx.sql()
        .select(TABLET.fields())
        .select(ACTING.PERSON)
        .from(TABLET)
        .leftJoin(ACTING)
        .on(ACTING.DEVICE_ID.eq(TABLET.ID).and(ACTING.KITCHEN_ID.eq(kitchen)))
        .where(TABLET.TOKEN_HASH.eq(tokenHash))
        .and(TABLET.KITCHEN_ID.eq(kitchen))
        .fetchOptional(TabletStore::caller);
  }

  public Optional<Tablet> find(Tx tx, UUID kitchen, UUID tablet) {
    return tx.sql()
        .selectFrom(TABLET)
        .where(TABLET.KITCHEN_ID.eq(kitchen))
        .and(TABLET.ID.eq(tablet))
        .fetchOptional(TabletStore::tablet);
  }

  /** All tablets of a kitchen, those that were revoked too, by name. */
  public List<Tablet> list(Tx tx, UUID kitchen) {
    return tx.sql()
        .selectFrom(TABLET)
        .where(TABLET.KITCHEN_ID.eq(kitchen))
        .orderBy(TABLET.NAME, TABLET.PAIRED_AT)
        .fetch(TabletStore::tablet);
  }

  public void change(Tx tx, UUID kitchen, UUID tablet, String name, List<String> stations) {
    tx.sql()
        .update(TABLET)
        .set(TABLET.NAME, name)
        .set(TABLET.STATIONS, String.join(",", stations))
        .where(TABLET.KITCHEN_ID.eq(kitchen))
        .and(TABLET.ID.eq(tablet))
        .execute();
  }

  public void revoke(Tx tx, UUID kitchen, UUID tablet, Instant at) {
    tx.sql()
        .update(TABLET)
        .set(TABLET.REVOKED_AT, at)
        .where(TABLET.KITCHEN_ID.eq(kitchen))
        .and(TABLET.ID.eq(tablet))
        .and(TABLET.REVOKED_AT.isNull())
        .execute();
  }

  public void see(Tx tx, UUID kitchen, UUID tablet, Instant at) {
    tx.sql()
        .update(TABLET)
        .set(TABLET.SEEN_AT, at)
        .where(TABLET.KITCHEN_ID.eq(kitchen))
        .and(TABLET.ID.eq(tablet))
        .execute();
  }

  /** The hash of a cook's PIN; empty for who needs none. */
  public Optional<String> findPin(Tx tx, UUID kitchen, String person) {
    return tx.sql()
        .select(PIN.PIN_HASH)
        .from(PIN)
        .where(PIN.KITCHEN_ID.eq(kitchen))
        .and(PIN.PERSON.eq(person))
        .fetchOptional(PIN.PIN_HASH);
  }

  /** The people who have a PIN. */
  public Set<String> listPins(Tx tx, UUID kitchen) {
    return tx.sql()
        .select(PIN.PERSON)
        .from(PIN)
        .where(PIN.KITCHEN_ID.eq(kitchen))
        .fetchSet(PIN.PERSON);
  }

  /** Sets a PIN, or takes it away. */
  public void setPin(Tx tx, UUID kitchen, String person, Optional<String> hash, Instant at) {
    tx.sql().deleteFrom(PIN).where(PIN.KITCHEN_ID.eq(kitchen)).and(PIN.PERSON.eq(person)).execute();
    hash.ifPresent(
        value ->
            tx.sql()
                .insertInto(PIN)
                .set(PIN.KITCHEN_ID, kitchen)
                .set(PIN.ID, UUID.randomUUID())
                .set(PIN.PERSON, person)
                .set(PIN.PIN_HASH, value)
                .set(PIN.SET_AT, at)
                .execute());
  }

  public void keep(Tx tx, UUID kitchen, Kept entry) {
    tx.sql()
        .insertInto(KEPT_ENTRY)
        .set(KEPT_ENTRY.KITCHEN_ID, kitchen)
        .set(KEPT_ENTRY.ID, entry.id())
        .set(KEPT_ENTRY.TABLET_ID, entry.tablet())
        .set(KEPT_ENTRY.AT, entry.at())
        .set(KEPT_ENTRY.PATH, entry.path())
        .set(KEPT_ENTRY.BODY, entry.body())
        .set(KEPT_ENTRY.COOK, entry.cook())
        .execute();
  }

  /** Whether a tablet has sent just this before. */
  public boolean hasKept(Tx tx, UUID kitchen, Kept entry) {
    return tx
        .sql()
        .selectFrom(KEPT_ENTRY)
        .where(KEPT_ENTRY.KITCHEN_ID.eq(kitchen))
        .and(KEPT_ENTRY.TABLET_ID.eq(entry.tablet()))
        .and(KEPT_ENTRY.PATH.eq(entry.path()))
        .fetch()
        .stream()
        .anyMatch(row -> row.getBody().equals(entry.body()));
  }

  /** What waits for the office, the oldest first. */
  public List<Kept> listWaiting(Tx tx, UUID kitchen) {
    return tx.sql()
        .selectFrom(KEPT_ENTRY)
        .where(KEPT_ENTRY.KITCHEN_ID.eq(kitchen))
        .and(KEPT_ENTRY.SETTLED_AT.isNull())
        .orderBy(KEPT_ENTRY.AT)
        .fetch(TabletStore::kept);
  }

  public Optional<Kept> findKept(Tx tx, UUID kitchen, UUID entry) {
    return tx.sql()
        .selectFrom(KEPT_ENTRY)
        .where(KEPT_ENTRY.KITCHEN_ID.eq(kitchen))
        .and(KEPT_ENTRY.ID.eq(entry))
        .fetchOptional(TabletStore::kept);
  }

  /** Settles an entry; false when somebody was quicker. */
  public boolean settle(Tx tx, UUID kitchen, UUID entry, boolean entered, String by, Instant at) {
    return tx.sql()
            .update(KEPT_ENTRY)
            .set(KEPT_ENTRY.SETTLED_AT, at)
            .set(KEPT_ENTRY.SETTLED_BY, by)
            .set(KEPT_ENTRY.ENTERED, entered)
            .where(KEPT_ENTRY.KITCHEN_ID.eq(kitchen))
            .and(KEPT_ENTRY.ID.eq(entry))
            .and(KEPT_ENTRY.SETTLED_AT.isNull())
            .execute()
        == 1;
  }

  private static Caller caller(Record row) {
    return Caller.of(tablet(row.into(TABLET)), Optional.ofNullable(row.get(ACTING.PERSON)));
  }

  private static Tablet tablet(TabletRecord row) {
    return new Tablet(
        row.getId(),
        row.getName(),
        stations(row.getStations()),
        row.getPairedAt(),
        row.getPairedBy(),
        Optional.ofNullable(row.getSeenAt()),
        Optional.ofNullable(row.getRevokedAt()));
  }

  private static Offer offer(PairingRecord row) {
    return new Offer(
        row.getId(),
        row.getKitchenId(),
        row.getName(),
        stations(row.getStations()),
        row.getMadeBy(),
        row.getExpiresAt());
  }

  private static Kept kept(KeptEntryRecord row) {
    return new Kept(
        row.getId(),
        row.getTabletId(),
        row.getAt(),
        row.getPath(),
        row.getBody(),
        row.getCook(),
        Optional.ofNullable(row.getSettledAt()),
        row.getEntered());
  }

  /** Codes of stations have no comma. */
  private static List<String> stations(String text) {
    return Arrays.stream(text.split(",")).filter(code -> !code.isEmpty()).toList();
  }
}
