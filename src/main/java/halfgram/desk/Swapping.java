package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.db.Tx;
import halfgram.event.Event;
import halfgram.event.EventStore;
import halfgram.event.Replaced;
import halfgram.event.Service;
import halfgram.kitchen.KitchenStore;
import halfgram.measure.Message;
import halfgram.menu.Dish;
import halfgram.menu.Swap;
import halfgram.pass.Entry;
import halfgram.pass.EntryStore;
import halfgram.prep.Fire;
import halfgram.prep.KitchenBook;
import halfgram.prep.ServiceRun;
import halfgram.prep.TickStore.Origin;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.UUID;

/**
 * Puts a swap in force for one service, and takes it back.
 *
 * <p>Rules. Only what a dish lists stands in, and only with somebody's yes by name. It is a fact
 * from then on: the event's service has it in the book, or a regular service has it on its date, so
 * that the pass shows it at once, the next plan makes for it, and the close takes it out of tubs.
 * Undone, the book is without it; the entry and its undo stay.
 */
public final class Swapping {

  /**
   * A swap as asked for.
   *
   * @param standIn code of what is to stand in
   * @param confirmedBy code of who says yes
   */
  public record Asked(
      Optional<UUID> id,
      String service,
      String dish,
      String item,
      String standIn,
      String confirmedBy,
      String who,
      Origin origin) {}

  private final Desk desk;
  private final Events events;
  private final KitchenStore kitchens = new KitchenStore();
  private final EntryStore entries = new EntryStore();
  private final EventStore stored = new EventStore();
  private final SwappedDates dates;

  public Swapping(Desk desk, Events events) {
    this.desk = desk;
    this.events = events;
    this.dates = new SwappedDates(desk);
  }

  /** Puts a swap in force for a service of a day. */
  public Sending.Outcome swap(House house, LocalDate day, Asked asked) {
    return desk.write(
        house,
        tx -> swap(tx, house, day, asked),
        outcome ->
            outcome instanceof Sending.Taken taken && !taken.repeated() ? taken.change() : 0);
  }

  private Sending.Outcome swap(Tx tx, House house, LocalDate day, Asked asked) {
    KitchenStore.Stand stand = kitchens.lock(tx, house.id());
    Origin origin = asked.origin();
    Optional<EntryStore.Stored> before =
        entries.find(tx, house.id(), origin.device(), origin.sequence());
    if (before.isPresent()) {
      return new Sending.Taken(before.get().entry(), before.get().change(), true);
    }
    Optional<UUID> used = asked.id().filter(id -> entries.has(tx, house.id(), id));
    if (used.isPresent()) {
      return new Sending.Refused(Message.of("tick.refused.id-taken", used.get()));
    }
    House now = desk.open(tx, stand);
    Optional<ServiceRun> run =
        Services.runs(now.book(), day).stream()
            .filter(one -> one.id().equals(asked.service()))
            .findFirst();
    Optional<Service> service = run.flatMap(one -> Fire.findService(now.book(), one));
    Optional<SwappedDate> date = SwappedDate.find(now, asked.service());
    if (run.isEmpty() || (service.isEmpty() && date.isEmpty())) {
      return new Sending.NoSuch(asked.service());
    }
    if (findSwap(now.book(), run.get(), asked).isEmpty()) {
      return new Sending.NoSuch(
          String.join(" ", List.of(asked.dish(), asked.item(), asked.standIn())));
    }
    boolean known =
        now.book().people().stream().anyMatch(one -> one.code().equals(asked.confirmedBy()));
    if (!known) {
      return new Sending.Refused(Message.of("pass.refused.no-yes"));
    }
    if (!run.get().window().end().isAfter(desk.now())) {
      return new Sending.Refused(Message.of("pass.refused.over"));
    }
    List<Replaced> there = service.map(Service::swaps).orElseGet(() -> date.orElseThrow().list());
    if (isReplaced(there, asked, service.isPresent())) {
      return new Sending.Refused(Message.of("pass.refused.swapped"));
    }
    ObjectNode swap = JsonNodeFactory.instance.objectNode().put("dish", asked.dish());
    swap.setAll(listed(now, asked));
    if (service.isEmpty()) {
      boolean kept = dates.put(tx, now, date.orElseThrow(), swap, asked.who());
      return entered(tx, now, kept, entry(day, asked), asked);
    }
    ObjectNode body = body(tx, now, run.get());
    service(body, service.get()).withArray("swaps").add(swap);
    Events.Outcome outcome = events.keep(tx, now, body, asked.who());
    return entered(tx, now, outcome instanceof Events.Saved, entry(day, asked), asked);
  }

  private static Optional<Swap> findSwap(KitchenBook book, ServiceRun run, Asked asked) {
    boolean served =
        run.event().isEmpty()
            ? run.uses().stream().anyMatch(of -> of.version().formula().equals(asked.item()))
            : run.plates().stream().anyMatch(of -> of.dish().code().equals(asked.dish()));
    Optional<Dish> dish =
        Optional.ofNullable(book.dishes().get(asked.dish()))
            .filter(one -> served || SwappedDate.isSwapped(book, run, asked.item()));
    return dish.stream()
        .flatMap(one -> one.swaps().stream())
        .filter(one -> one.item().equals(asked.item()) && one.code().equals(asked.standIn()))
        .findFirst();
  }

  /** A regular service has no dishes: there it is about the item alone. */
  private static boolean isReplaced(List<Replaced> swaps, Asked asked, boolean onDish) {
    return swaps.stream()
        .filter(one -> !onDish || one.dish().equals(asked.dish()))
        .anyMatch(one -> one.swap().item().equals(asked.item()));
  }

  /** The swap as the dish lists it, in its own words. */
  private static ObjectNode listed(House house, Asked asked) {
    for (JsonNode dish : house.tree().path("dishes")) {
      if (dish.path("code").asText().equals(asked.dish())) {
        for (JsonNode swap : dish.path("swaps")) {
          if (isOf(swap, asked.item(), asked.standIn())) {
            return ((ObjectNode) swap).deepCopy();
          }
        }
      }
    }
    throw new IllegalStateException("listed in the book and not in its tree: " + asked.dish());
  }

  private static boolean isOf(JsonNode swap, String item, String standIn) {
    return code(swap).equals(item) && code(swap.path("with")).equals(standIn);
  }

  private static String code(JsonNode item) {
    return item.path(item.hasNonNull("component") ? "component" : "ingredient").asText();
  }

  private ObjectNode body(Tx tx, House house, ServiceRun run) {
    return Events.body(stored.find(tx, house.id(), run.event().orElseThrow()).orElseThrow());
  }

  private static ObjectNode service(ObjectNode event, Service service) {
    for (JsonNode one : event.path("services")) {
      if (one.path("code").asText().equals(service.code())) {
        return (ObjectNode) one;
      }
    }
    throw new IllegalStateException("no service " + service.code());
  }

  private Sending.Outcome entered(Tx tx, House house, boolean kept, Entry entry, Asked asked) {
    if (!kept) {
      return new Sending.Refused(Message.of("pass.refused.book"));
    }
    long change = Sending.log(kitchens, tx, house, entry);
    entries.add(tx, house.id(), new EntryStore.Stored(entry, asked.origin(), change));
    return new Sending.Taken(entry, change, false);
  }

  private Entry entry(LocalDate day, Asked asked) {
    return new Entry(
        asked.id().orElseGet(UUID::randomUUID),
        day,
        asked.service(),
        Entry.Kind.SWAP,
        "",
        asked.dish(),
        new TreeSet<>(),
        asked.item(),
        asked.standIn(),
        Optional.of(asked.confirmedBy()),
        "",
        1,
        List.of(),
        Optional.empty(),
        asked.who(),
        desk.now(),
        Optional.empty());
  }

  /** Takes a swap out of the event again; what the book no longer has stays as it is. */
  void back(Tx tx, House house, Entry swap, String who) {
    Optional<Event> event =
        house.book().events().stream()
            .filter(one -> swap.service().equals(one.code()) || isServiceOf(one, swap))
            .findFirst();
    if (event.isEmpty()) {
      SwappedDate.find(house, swap.service())
          .ifPresent(date -> dates.take(tx, house, date, swap, who));
      return;
    }
    Optional<EventStore.Saved> saved = stored.find(tx, house.id(), event.get().code());
    if (saved.isPresent()) {
      ObjectNode body = Events.body(saved.get());
      for (JsonNode service : body.path("services")) {
        boolean of =
            event.get().services().size() == 1
                || swap.service().endsWith("." + service.path("code").asText());
        if (of && service.path("swaps") instanceof ArrayNode swaps) {
          take(swaps, swap);
          if (swaps.isEmpty()) {
            ((ObjectNode) service).remove("swaps");
          }
        }
      }
      events.keep(tx, house, body, who);
    }
  }

  private static boolean isServiceOf(Event event, Entry swap) {
    return event.services().stream()
        .anyMatch(one -> swap.service().equals(event.code() + "." + one.code()));
  }

  static void take(ArrayNode swaps, Entry swap) {
    for (int i = swaps.size() - 1; i >= 0; i--) {
      JsonNode one = swaps.get(i);
      if (one.path("dish").asText().equals(swap.dish()) && isOf(one, swap.item(), swap.standIn())) {
        swaps.remove(i);
      }
    }
  }
}
