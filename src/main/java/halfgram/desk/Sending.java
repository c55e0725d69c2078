package halfgram.desk;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.db.Tx;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.News;
import halfgram.measure.Message;
import halfgram.pass.Called;
import halfgram.pass.Entry;
import halfgram.pass.Entry.PlateKey;
import halfgram.pass.EntryStore;
import halfgram.pass.Portion;
import halfgram.prep.Fire;
import halfgram.prep.KitchenBook;
import halfgram.prep.PlatingLine;
import halfgram.prep.ServiceRun;
import halfgram.prep.TickStore.Origin;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedSet;
import java.util.UUID;

/**
 * Takes what is entered while a service runs: a fire called, plates plated and sent, a dish that is
 * 86, ready and go.
 *
 * <p>Rules. An entry that its device has sent before changes nothing and gets the same answer. One
 * that {@link Called} refuses is not kept, and whoever sent it is told why. A plate sent keeps what
 * lay on it. Nothing here moves stock: that is for the close of the service.
 */
public final class Sending {
  static final String KIND = "service";

  /**
   * An entry as it came; the moment comes here.
   *
   * @param id made by the device, so that a later one can take it back before it was sent; when it
   *     made none, one is made here
   */
  public record Asked(
      Optional<UUID> id,
      String service,
      Entry.Kind kind,
      String course,
      String dish,
      SortedSet<String> diets,
      String item,
      String station,
      int number,
      Optional<String> note,
      String who,
      Optional<UUID> undoes,
      Origin origin) {

    PlateKey key() {
      return new PlateKey(course, dish, diets);
    }
  }

  /** What became of it. */
  public sealed interface Outcome permits Taken, Refused, NoSuch {}

  /** It is kept, now or before. */
  public record Taken(Entry entry, long change, boolean repeated) implements Outcome {}

  /** A rule does not let it. */
  public record Refused(Message because) implements Outcome {}

  /** The day has no such service, course, dish, component or station. */
  public record NoSuch(String what) implements Outcome {}

  private final Desk desk;
  private final Swapping swapping;
  private final KitchenStore kitchens = new KitchenStore();
  private final EntryStore entries = new EntryStore();

  public Sending(Desk desk, Swapping swapping) {
    this.desk = desk;
    this.swapping = swapping;
  }

  /** The same at a moment: for what is entered afterwards. */
  public Sending at(Instant moment) {
    return new Sending(desk.at(moment), swapping);
  }

  /** Takes an entry about a service of a day. */
  public Outcome enter(House house, LocalDate day, Asked asked) {
    return desk.write(
        house,
        tx -> enter(tx, house, day, asked),
        outcome -> outcome instanceof Taken taken && !taken.repeated() ? taken.change() : 0);
  }

  private Outcome enter(Tx tx, House house, LocalDate day, Asked asked) {
    KitchenStore.Stand stand = kitchens.lock(tx, house.id());
    Origin origin = asked.origin();
    Optional<EntryStore.Stored> before =
        entries.find(tx, house.id(), origin.device(), origin.sequence());
    if (before.isPresent()) {
      return new Taken(before.get().entry(), before.get().change(), true);
    }
    Optional<UUID> used = asked.id().filter(id -> entries.has(tx, house.id(), id));
    if (used.isPresent()) {
      return new Refused(Message.of("tick.refused.id-taken", used.get()));
    }
    House now = desk.open(tx, stand);
    Optional<ServiceRun> run =
        Services.runs(now.book(), day).stream()
            .filter(one -> one.id().equals(asked.service()))
            .findFirst();
    Optional<String> unknown =
        run.isEmpty() ? Optional.of(asked.service()) : unknown(now.book(), run.get(), asked);
    if (unknown.isPresent()) {
      return new NoSuch(unknown.get());
    }
    Entry entry = entry(day, run.orElseThrow(), asked);
    Called called = Called.of(entries.list(tx, house.id(), day));
    Optional<Message> because = called.refuse(entry);
    if (because.isPresent()) {
      return new Refused(because.get());
    }
    entry
        .undoes()
        .flatMap(called::find)
        .filter(undone -> undone.kind() == Entry.Kind.SWAP)
        .ifPresent(undone -> swapping.back(tx, now, undone, entry.who()));
    long change = log(kitchens, tx, now, entry);
    entries.add(tx, house.id(), new EntryStore.Stored(entry, origin, change));
    return new Taken(entry, change, false);
  }

  /** What of it the service does not have. */
  private static Optional<String> unknown(KitchenBook book, ServiceRun run, Asked asked) {
    boolean there =
        switch (asked.kind()) {
          case FIRE, GO ->
              Fire.list(book, run).stream().anyMatch(fire -> fire.code().equals(asked.course()));
          case READY ->
              book.stations().containsKey(asked.station())
                  && Fire.list(book, run).stream()
                      .anyMatch(fire -> fire.code().equals(asked.course()));
          case PLATING, PLATED, DONE ->
              PlatingLine.list(book, run).stream()
                  .anyMatch(
                      line ->
                          line.fire().code().equals(asked.course())
                              && line.dish().code().equals(asked.dish()));
          case SENT -> findPlates(run, asked.key()).isPresent();
          case OUT, BACK -> isServed(run, asked);
          case SWAP -> false;
          case UNDO -> true;
        };
    return there ? Optional.empty() : Optional.of(said(asked));
  }

  private static String said(Asked asked) {
    List<String> parts = List.of(asked.course(), asked.dish(), asked.item(), asked.station());
    return String.join(" ", parts.stream().filter(part -> !part.isEmpty()).toList());
  }

  static Optional<ServiceRun.Plates> findPlates(ServiceRun run, PlateKey key) {
    return run.plates().stream().filter(of -> PlateKey.of(of).equals(key)).findFirst();
  }

  /** A dish of the service, or a component of it; one of the two. */
  private static boolean isServed(ServiceRun run, Asked asked) {
    if (asked.item().isEmpty()) {
      return run.plates().stream().anyMatch(of -> of.dish().code().equals(asked.dish()));
    }
    return asked.dish().isEmpty()
        && run.uses().stream().anyMatch(use -> use.version().formula().equals(asked.item()));
  }

  private Entry entry(LocalDate day, ServiceRun run, Asked asked) {
    List<Portion> plate =
        asked.kind() == Entry.Kind.SENT
            ? Portion.of(findPlates(run, asked.key()).orElseThrow().items())
            : List.of();
    return new Entry(
        asked.id().orElseGet(UUID::randomUUID),
        day,
        asked.service(),
        asked.kind(),
        asked.course(),
        asked.dish(),
        asked.diets(),
        asked.item(),
        "",
        Optional.empty(),
        asked.station(),
        asked.number(),
        plate,
        asked.note(),
        asked.who(),
        desk.now(),
        asked.undoes());
  }

  static long log(KitchenStore kitchens, Tx tx, House house, Entry entry) {
    News news = News.note(KIND, entry.service(), detail(entry).toString(), entry.who());
    return kitchens.change(tx, house.id(), news, entry.at());
  }

  /** An entry as the log keeps it. */
  static ObjectNode detail(Entry entry) {
    ObjectNode detail = JsonNodeFactory.instance.objectNode();
    detail.put("entry", entry.id().toString());
    detail.put("kind", word(entry.kind()));
    put(detail, "course", entry.course());
    put(detail, "dish", entry.dish());
    put(detail, "diets", String.join(" ", entry.diets()));
    put(detail, "item", entry.item());
    put(detail, "with", entry.standIn());
    entry.confirmedBy().ifPresent(by -> detail.put("confirmedBy", by));
    put(detail, "station", entry.station());
    if (entry.kind().isCounted()) {
      detail.put("number", entry.number());
    }
    entry.note().ifPresent(note -> detail.put("note", note));
    entry.undoes().ifPresent(undoes -> detail.put("undoes", undoes.toString()));
    return detail;
  }

  private static void put(ObjectNode detail, String key, String value) {
    if (!value.isEmpty()) {
      detail.put(key, value);
    }
  }

  private static String word(Entry.Kind kind) {
    return kind.name().toLowerCase(Locale.ROOT);
  }
}
