package halfgram.desk;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.db.Tx;
import halfgram.input.Problem;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.News;
import halfgram.measure.Message;
import halfgram.prep.KitchenBook;
import halfgram.prep.TickStore.Origin;
import halfgram.station.Crew;
import halfgram.station.CrewEntry;
import halfgram.station.CrewStore;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * Takes what is said of a day's crew and machines: a cook does not come, is in at other times, or
 * as the shift says after all; units of a machine are broken, and mended.
 *
 * <p>Rules. An entry that its device has sent before changes nothing and gets the same answer. What
 * is typed wrong is told field by field ({@link CrewTimes}); what {@link Crew} refuses is not kept.
 * Nothing here moves work: that is for whoever plans the day.
 */
public final class RollCall {
  static final String KIND = "crew";

  /**
   * An entry as it came, as typed.
   *
   * @param id made by the device; when it made none, one is made here
   * @param from "15:30", or "2026-12-07T15:30" on another day
   * @param ends the breakdown that is over
   */
  public record Asked(
      Optional<UUID> id,
      CrewEntry.Kind kind,
      String person,
      String machine,
      String units,
      String from,
      String until,
      Optional<String> note,
      String who,
      Optional<UUID> ends,
      Optional<UUID> undoes,
      Origin origin) {}

  /** What became of it. */
  public sealed interface Outcome permits Taken, Wrong, Refused {}

  /** It is kept, now or before. */
  public record Taken(CrewEntry entry, long change, boolean repeated) implements Outcome {}

  /** Something is typed wrong; the paths are the names of the fields. */
  public record Wrong(List<Problem> problems) implements Outcome {}

  /** A rule does not let it. */
  public record Refused(Message because) implements Outcome {}

  /**
   * A business day.
   *
   * @param said what was said of it, of machines what was ever said, in the order it was said
   */
  public record Board(House house, LocalDate day, Crew crew, List<CrewEntry> said) {}

  private final Desk desk;
  private final KitchenStore kitchens = new KitchenStore();
  private final CrewStore store = new CrewStore();

  public RollCall(Desk desk) {
    this.desk = desk;
  }

  /** Who is in on a business day, and what works. */
  public Board board(House house, LocalDate day) {
    return desk.read(tx -> board(tx, house, day));
  }

  /** The same, remembered until the next change. */
  public Crew crew(House house, LocalDate day) {
    return desk.remembered(
        house,
        new CrewOf(day),
        Memory.AfterTick.same(),
        tx -> crew(house.book(), day, store.list(tx, house.id(), day)));
  }

  /** What is remembered of a day. */
  private record CrewOf(LocalDate day) {}

  Board board(Tx tx, House house, LocalDate day) {
    List<CrewEntry> said = store.list(tx, house.id(), day);
    return new Board(house, day, crew(house.book(), day, said), said);
  }

  private static Crew crew(KitchenBook book, LocalDate day, List<CrewEntry> said) {
    return Crew.of(day, book.kitchen().clock(), book.people(), book.equipment().values(), said);
  }

  /** Takes an entry about a business day. */
  public Outcome enter(House house, LocalDate day, Asked asked) {
    return desk.write(
        house,
        tx -> enter(tx, house, day, asked),
        outcome -> outcome instanceof Taken taken && !taken.repeated() ? taken.change() : 0);
  }

  private Outcome enter(Tx tx, House house, LocalDate day, Asked asked) {
    KitchenStore.Stand stand = kitchens.lock(tx, house.id());
    Origin origin = asked.origin();
    Optional<CrewStore.Stored> before =
        store.find(tx, house.id(), origin.device(), origin.sequence());
    if (before.isPresent()) {
      return new Taken(before.get().entry(), before.get().change(), true);
    }
    Optional<UUID> used = asked.id().filter(id -> store.has(tx, house.id(), id));
    if (used.isPresent()) {
      return new Refused(Message.of("tick.refused.id-taken", used.get()));
    }
    Board board = board(tx, desk.open(tx, stand), day);
    CrewTimes typed = new CrewTimes(board, desk.now());
    Optional<CrewEntry> entry = typed.read(asked);
    if (entry.isEmpty()) {
      return new Wrong(typed.problems());
    }
    Optional<Message> because = board.crew().refuse(entry.get());
    if (because.isPresent()) {
      return new Refused(because.get());
    }
    long change = log(tx, board.house(), entry.get());
    store.add(tx, house.id(), new CrewStore.Stored(entry.get(), origin, change));
    return new Taken(entry.get(), change, false);
  }

  private long log(Tx tx, House house, CrewEntry entry) {
    ObjectNode detail = JsonNodeFactory.instance.objectNode();
    detail.put("entry", entry.id().toString());
    detail.put("kind", entry.kind().word());
    detail.put("day", entry.day().toString());
    if (!entry.person().isEmpty()) {
      detail.put("person", entry.person());
    }
    if (!entry.machine().isEmpty()) {
      detail.put("machine", entry.machine());
    }
    if (entry.kind() == CrewEntry.Kind.BROKEN) {
      detail.put("units", entry.units());
    }
    entry.from().ifPresent(from -> detail.put("from", from.toString()));
    entry.until().ifPresent(until -> detail.put("until", until.toString()));
    entry.note().ifPresent(note -> detail.put("note", note));
    entry.ends().ifPresent(ends -> detail.put("ends", ends.toString()));
    entry.undoes().ifPresent(undoes -> detail.put("undoes", undoes.toString()));
    News news = News.note(KIND, entry.subject(), detail.toString(), entry.who());
    return kitchens.change(tx, house.id(), news, entry.at());
  }
}
