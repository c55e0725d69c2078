package halfgram.book;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.db.Tx;
import halfgram.delivery.DeliveryStore;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

/**
 * Writes the deliveries of a checked book: a delivery is replaced by its code, and its entries are
 * added where they are not there. What was entered is never taken away.
 */
public final class ImportingDeliveries {
  private static final String ENTRIES = "entries";

  private final DeliveryStore deliveries = new DeliveryStore();
  private final Tx tx;
  private final UUID kitchen;
  private final long change;

  ImportingDeliveries(Tx tx, UUID kitchen, long change) {
    this.tx = tx;
    this.kitchen = kitchen;
    this.change = change;
  }

  /** Writes them, and tells how many rows that changed. */
  int write(JsonNode list) {
    Map<String, String> bodies = new HashMap<>();
    deliveries.list(tx, kitchen).forEach(one -> bodies.put(one.code(), one.body()));
    int written = 0;
    int place = 0;
    for (JsonNode item : list) {
      String code = item.path("code").asText();
      String body = withoutEntries(item).toString();
      if (!body.equals(bodies.get(code))) {
        LocalDate date = Moments.date(item.path("date").asText()).orElse(LocalDate.EPOCH);
        deliveries.save(tx, kitchen, place, new DeliveryStore.Saved(code, date, body, change));
        written++;
      }
      written += entries(code, item.path(ENTRIES));
      place++;
    }
    return written;
  }

  private int entries(String delivery, JsonNode entries) {
    int added = 0;
    int place = 0;
    for (JsonNode entry : entries) {
      UUID id = UUID.fromString(entry.path("entry").asText());
      DeliveryStore.Entered entered =
          new DeliveryStore.Entered(id, delivery, place++, entry.toString(), change);
      added += deliveries.add(tx, kitchen, entered) ? 1 : 0;
    }
    return added;
  }

  /** What is edited of a delivery: all but what was entered. */
  public static ObjectNode withoutEntries(JsonNode delivery) {
    ObjectNode body = ((ObjectNode) delivery).deepCopy();
    body.remove(ENTRIES);
    return body;
  }

  /** A delivery with the entries of both, each once, as it would be after an import. */
  public static JsonNode withEntries(JsonNode before, JsonNode item) {
    ObjectNode both = ((ObjectNode) item).deepCopy();
    Set<String> ids = new HashSet<>();
    ArrayNode all = both.arrayNode();
    for (JsonNode from : new JsonNode[] {before.path(ENTRIES), item.path(ENTRIES)}) {
      for (JsonNode entry : from) {
        if (ids.add(entry.path("entry").asText())) {
          all.add(entry);
        }
      }
    }
    if (!all.isEmpty()) {
      both.set(ENTRIES, all);
    }
    return both;
  }
}
