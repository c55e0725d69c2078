package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookReader;
import halfgram.book.BookStore;
import halfgram.db.Tx;
import halfgram.event.EventStore;
import halfgram.input.Problem;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.Change;
import halfgram.kitchen.KitchenStore.News;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;

/**
 * Changes events: their covers, all of them, or takes them out and puts them back. The whole book
 * is read with the change first, so that nothing is stored which would not plan. No plan in force
 * changes: that is for whoever accepts the next one. Doing the same twice does it once.
 */
public final class Events {
  private static final String KIND = "event";
  private static final String REMOVED = "removed";
  private static final String BEFORE = "before";
  private static final String DRAFT = "draft";
  private static final int MOST_CHANGES = 400;

  /** What became of it. */
  public sealed interface Outcome permits Saved, Stale, Problems, NoSuch {}

  /** It is stored, now or from the same change before. */
  public record Saved(long change) implements Outcome {}

  /** Somebody has changed it meanwhile: the event as it is now. */
  public record Stale(EventStore.Saved current) implements Outcome {}

  /**
   * The book does not read with it.
   *
   * @param event path of the event in the book, which its own problems' paths begin with
   */
  public record Problems(String event, List<Problem> list) implements Outcome {}

  /** There is no such event. */
  public record NoSuch() implements Outcome {}

  /**
   * An event as it would be, in its book, before anything is stored.
   *
   * @param house the kitchen with the event in; empty when there are problems
   */
  public record Tried(Optional<House> house, Problems problems) {}

  /** An event taken out, as the log keeps it. */
  public record Removed(Change change, ObjectNode body) {}

  private final Desk desk;
  private final KitchenStore kitchens = new KitchenStore();
  private final EventStore events = new EventStore();
  private final ExportBook export = new ExportBook();

  public Events(Desk desk) {
    this.desk = desk;
  }

  public Optional<EventStore.Saved> find(House house, String code) {
    return desk.read(tx -> events.find(tx, house.id(), code));
  }

  /** All events, in the order of the book. */
  public List<EventStore.Saved> list(House house) {
    return desk.read(tx -> events.list(tx, house.id()));
  }

  /**
   * What of an event as it would be is to be doubted; paths begin at the event.
   *
   * @param house the kitchen before
   */
  public List<Problem> doubts(House house, JsonNode event) {
    JsonNode before =
        house.tree().path("events").path(index(house.tree(), event.path("code").asText()));
    return Doubts.list("$", before, event, house.day(desk.now()));
  }

  /** An event's body as a tree of its own. */
  public static ObjectNode body(EventStore.Saved saved) {
    return (ObjectNode) BookStore.parse(saved.body());
  }

  /** The changes of an event, newest first. */
  public List<Change> listChanges(House house, String code) {
    return changes(house).stream().filter(change -> change.subject().equals(code)).toList();
  }

  /** Events that were taken out and are not there now, the last one first. */
  public List<Removed> listRemoved(House house) {
    Set<String> settled =
        new HashSet<>(house.book().allEvents().stream().map(e -> e.code()).toList());
    List<Removed> removed = new ArrayList<>();
    for (Change change : changes(house)) {
      if (settled.add(change.subject())) {
        removed(change).ifPresent(removed::add);
      }
    }
    return removed;
  }

  /** Whether an event was taken out and is not there now. */
  public boolean isRemoved(House house, String code) {
    return listRemoved(house).stream().anyMatch(one -> one.change().subject().equals(code));
  }

  private List<Change> changes(House house) {
    return desk.read(
        tx -> kitchens.listBefore(tx, house.id(), Long.MAX_VALUE, Set.of(KIND), MOST_CHANGES));
  }

  private static Optional<Removed> removed(Change change) {
    JsonNode detail = BookStore.parse(change.detail());
    return detail.has(REMOVED) && detail.get(BEFORE) instanceof ObjectNode body
        ? Optional.of(new Removed(change, body))
        : Optional.empty();
  }

  /**
   * Saves an event whole, as the book writes it; its code is in the body.
   *
   * @param seen number of the event's last change that was seen; empty for one that is not there
   */
  public Outcome save(House house, OptionalLong seen, ObjectNode body, String who) {
    return desk.write(
        house,
        tx -> {
          House now = desk.open(tx, kitchens.lock(tx, house.id()));
          String code = body.path("code").asText();
          Optional<EventStore.Saved> there = events.find(tx, house.id(), code);
          if (there.isEmpty() && seen.isPresent()) {
            return new NoSuch();
          }
          return store(tx, now, there, seen, body, who);
        });
  }

  /**
   * Adds an event; one that says the same already is as good.
   *
   * @param body with the code it would like; another gets a number behind it when that is taken
   * @return what became of it; the body has the code it got
   */
  public Outcome add(House house, ObjectNode body, String who) {
    return desk.write(
        house,
        tx -> {
          House now = desk.open(tx, kitchens.lock(tx, house.id()));
          String wanted = body.path("code").asText();
          Optional<EventStore.Saved> there = events.find(tx, house.id(), wanted);
          for (int i = 2; there.isPresent() && !isSame(there.get(), body); i++) {
            body.put("code", wanted + "-" + i);
            there = events.find(tx, house.id(), wanted + "-" + i);
          }
          return store(tx, now, there, OptionalLong.empty(), body, who);
        });
  }

  /** Takes an event out; the log keeps it, and what tubs kept for it is free. */
  public Outcome remove(House house, String code, long seen, String who) {
    return desk.write(
        house,
        tx -> {
          House now = desk.open(tx, kitchens.lock(tx, house.id()));
          Optional<EventStore.Saved> there = events.find(tx, house.id(), code);
          if (there.isEmpty()) {
            return new NoSuch();
          }
          if (there.get().change() != seen) {
            return new Stale(there.get());
          }
          ObjectNode before = body(there.get());
          ObjectNode detail = JsonNodeFactory.instance.objectNode();
          detail.put(REMOVED, true);
          covers(detail, before.path("name"), counted(before), 0);
          detail.set(BEFORE, before);
          long change = log(tx, now, code, detail, who);
          events.remove(tx, house.id(), code);
          reserved(tx, house, change, who).takenOut(code);
          return new Saved(change);
        });
  }

  /** Puts back an event that was taken out, as it was. */
  public Outcome putBack(House house, String code, String who) {
    Optional<EventStore.Saved> there = find(house, code);
    if (there.isPresent()) {
      return new Saved(there.get().change());
    }
    Optional<Removed> removed =
        listRemoved(house).stream().filter(one -> one.change().subject().equals(code)).findFirst();
    if (removed.isEmpty()) {
      return new NoSuch();
    }
    return desk.write(
        house,
        tx -> {
          House now = desk.open(tx, kitchens.lock(tx, house.id()));
          Optional<EventStore.Saved> stored = events.find(tx, house.id(), code);
          ObjectNode body = removed.get().body();
          Outcome outcome = store(tx, now, stored, OptionalLong.empty(), body, who);
          if (outcome instanceof Saved saved && stored.isEmpty()) {
            reserved(tx, house, saved.change(), who).putBack(body);
          }
          return outcome;
        });
  }

  /** Stores an event that is there with a change of its own, under the kitchen's lock. */
  Outcome keep(Tx tx, House house, ObjectNode body, String who) {
    Optional<EventStore.Saved> there = events.find(tx, house.id(), body.path("code").asText());
    OptionalLong seen =
        there.isPresent() ? OptionalLong.of(there.get().change()) : OptionalLong.empty();
    return store(tx, house, there, seen, body, who);
  }

  /** The kitchen with an event as it would be; nothing is stored. */
  public Tried look(House house, ObjectNode body) {
    return desk.read(tx -> look(tx, house, body));
  }

  private Tried look(Tx tx, House house, ObjectNode body) {
    ObjectNode tree = export.export(tx, house).deepCopy();
    int index = put(tree, body);
    BookReader.Outcome read = desk.check(tree);
    Problems problems = problems(index, read);
    if (!problems.list().isEmpty()) {
      return new Tried(Optional.empty(), problems);
    }
    // Without tubs it is the book that the desk opens once this is stored: read once for both.
    ObjectNode alone = house.tree().deepCopy();
    put(alone, body);
    return new Tried(Optional.of(new House(house.stand(), desk.bookOf(alone), alone)), problems);
  }

  private Outcome store(
      Tx tx,
      House house,
      Optional<EventStore.Saved> there,
      OptionalLong seen,
      ObjectNode body,
      String who) {
    if (there.isPresent()) {
      EventStore.Saved current = there.get();
      if (isSame(current, body)) {
        return new Saved(current.change());
      }
      if (seen.isEmpty() || seen.getAsLong() != current.change()) {
        return new Stale(current);
      }
    }
    Tried tried = look(tx, house, body);
    if (tried.house().isEmpty()) {
      return tried.problems();
    }
    String code = body.path("code").asText();
    long change = log(tx, house, code, detail(there.map(Events::body), body), who);
    int place = house.tree().path("events").size();
    LocalDate date = LocalDate.parse(body.path("date").asText());
    events.save(tx, house.id(), place, new EventStore.Saved(code, date, body.toString(), change));
    List<JsonNode> before = there.map(Events::body).<List<JsonNode>>map(List::of).orElse(List.of());
    reserved(tx, house, change, who).changed(before, List.of(body));
    return new Saved(change);
  }

  private Reserved reserved(Tx tx, House house, long change, String who) {
    return new Reserved(tx, house.id(), change, who, desk.now());
  }

  /** Whether a body, as the book writes it, is that of a draft. */
  public static boolean isDraft(JsonNode body) {
    return body.path(DRAFT).asBoolean(false);
  }

  /** A copy of a body that is agreed. */
  public static ObjectNode agreed(ObjectNode body) {
    ObjectNode agreed = body.deepCopy();
    agreed.remove(DRAFT);
    return agreed;
  }

  private static boolean isSame(EventStore.Saved stored, ObjectNode body) {
    return body(stored).equals(BookStore.parse(body.toString()));
  }

  private long log(Tx tx, House house, String code, ObjectNode detail, String who) {
    News news = News.fact(KIND, code, detail.toString(), who);
    return kitchens.change(tx, house.id(), news, desk.now());
  }

  /**
   * What the log keeps: the covers when they changed, whether it became a draft or was agreed, what
   * the event was and what it is.
   */
  private static ObjectNode detail(Optional<ObjectNode> before, ObjectNode body) {
    ObjectNode detail = JsonNodeFactory.instance.objectNode();
    if (before.isEmpty()) {
      detail.set("added", body.path("name"));
      if (isDraft(body)) {
        detail.put(DRAFT, true);
      }
      covers(detail, body.path("name"), 0, counted(body));
      detail.set("after", body);
      return detail;
    }
    int from = counted(before.get());
    int to = counted(body);
    if (from != to) {
      covers(detail, body.path("name"), from, to);
    }
    if (isDraft(before.get()) != isDraft(body)) {
      detail.put(DRAFT, isDraft(body));
    }
    detail.set(BEFORE, before.get());
    detail.set("after", body);
    return detail;
  }

  private static void covers(ObjectNode detail, JsonNode name, int from, int to) {
    ObjectNode covers = detail.putObject("covers");
    if (name.isTextual()) {
      covers.putObject("name").set("en", name);
    } else {
      covers.set("name", name);
    }
    covers.put("from", from);
    covers.put("to", to);
  }

  /** The number a body is planned for: final, else expected. */
  static int counted(JsonNode body) {
    JsonNode covers = body.path("covers");
    return covers.hasNonNull("final")
        ? covers.path("final").asInt()
        : covers.path("expected").asInt();
  }

  private static int put(ObjectNode tree, ObjectNode body) {
    ArrayNode list = tree.withArray("events");
    int index = index(tree, body.path("code").asText());
    if (index < list.size()) {
      list.set(index, body);
    } else {
      list.add(body);
    }
    return index;
  }

  /** Where an event stands in a book; behind the last when it is not there. */
  private static int index(ObjectNode tree, String code) {
    JsonNode list = tree.path("events");
    int at = 0;
    while (at < list.size() && !list.get(at).path("code").asText().equals(code)) {
      at++;
    }
    return at;
  }

  private static Problems problems(int index, BookReader.Outcome read) {
    String path = "$.events[" + index + "]";
    return read.unreadable()
        .map(said -> new Problems(path, List.of(new Problem(path, "", said))))
        .orElseGet(() -> new Problems(path, read.problems()));
  }
}
