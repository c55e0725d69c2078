package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookReader;
import halfgram.book.BookStore;
import halfgram.book.ImportingDeliveries;
import halfgram.db.Tx;
import halfgram.delivery.Delivery;
import halfgram.delivery.DeliveryEntry;
import halfgram.delivery.DeliveryStore;
import halfgram.input.Problem;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.News;
import halfgram.measure.Message;
import halfgram.prep.KitchenBook;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;

/**
 * Deliveries: what is expected is edited, what came of it is entered.
 *
 * <p>Rules. The whole book is read with a change first, so that nothing is stored which would not
 * plan. An entry is only ever added; the same one sent again is the same entry. What cannot be,
 * such as an arrival of what is here, is not taken, and whoever sent it is told why. Both are facts
 * at once: the plan in force stays until the next is accepted.
 */
public final class Deliveries {
  private static final String KIND = "delivery";
  private static final String ENTRIES = "entries";
  private static final String LIST = "deliveries";

  /** What became of it. */
  public sealed interface Outcome permits Saved, Stale, Problems, NoSuch, Refused {}

  /**
   * It is stored, now or from the same before.
   *
   * @param repeated whether it was here before
   */
  public record Saved(String code, long change, boolean repeated) implements Outcome {}

  /** Somebody has changed it meanwhile: the delivery as it is now. */
  public record Stale(DeliveryStore.Saved current) implements Outcome {}

  /**
   * The book does not read with it.
   *
   * @param place path in the book of what was sent, with which the paths of its problems begin
   */
  public record Problems(String place, List<Problem> list) implements Outcome {}

  public record NoSuch() implements Outcome {}

  /** A rule does not let it. */
  public record Refused(Message because) implements Outcome {}

  private final Desk desk;
  private final KitchenStore kitchens = new KitchenStore();
  private final DeliveryStore deliveries = new DeliveryStore();

  public Deliveries(Desk desk) {
    this.desk = desk;
  }

  /** What is edited of a delivery, as stored. */
  public Optional<DeliveryStore.Saved> find(House house, String code) {
    return desk.read(tx -> deliveries.find(tx, house.id(), code));
  }

  /** A delivery as the book has it now. */
  public static Optional<Delivery> findRead(House house, String code) {
    return house.book().deliveries().stream().filter(one -> one.code().equals(code)).findFirst();
  }

  /** The body of a delivery as a tree of its own, without its entries. */
  public static ObjectNode body(DeliveryStore.Saved saved) {
    return (ObjectNode) BookStore.parse(saved.body());
  }

  /**
   * Saves a delivery whole, as the book writes it; its code is in the body.
   *
   * @param seen number of its last edit that was seen
   */
  public Outcome save(House house, OptionalLong seen, ObjectNode body, String who) {
    return desk.write(
        house,
        tx -> {
          House now = desk.open(tx, kitchens.lock(tx, house.id()));
          String code = body.path("code").asText();
          Optional<DeliveryStore.Saved> there = deliveries.find(tx, house.id(), code);
          return there.isEmpty() ? new NoSuch() : store(tx, now, there, seen, body, who);
        });
  }

  /**
   * Adds a delivery; one that says the same already is as good.
   *
   * @param body with the code it would like; another gets a number behind it when that is taken
   */
  public Outcome add(House house, ObjectNode body, String who) {
    return desk.write(
        house,
        tx -> {
          House now = desk.open(tx, kitchens.lock(tx, house.id()));
          String wanted = body.path("code").asText();
          Optional<DeliveryStore.Saved> there = deliveries.find(tx, house.id(), wanted);
          for (int i = 2; there.isPresent() && !isSame(there.get(), body); i++) {
            body.put("code", wanted + "-" + i);
            there = deliveries.find(tx, house.id(), wanted + "-" + i);
          }
          return store(tx, now, there, OptionalLong.empty(), body, who);
        });
  }

  private Outcome store(
      Tx tx,
      House house,
      Optional<DeliveryStore.Saved> there,
      OptionalLong seen,
      ObjectNode body,
      String who) {
    String code = body.path("code").asText();
    if (there.isPresent()) {
      DeliveryStore.Saved current = there.get();
      if (isSame(current, body)) {
        return new Saved(code, current.change(), true);
      }
      if (seen.isEmpty() || seen.getAsLong() != current.change()) {
        return new Stale(current);
      }
    }
    Problems problems = look(house, body);
    if (!problems.list().isEmpty()) {
      return problems;
    }
    ObjectNode detail = JsonNodeFactory.instance.objectNode();
    detail.put("kind", there.isEmpty() ? "added" : "edited");
    detail.set("supplier", body.path("supplier"));
    there.ifPresent(before -> detail.set("before", body(before)));
    detail.set("after", ImportingDeliveries.withoutEntries(body));
    News news = News.fact(KIND, code, detail.toString(), who);
    long change = kitchens.change(tx, house.id(), news, desk.now());
    LocalDate date = LocalDate.parse(body.path("date").asText());
    String text = ImportingDeliveries.withoutEntries(body).toString();
    int place = house.tree().path(LIST).size();
    deliveries.save(tx, house.id(), place, new DeliveryStore.Saved(code, date, text, change));
    return new Saved(code, change, false);
  }

  private static boolean isSame(DeliveryStore.Saved stored, ObjectNode body) {
    return body(stored)
        .equals(BookStore.parse(ImportingDeliveries.withoutEntries(body).toString()));
  }

  /** What is wrong with the book when a delivery is in it as typed; its entries are kept. */
  public Problems look(House house, ObjectNode body) {
    ObjectNode tree = house.tree().deepCopy();
    ArrayNode list = tree.withArray(LIST);
    int index = index(list, body.path("code").asText());
    JsonNode before = index < list.size() ? list.get(index) : tree.objectNode();
    JsonNode whole =
        ImportingDeliveries.withEntries(before, ImportingDeliveries.withoutEntries(body));
    if (index < list.size()) {
      list.set(index, whole);
    } else {
      list.add(whole);
    }
    return problems("$." + LIST + "[" + index + "]", desk.check(tree));
  }

  private static int index(ArrayNode list, String code) {
    int at = 0;
    while (at < list.size() && !list.get(at).path("code").asText().equals(code)) {
      at++;
    }
    return at;
  }

  /**
   * Enters something of a delivery.
   *
   * @param said the entry as the book writes it; who and when are put in here, and an id when it
   *     has none
   */
  public Outcome enter(House house, String code, ObjectNode said, String who) {
    return desk.write(
        house,
        tx -> {
          KitchenStore.Stand stand = kitchens.lock(tx, house.id());
          House now = desk.open(tx, stand);
          return enter(tx, now, code, said, who);
        });
  }

  private Outcome enter(Tx tx, House house, String code, ObjectNode said, String who) {
    Optional<Delivery> delivery = findRead(house, code);
    if (delivery.isEmpty()) {
      return new NoSuch();
    }
    ObjectNode entry = entry(house, said, who);
    Optional<UUID> id = uuid(entry.path("entry").asText());
    if (id.isPresent() && deliveries.hasEntry(tx, house.id(), id.get())) {
      return new Saved(code, house.stand().change(), true);
    }
    ObjectNode tree = house.tree().deepCopy();
    ArrayNode list = tree.withArray(LIST);
    int index = index(list, code);
    ArrayNode entries = ((ObjectNode) list.get(index)).withArray(ENTRIES);
    String place = "$." + LIST + "[" + index + "]." + ENTRIES + "[" + entries.size() + "]";
    entries.add(entry);
    BookReader.Outcome read = desk.check(tree);
    Problems problems = problems(place, read);
    if (!problems.list().isEmpty()) {
      return problems;
    }
    DeliveryEntry last = last(read.book().orElseThrow(), code);
    Optional<Message> because = delivery.get().stand().refuses(last);
    if (because.isPresent()) {
      return new Refused(because.get());
    }
    ObjectNode detail = JsonNodeFactory.instance.objectNode();
    detail.put("kind", word(last.kind()));
    detail.put("supplier", delivery.get().supplier());
    detail.set("entry", entry);
    News news = News.fact(KIND, code, detail.toString(), who);
    long change = kitchens.change(tx, house.id(), news, last.at());
    deliveries.add(
        tx, house.id(), new DeliveryStore.Entered(last.id(), code, 0, entry.toString(), change));
    return new Saved(code, change, false);
  }

  private ObjectNode entry(House house, ObjectNode said, String who) {
    ObjectNode entry = said.deepCopy();
    if (!entry.hasNonNull("entry")) {
      entry.put("entry", UUID.randomUUID().toString());
    }
    entry.put("who", who);
    entry.put(
        "at",
        desk.now().atZone(house.book().kitchen().clock().zone()).toLocalDateTime().toString());
    return entry;
  }

  private static Optional<UUID> uuid(String text) {
    return text.matches("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}")
        ? Optional.of(UUID.fromString(text))
        : Optional.empty();
  }

  private static DeliveryEntry last(KitchenBook book, String code) {
    List<DeliveryEntry> entries =
        book.deliveries().stream()
            .filter(one -> one.code().equals(code))
            .findFirst()
            .orElseThrow()
            .entries();
    return entries.get(entries.size() - 1);
  }

  /** A kind as the book spells it. */
  public static String word(DeliveryEntry.Kind kind) {
    return kind.name().toLowerCase(Locale.ROOT);
  }

  private static Problems problems(String place, BookReader.Outcome read) {
    return read.unreadable()
        .map(said -> new Problems(place, List.of(new Problem(place, "", said))))
        .orElseGet(() -> new Problems(place, read.problems()));
  }
}
