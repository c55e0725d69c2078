package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookReader;
import halfgram.book.BookStore;
import halfgram.db.Tx;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.News;
import halfgram.pass.Entry;

/** Keeps what stands in for what in regular services, each on its date alone. */
final class SwappedDates {
  private final Desk desk;
  private final KitchenStore kitchens = new KitchenStore();
  private final BookStore books = new BookStore();

  SwappedDates(Desk desk) {
    this.desk = desk;
  }

  /** Puts a swap in force; false when the book does not read with it. */
  boolean put(Tx tx, House house, SwappedDate date, ObjectNode swap, String who) {
    ObjectNode service = Slips.item(house, "services", date.code()).deepCopy();
    Slips.date(service, date.found()).withArray("swaps").add(swap);
    return keep(tx, house, date, service, who);
  }

  /** Takes a swap away again; what the book no longer has stays as it is. */
  void take(Tx tx, House house, SwappedDate date, Entry swap, String who) {
    ObjectNode service = Slips.item(house, "services", date.code()).deepCopy();
    ObjectNode on = Slips.date(service, date.found());
    if (on.path("swaps") instanceof ArrayNode swaps) {
      Swapping.take(swaps, swap);
      if (swaps.isEmpty()) {
        on.remove("swaps");
      }
      keep(tx, house, date, service, who);
    }
  }

  private boolean keep(Tx tx, House house, SwappedDate date, ObjectNode service, String who) {
    BookReader.Outcome read = desk.check(Slips.with(house, service));
    if (!read.problems().isEmpty()) {
      return false;
    }
    JsonNode before = Slips.item(house, "services", date.code());
    ObjectNode detail = JsonNodeFactory.instance.objectNode();
    detail.put("date", date.found().date().toString());
    detail.put("swapped", true);
    detail.set("before", before);
    detail.set("after", service);
    News news = News.fact("slip", date.code(), detail.toString(), who);
    long change = kitchens.change(tx, house.id(), news, desk.now());
    books.save(tx, house.id(), "services", date.code(), 0, service.toString(), change);
    return true;
  }
}
