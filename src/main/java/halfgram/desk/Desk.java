package halfgram.desk;

import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookReader;
import halfgram.book.BookStore;
import halfgram.book.Namesakes;
import halfgram.book.Sizes;
import halfgram.db.Database;
import halfgram.db.Tx;
import halfgram.input.Problem;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.Stand;
import halfgram.prep.KitchenBook;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.Lock;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.ToLongFunction;

/** Opens kitchens for the verbs, and says when something has changed. */
public final class Desk {

  /** Told of every change once it is on disk: the kitchen's code and the change's number. */
  public interface Signal {
    void changed(String kitchen, long number);
  }

  private static final int KEPT = 4;

  /** What books read as, for all desks of this process: it depends on the text alone. */
  private static final LastFew<String, BookReader.Outcome> OUTCOMES = new LastFew<>(KEPT);

  private static final long READ_MILLIS = 1000;

  private final Database database;
  private final BookReader reader;
  private final Clock clock;
  private final Signal signal;
  private final KitchenStore kitchens = new KitchenStore();
  private final BookStore books = new BookStore();
  private final Map<UUID, House> opened;
  private final Memory memory;
  private final Map<UUID, Lock> turns;

  public Desk(Database database, BookReader reader, Clock clock, Signal signal) {
    this(
        database,
        reader,
        clock,
        signal,
        new ConcurrentHashMap<>(),
        new Memory(),
        new ConcurrentHashMap<>());
  }

  private Desk(
      Database database,
      BookReader reader,
      Clock clock,
      Signal signal,
      Map<UUID, House> opened,
      Memory memory,
      Map<UUID, Lock> turns) {
    this.database = database;
    this.reader = reader;
    this.clock = clock;
    this.signal = signal;
    this.opened = opened;
    this.memory = memory;
    this.turns = turns;
  }

  /** The same desk with a clock that stands at a moment: for what was done then and comes now. */
  Desk at(Instant moment) {
    return new Desk(
        database, reader, Clock.fixed(moment, ZoneOffset.UTC), signal, opened, memory, turns);
  }

  /** Now, to the microsecond that a database keeps. */
  public Instant now() {
    return clock.instant().truncatedTo(ChronoUnit.MICROS);
  }

  Memory memory() {
    return memory;
  }

  /** Writers of a kitchen come one after the other, as they would at the lock of its row. */
  private Lock turn(UUID kitchen) {
    return turns.computeIfAbsent(kitchen, any -> new ReentrantLock());
  }

  /**
   * What somebody reads of a kitchen for a page, as of the change at which the request found it.
   *
   * @param what names it within the kitchen
   */
  <V> V remembered(House house, Object what, Memory.AfterTick<V> after, Function<Tx, V> work) {
    return memory.get(house.id(), house.stand().change(), what, after, () -> read(house, work));
  }

  /**
   * Reads what is to be remembered, while no writer of this process has its turn: under many
   * writers nothing would stay the same for as long as it is read.
   */
  <V> Memory.Read<V> read(House house, Function<Tx, V> work) {
    Lock turn = turn(house.id());
    boolean ours = hasTurn(turn);
    try {
      return database.read(
          tx -> {
            long before = kitchens.change(tx, house.id());
            return new Memory.Read<>(work.apply(tx), before, kitchens.change(tx, house.id()));
          });
    } finally {
      if (ours) {
        turn.unlock();
      }
    }
  }

  /** Nobody waits forever: who reads without the turn may only have to read once more. */
  private static boolean hasTurn(Lock turn) {
    try {
      return turn.tryLock(READ_MILLIS, TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  public BookReader reader() {
    return reader;
  }

  public boolean isAlive() {
    return database.isAlive();
  }

  public List<Stand> list() {
    return database.read(kitchens::list);
  }

  public Optional<Stand> findStand(String code) {
    return database.read(tx -> kitchens.find(tx, code));
  }

  /** Whether it is the demo, with invented people. */
  public boolean isDemo(Stand kitchen) {
    return database.read(tx -> kitchens.isDemo(tx, kitchen.id()));
  }

  /** A kitchen by its code, with its book as it is now. */
  public Optional<House> find(String code) {
    return database.read(tx -> kitchens.find(tx, code).map(stand -> open(tx, stand)));
  }

  /** A kitchen with its book, for somebody who has just asked how it stands. */
  public House open(Stand stand) {
    return find(stand).orElseGet(() -> database.read(tx -> open(tx, stand)));
  }

  /** The same kitchen as it is now. */
  public House again(House house) {
    return find(house.code()).orElseThrow();
  }

  /** Reads within one transaction. */
  public <T> T read(Function<Tx, T> work) {
    return database.read(work);
  }

  /**
   * Does all of it or nothing for what no page of the kitchen shows; answers when it is on disk.
   */
  <T> T keep(Function<Tx, T> work) {
    return database.write(work);
  }

  /** As {@link #keep}, for what may be lost: answers before it is on disk. */
  void note(Consumer<Tx> work) {
    database.note(work);
  }

  /** Does all of it or nothing; answers when it is on disk, then signals what changed. */
  public <T> T write(House house, Function<Tx, T> work) {
    T answer = database.write(turn(house.id()), work, done -> {});
    signal.changed(house.code(), findStand(house.code()).map(Stand::change).orElse(0L));
    return answer;
  }

  /**
   * As {@link #write(House, Function)}, for work that knows the number of its change.
   *
   * @param change the number, or 0 when nothing has changed
   */
  <T> T write(House house, Function<Tx, T> work, ToLongFunction<T> change) {
    return write(house, work, answer -> {}, change);
  }

  /**
   * As above.
   *
   * @param committed told of the answer as soon as others can see what was written
   */
  <T> T write(House house, Function<Tx, T> work, Consumer<T> committed, ToLongFunction<T> change) {
    T answer = database.write(turn(house.id()), work, committed);
    long number = change.applyAsLong(answer);
    if (number > 0) {
      signal.changed(house.code(), number);
    }
    return answer;
  }

  /** As {@link #write(House, Function)} for kitchens that may not be there before. */
  <T> T write(Set<String> codes, Function<Tx, T> work) {
    T answer = database.write(work);
    for (String code : codes) {
      signal.changed(code, findStand(code).map(Stand::change).orElse(0L));
    }
    return answer;
  }

  /** The book is read again only when a fact has changed. */
  House open(Tx tx, Stand stand) {
    Optional<House> known = find(stand);
    if (known.isPresent()) {
      return known.get();
    }
    ObjectNode tree = books.load(tx, stand.id());
    House house = new House(stand, bookOf(tree), tree);
    opened.put(stand.id(), house);
    return house;
  }

  /** One that was read before and in which no fact has changed since. */
  private Optional<House> find(Stand stand) {
    return Optional.ofNullable(opened.get(stand.id()))
        .filter(known -> known.stand().facts() == stand.facts())
        .map(
            known ->
                known.stand().change() == stand.change()
                    ? known
                    : new House(stand, known.book(), known.tree()));
  }

  /**
   * What a book reads as. A change is looked at, stored and opened in turn: the same book is read
   * once.
   */
  BookReader.Outcome check(ObjectNode tree) {
    return check(tree.toString());
  }

  /** What a book's text reads as. */
  BookReader.Outcome check(String text) {
    return OUTCOMES.get(text, unread -> reader.read(unread.getBytes(StandardCharsets.UTF_8)));
  }

  /**
   * As above, for a change of a book: what is newly named like another is a problem too, and of far
   * too many things nothing more is said.
   */
  BookReader.Outcome check(ObjectNode before, ObjectNode tree) {
    List<Problem> sizes = Sizes.list(before, tree);
    if (!sizes.isEmpty()) {
      return BookReader.Outcome.refused(sizes);
    }
    BookReader.Outcome read = check(tree);
    List<Problem> namesakes = Namesakes.list(before, tree);
    return namesakes.isEmpty() ? read : read.with(namesakes);
  }

  /** A tree that was checked before it was stored. */
  public KitchenBook bookOf(ObjectNode tree) {
    BookReader.Outcome outcome = check(tree);
    return outcome
        .standing()
        .orElseThrow(
            () -> new IllegalStateException("a stored book does not read: " + outcome.problems()));
  }
}
