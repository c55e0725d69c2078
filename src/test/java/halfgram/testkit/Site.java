package halfgram.testkit;

import halfgram.Settings;
import halfgram.Wiring;
import halfgram.db.Sync;
import halfgram.desk.Demo;
import halfgram.desk.House;
import halfgram.desk.ImportBook;
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

  public static final LocalDate DAY = LocalDate.of(2026, 12, 5);
  private static final ZoneId ZONE = ZoneId.of("Europe/Copenhagen");

  private final StandingClock clock = new StandingClock(at("09:00"));
  private final Optional<Path> folder;
  private final Wiring wiring;
  private final Server server;
  private final int port;

  private Site(Optional<Path> folder, Settings settings, UnaryOperator<Sync> around) {
    this.folder = folder;
    this.wiring = Wiring.open(settings, clock, around);
    this.server =
        wiring.server(
            new Server.Options(
                "127.0.0.1",
                0,
                Optional.empty(),
                Optional.empty(),
                false,
                Optional.of(Set.of("localhost", "127.0.0.1"))),
            SECRET);
    this.port = server.start();
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

  /** The demo kitchen as it stands after its book came in, made when it is first asked for. */
  private static final class Imported {
    private static final Path FOLDER = made();

    private static Path made() {
      Path folder = folder();
      Settings settings = settings(folder);
      try (Wiring wiring =
          Wiring.open(settings, new StandingClock(at("09:00")), UnaryOperator.identity())) {
        bringIn(wiring, Demo.book(DAY));
      }
      Runtime.getRuntime().addShutdownHook(new Thread(() -> delete(folder)));
      return folder;
    }
  }

  /** With the demo kitchen, on a PostgreSQL database of its own. */
  public static Site demoOnPostgres() {
    Site site = emptyOnPostgres();
    site.importBook(Demo.book(DAY));
    return site;
  }

  /** With no kitchen, on a PostgreSQL database of its own. */
  public static Site emptyOnPostgres() {
    Postgres.Jdbc jdbc = Postgres.create();
    Settings settings =
        new Settings(
            Optional.of(jdbc.url()),
            Optional.of(jdbc.user()),
            Optional.of(jdbc.password()),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Path.of("."));
    return new Site(Optional.empty(), settings, UnaryOperator.identity());
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

  private static void bringIn(Wiring wiring, byte[] book) {
    ImportBook.Outcome outcome = wiring.importBook().importBook(book, "test");
    if (outcome.kitchen().isEmpty()) {
      throw new IllegalArgumentException(outcome.problems() + " " + outcome.unreadable());
    }
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

  /** A browser without scripts, new to the site. */
  public Client client() {
    return new Client(address());
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

  /** A number no device has used. */
  public static long sequence() {
    return UUID.randomUUID().getMostSignificantBits() >>> 12;
  }

  @Override
  public void close() {
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
