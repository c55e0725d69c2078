package halfgram.testkit;

import halfgram.Settings;
import halfgram.Wiring;
import halfgram.db.Sync;
import halfgram.desk.Demo;
import halfgram.desk.House;
import halfgram.desk.ImportBook;
import halfgram.desk.Signing;
import halfgram.kitchen.KitchenStore.Stand;
import halfgram.pages.door.Opening;
import halfgram.people.Account;
import halfgram.people.AccountStore;
import halfgram.people.Member;
import halfgram.people.Role;
import halfgram.prep.schedule.Placing;
import halfgram.web.Server;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/**
 * The whole server in this process, with the demo kitchen on its Saturday, 5 December 2026, and a
 * clock that stands at nine in the morning until a test moves it. Close it after use.
 */
public final class Site implements AutoCloseable {
  /** Code of the demo kitchen. */
  public static final String KITCHEN = "TARN";

  /** Opens the way for commands. */
  public static final String SECRET = "secret-of-a-test";

  /** Opens the page of the first kitchen. */
  public static final String FIRST = "first-of-a-test";

  public static final LocalDate DAY = LocalDate.of(2026, 12, 5);

  /** Who signs in when a test does not say who. */
  public static final String OFFICE = "office";

  private static final List<Site> OPEN = new CopyOnWriteArrayList<>();

  private static final ZoneId ZONE = ZoneId.of("Europe/Copenhagen");

  private final StandingClock clock = new StandingClock(at("09:00"));
  private final AtomicReference<Executor> later = new AtomicReference<>(Runnable::run);
  private final AtomicReference<Placing> placing = new AtomicReference<>(KnownRotas::shortly);
  private final Optional<Path> folder;
  private final Settings settings;
  private final Wiring wiring;
  private final Server server;
  private final int port;

  private Site(Optional<Path> folder, Settings settings, UnaryOperator<Sync> around) {
    this.folder = folder;
    this.settings = settings;
    this.wiring =
        Wiring.open(
            settings,
            clock,
            around,
            (day, budget) -> placing.get().place(day, budget),
            task -> later.get().execute(task));
    this.server =
        wiring.server(
            new Server.Options(
                "127.0.0.1",
                0,
                Optional.empty(),
                Optional.empty(),
                false,
                false,
                Optional.of(Set.of("localhost", "127.0.0.1"))),
            SECRET,
            new Opening(true, FIRST));
    this.port = server.start();
    OPEN.add(this);
  }

  /** With the demo kitchen, on H2 in a folder of its own; brought in once and then copied. */
  public static Site demo() {
    Path folder = folder();
    try (Stream<Path> files = Files.list(Imported.FOLDER)) {
      for (Path file : files.toList()) {
        Files.copy(file, folder.resolve(file.getFileName()));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return in(folder);
  }

  /** Lets something else run what pages do not wait for; at first it is run at once. */
  public void setLater(Executor executor) {
    later.set(executor);
  }

  /** Searches as long as the product does for who does what when; at first a sixtieth of it. */
  public Site searchFully() {
    placing.set(KnownRotas::fully);
    return this;
  }

  /** With no kitchen, on H2 in a folder of its own. */
  public static Site empty() {
    return in(folder());
  }

  private static Site in(Path folder) {
    return new Site(Optional.of(folder), settings(folder), UnaryOperator.identity());
  }

  private static Path folder() {
    try {
      return Files.createTempDirectory("halfgram-site");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Wiring open(Settings settings) {
    return Wiring.open(settings, new StandingClock(at("09:00")), KnownRotas::shortly);
  }

  /** The demo kitchen as it stands after its book came in, made when it is first asked for. */
  private static final class Imported {
    private static final Path FOLDER = made();

    private static Path made() {
      Path folder = folder();
      Settings settings = settings(folder);
      try (Wiring wiring = open(settings)) {
        bringIn(wiring, Demo.book(DAY));
      }
      Runtime.getRuntime().addShutdownHook(new Thread(() -> delete(folder)));
      return folder;
    }
  }

  /** As {@link Imported}, on PostgreSQL. */
  private static final class ImportedOnPostgres {
    private static final Postgres.Jdbc JDBC = made();

    private static Postgres.Jdbc made() {
      Postgres.Jdbc jdbc = Postgres.create();
      try (Wiring wiring = open(settings(jdbc))) {
        bringIn(wiring, Demo.book(DAY));
      }
      return jdbc;
    }
  }

  /** With the demo kitchen, on a PostgreSQL database of its own, copied from one. */
  public static Site demoOnPostgres() {
    return new Site(
        Optional.empty(),
        settings(Postgres.copyOf(ImportedOnPostgres.JDBC)),
        UnaryOperator.identity());
  }

  /** With no kitchen, on a PostgreSQL database of its own. */
  public static Site emptyOnPostgres() {
    return new Site(Optional.empty(), settings(Postgres.create()), UnaryOperator.identity());
  }

  private static Settings settings(Postgres.Jdbc jdbc) {
    return new Settings(
        Optional.of(jdbc.url()),
        Optional.of(jdbc.user()),
        Optional.of(jdbc.password()),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Path.of("."));
  }

  private static Settings settings(Path folder) {
    return new Settings(
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        folder);
  }

  /** Brings a book in; it must have no problem. */
  public void importBook(byte[] book) {
    bringIn(wiring, book);
  }

  /** Brings a book in; "office", who has no password, is its owner. */
  private static void bringIn(Wiring wiring, byte[] book) {
    ImportBook.Outcome outcome = wiring.importBook().importBook(book, "test");
    if (outcome.kitchen().isEmpty()) {
      throw new IllegalArgumentException(outcome.problems() + " " + outcome.unreadable());
    }
    Stand kitchen = wiring.desk().findStand(outcome.kitchen().get()).orElseThrow();
    wiring
        .desk()
        .read(
            tx -> {
              AccountStore accounts = new AccountStore();
              Instant now = wiring.desk().now();
              Account office =
                  accounts.find(tx, OFFICE).orElseGet(() -> accounts.add(tx, OFFICE, OFFICE, now));
              accounts.put(tx, kitchen.id(), new Member(office, Role.OWNER, Optional.empty(), now));
              return true;
            });
  }

  public Wiring wiring() {
    return wiring;
  }

  public House house() {
    return wiring.desk().find(KITCHEN).orElseThrow();
  }

  /** "http://127.0.0.1:PORT", without a slash. */
  public String address() {
    return "http://127.0.0.1:" + port;
  }

  /** A browser without scripts, new to the site, in which the owner has signed in. */
  public Client client() {
    return stranger().withCookie("session", session());
  }

  /** A browser without scripts in which nobody has signed in. */
  public Client stranger() {
    return new Client(address());
  }

  /** The token of a session that the owner has just opened; of nobody while there is no kitchen. */
  public String session() {
    return session(OFFICE);
  }

  /** The token of a session that somebody without a password has just opened. */
  public String session(String name) {
    Optional<Account> account = wiring.desk().read(tx -> new AccountStore().find(tx, name));
    return account
        .flatMap(
            one ->
                wiring.people().kitchensOf(one.id()).stream()
                    .findFirst()
                    .flatMap(
                        kitchen ->
                            wiring
                                .signing()
                                .signInToDemo(
                                    kitchen.id(), one.id(), new Signing.From("test", "here"))))
        .map(Signing.In::token)
        .orElse("0".repeat(43));
  }

  /** The site of this process that an address belongs to. */
  static Optional<Site> find(String url) {
    return OPEN.stream().filter(site -> url.startsWith(site.address() + "/")).findFirst();
  }

  /** A script that calls the JSON API. */
  public Script script() {
    return new Script(client());
  }

  /** The server's routes: "GET /k/{kitchen}/stock". */
  public List<String> routes() {
    return server.routes();
  }

  /** A moment of the demo's Saturday by the kitchen's clock: "16:00". */
  public static Instant at(String time) {
    return LocalDateTime.parse(DAY + "T" + time).atZone(ZONE).toInstant();
  }

  /** Sets the clock. */
  public void setClock(Instant now) {
    clock.now.set(now);
  }

  public void passTime(Duration time) {
    clock.now.updateAndGet(now -> now.plus(time));
  }

  /** Another server on the same database, with a clock of its own that shows the same. */
  public Site beside() {
    Site site = new Site(Optional.empty(), settings, UnaryOperator.identity());
    site.setClock(clock.instant());
    return site;
  }

  /** The same database and the same time, after the server was stopped and started again. */
  public Site restarted() {
    OPEN.remove(this);
    server.close();
    wiring.close();
    Site site = new Site(folder, settings, UnaryOperator.identity());
    site.setClock(clock.instant());
    return site;
  }

  /** A number no device has used. */
  public static long sequence() {
    return UUID.randomUUID().getMostSignificantBits() >>> 12;
  }

  @Override
  public void close() {
    OPEN.remove(this);
    server.close();
    wiring.close();
    folder.ifPresent(Site::delete);
  }

  private static void delete(Path folder) {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Stands where it is put. */
  private static final class StandingClock extends Clock {
    private final AtomicReference<Instant> now;

    private StandingClock(Instant start) {
      this.now = new AtomicReference<>(start);
    }

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      throw new UnsupportedOperationException();
    }

    @Override
    public Instant instant() {
      return now.get();
    }
  }
}
