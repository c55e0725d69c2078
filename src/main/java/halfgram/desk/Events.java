package halfgram.desk;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookReader;
import halfgram.book.BookStore;
import halfgram.book.Moments;
import halfgram.db.Tx;
import halfgram.event.EventStore;
import halfgram.event.EventStore.Saved;
import halfgram.input.Problem;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.News;
import halfgram.prep.KitchenBook;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Changes events. What is saved is a fact at once; the plan in force stays until somebody accepts
 * what it would change.
 *
 * <p>Rules. An event is saved only as part of a book that reads whole. Who saves says which change
 * they saw last: when somebody else has changed the event since, nothing is saved. Sending the same
 * again changes nothing. A cancelled event can be put back from the log; tubs kept for it are free
 * meanwhile.
 */
public final class Events {
  private static final Set<String> KIND = Set.of("event");
  private static final int MOST_LOGGED = 2000;

  /** An event as stored: its body in the book's format, and the number of its last change. */
  public record Kept(String code, ObjectNode body, long change) {}

  /**
   * An event about to be saved.
   *
   * @param code empty for a new one: its name will give it
   * @param base number of the change that whoever edits has seen; 0 for a new one
   */
  public record Draft(Optional<String> code, ObjectNode body, long base) {}

  /**
   * A book with the event in it, checked.
   *
   * @param tree the book without tubs
   * @param book empty when there are problems
   * @param problems each with its path inside the event: {@code services[0].start}
   */
  public record Checked(ObjectNode tree, Optional<KitchenBook> book, List<Problem> problems) {}

  /** What became of it. */
  public sealed interface Outcome permits Done, Wrong, Stale {}

  /** It is stored, now or before. */
  public record Done(String code) implements Outcome {}

  public record Wrong(List<Problem> problems) implements Outcome {}

  /**
   * Somebody else has changed it.
   *
   * @param now as it is; empty when it is gone
   */
  public record Stale(Optional<Kept> now) implements Outcome {}

  private final Desk desk;
  private final KitchenStore kitchens = new KitchenStore();
  private final EventStore events = new EventStore();
  private final Reserved reserved = new Reserved();

  public Events(Desk desk) {
    this.desk = desk;
  }

  public Optional<Kept> find(House house, String code) {
    return desk.read(tx -> find(tx, house, code));
  }

  private Optional<Kept> find(Tx tx, House house, String code) {
    return events.find(tx, house.id(), code).map(Events::kept);
  }

  private static Kept kept(Saved saved) {
    return new Kept(saved.code(), (ObjectNode) BookStore.parse(saved.body()), saved.change());
  }

  /** What happened to an event, newest first. */
  public List<Happening> history(House house, String code) {
    return all(house).stream().filter(one -> one.event().equals(code)).toList();
  }

  /** Events that are cancelled and lie in no past, each with how it was. */
  public List<Happening> listCancelled(House house) {
    LocalDate today = house.day(desk.now());
    Set<String> there = new HashSet<>();
    house.book().events().forEach(event -> there.add(event.code()));
    List<Happening> cancelled = new ArrayList<>();
    for (Happening one : all(house)) {
      if (there.add(one.event()) && one.act() == Happening.Act.CANCELLED) {
        one.before()
            .flatMap(body -> Moments.date(body.path("date").asText()))
            .filter(date -> !date.isBefore(today))
            .ifPresent(date -> cancelled.add(one));
      }
    }
    return cancelled;
  }

  private List<Happening> all(House house) {
    return desk.read(
        tx ->
            kitchens.listBefore(tx, house.id(), Long.MAX_VALUE, KIND, MOST_LOGGED).stream()
                .map(Happening::of)
                .toList());
  }

  /** The book as it would be with an event in it. */
  public Checked check(House house, ObjectNode body) {
    ObjectNode tree = house.tree().deepCopy();
    ArrayNode list = tree.withArray("events");
    String code = body.path("code").asText();
    int at = list.size();
    for (int i = 0; i < list.size(); i++) {
      at = list.get(i).path("code").asText().equals(code) ? i : at;
    }
    if (at == list.size()) {
      list.add(body);
    } else {
      list.set(at, body);
    }
    BookReader.Outcome outcome =
        desk.reader().read(tree.toString().getBytes(StandardCharsets.UTF_8));
    String prefix = "$.events[" + at + "]";
    List<Problem> problems =
        outcome.problems().stream()
            .map(
                one ->
                    new Problem(
                        one.path().startsWith(prefix)
                            ? one.path().substring(prefix.length()).replaceFirst("^\\.", "")
                            : one.path(),
                        one.value(),
                        one.message()))
            .toList();
    return new Checked(tree, outcome.book(), problems);
  }

  /** Stores an event as a fact. */
  public Outcome save(House house, Draft draft, String who) {
    return desk.write(house, tx -> save(tx, house, draft, who));
  }

  private Outcome save(Tx tx, House house, Draft draft, String who) {
    House now = desk.open(tx, kitchens.lock(tx, house.id()));
    ObjectNode body = draft.body();
    String code = draft.code().orElseGet(() -> body.path("code").asText());
    Optional<Kept> there = find(tx, now, code);
    if (there.filter(kept -> isSame(kept.body(), body)).isPresent()) {
      return new Done(code);
    }
    if (draft.code().isEmpty() && there.isPresent()) {
      code = free(now, code);
      body.put("code", code);
      there = Optional.empty();
    }
    if (there.map(Kept::change).orElse(0L) != draft.base()) {
      return new Stale(there);
    }
    Checked checked = check(now, body);
    if (checked.book().isEmpty()) {
      return new Wrong(checked.problems());
    }
    Happening.Act act = there.isPresent() ? Happening.Act.CHANGED : Happening.Act.ADDED;
    keep(tx, now, act, there.map(Kept::body), body, who);
    return new Done(code);
  }

  /** Whether two say the same, also when one writes a number with more zeros. */
  private static boolean isSame(ObjectNode one, ObjectNode other) {
    return BookStore.parse(one.toString()).equals(BookStore.parse(other.toString()));
  }

  /** A code nobody has, in the book or in the log. */
  private String free(House house, String code) {
    Set<String> taken = new HashSet<>();
    house.book().events().forEach(event -> taken.add(event.code()));
    int number = 2;
    while (taken.contains(code + "-" + number)) {
      number++;
    }
    return code + "-" + number;
  }

  private long keep(
      Tx tx,
      House house,
      Happening.Act act,
      Optional<ObjectNode> before,
      ObjectNode body,
      String who) {
    String code = body.path("code").asText();
    String detail = Happening.detail(act, before, Optional.of(body));
    long change =
        kitchens.change(tx, house.id(), News.fact("event", code, detail, who), desk.now());
    LocalDate date = Moments.date(body.path("date").asText()).orElse(LocalDate.EPOCH);
    int place = house.book().events().size();
    events.save(tx, house.id(), place, new Saved(code, date, body.toString(), change));
    return change;
  }

  /** Cancels an event, and frees what tubs keep for it; gone already is as good. */
  public Outcome cancel(House house, String code, long base, String who) {
    return desk.write(
        house,
        tx -> {
          kitchens.lock(tx, house.id());
          Optional<Kept> there = find(tx, house, code);
          if (there.isEmpty()) {
            return new Done(code);
          }
          if (there.get().change() != base) {
            return new Stale(there);
          }
          String detail =
              Happening.detail(
                  Happening.Act.CANCELLED, there.map(Kept::body), Optional.empty());
          long change =
              kitchens.change(tx, house.id(), News.fact("event", code, detail, who), desk.now());
          events.remove(tx, house.id(), code);
          reserved.free(tx, house.id(), code, change, who, desk.now());
          return new Done(code);
        });
  }

  /** Puts a cancelled event back as it was; there already is as good. */
  public Outcome putBack(House house, String code, String who) {
    Optional<ObjectNode> before =
        history(house, code).stream().findFirst().flatMap(Happening::before);
    return desk.write(
        house,
        tx -> {
          House now = desk.open(tx, kitchens.lock(tx, house.id()));
          if (find(tx, now, code).isPresent() || before.isEmpty()) {
            return new Done(code);
          }
          Checked checked = check(now, before.get());
          if (checked.book().isEmpty()) {
            return new Wrong(checked.problems());
          }
          long change =
              keep(tx, now, Happening.Act.PUT_BACK, Optional.empty(), before.get(), who);
          reserved.keepAgain(tx, now.id(), code, change, who, desk.now());
          return new Done(code);
        });
  }
}
