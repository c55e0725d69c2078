package halfgram.delivery;

import static halfgram.db.schema.Tables.DELIVERY;
import static halfgram.db.schema.Tables.DELIVERY_ENTRY;

import halfgram.db.Tx;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** Deliveries as the book writes them, and their entries, which are only ever added. */
public final class DeliveryStore {

  /**
   * One delivery.
   *
   * @param body without its entries
   * @param change number of its last edit: who edits it says which one they saw
   */
  public record Saved(String code, LocalDate date, String body, long change) {}

  /**
   * One entry as the book writes it.
   *
   * @param place among those of the same change
   */
  public record Entered(UUID id, String delivery, int place, String body, long change) {}

  public List<Saved> list(Tx tx, UUID kitchen) {
    return tx.sql()
        .selectFrom(DELIVERY)
        .where(DELIVERY.KITCHEN_ID.eq(kitchen))
        .orderBy(DELIVERY.PLACE, DELIVERY.CODE)
        .fetch(
            row -> new Saved(row.getCode(), row.getHeldOn(), row.getBody(), row.getChangeNumber()));
  }

  public Optional<Saved> find(Tx tx, UUID kitchen, String code) {
    return list(tx, kitchen).stream().filter(saved -> saved.code().equals(code)).findFirst();
  }

  /** Adds or replaces a delivery. */
  public void save(Tx tx, UUID kitchen, int place, Saved saved) {
    int updated =
        tx.sql()
            .update(DELIVERY)
            .set(DELIVERY.BODY, saved.body())
            .set(DELIVERY.HELD_ON, saved.date())
            .set(DELIVERY.CHANGE_NUMBER, saved.change())
            .where(DELIVERY.KITCHEN_ID.eq(kitchen))
            .and(DELIVERY.CODE.eq(saved.code()))
            .execute();
    if (updated == 0) {
      tx.sql()
          .insertInto(DELIVERY)
          .set(DELIVERY.KITCHEN_ID, kitchen)
          .set(DELIVERY.ID, UUID.randomUUID())
          .set(DELIVERY.CODE, saved.code())
          .set(DELIVERY.PLACE, place)
          .set(DELIVERY.HELD_ON, saved.date())
          .set(DELIVERY.BODY, saved.body())
          .set(DELIVERY.CHANGE_NUMBER, saved.change())
          .execute();
    }
  }

  /** Bodies of all entries by delivery, in the order they were entered. */
  public Map<String, List<String>> listEntries(Tx tx, UUID kitchen) {
    Map<String, List<String>> byDelivery = new LinkedHashMap<>();
    tx.sql()
        .selectFrom(DELIVERY_ENTRY)
        .where(DELIVERY_ENTRY.KITCHEN_ID.eq(kitchen))
        .orderBy(DELIVERY_ENTRY.CHANGE_NUMBER, DELIVERY_ENTRY.PLACE)
        .forEach(
            row ->
                byDelivery
                    .computeIfAbsent(row.getDelivery(), code -> new java.util.ArrayList<>())
                    .add(row.getBody()));
    return byDelivery;
  }

  public boolean hasEntry(Tx tx, UUID kitchen, UUID id) {
    return tx.sql()
        .fetchExists(
            DELIVERY_ENTRY, DELIVERY_ENTRY.KITCHEN_ID.eq(kitchen), DELIVERY_ENTRY.ID.eq(id));
  }

  /** Adds an entry; one that is there stays as it is, and is told by false. */
  public boolean add(Tx tx, UUID kitchen, Entered entered) {
    return tx.sql()
            .insertInto(DELIVERY_ENTRY)
            .set(DELIVERY_ENTRY.KITCHEN_ID, kitchen)
            .set(DELIVERY_ENTRY.ID, entered.id())
            .set(DELIVERY_ENTRY.DELIVERY, entered.delivery())
            .set(DELIVERY_ENTRY.PLACE, entered.place())
            .set(DELIVERY_ENTRY.BODY, entered.body())
            .set(DELIVERY_ENTRY.CHANGE_NUMBER, entered.change())
            .onConflict(DELIVERY_ENTRY.KITCHEN_ID, DELIVERY_ENTRY.ID)
            .doNothing()
            .execute()
        > 0;
  }
}
