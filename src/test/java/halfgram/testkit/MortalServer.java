package halfgram.testkit;

import halfgram.Settings;
import halfgram.Wiring;
import halfgram.db.Sync;
import halfgram.desk.Demo;
import halfgram.pages.door.Opening;
import halfgram.prep.schedule.Scheduler;
import halfgram.web.Server;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;

/**
 * A server in a process of its own that a test kills: from outside at any moment, or by itself just
 * between the commit and the checkpoint of its n-th write. Arguments: the data folder; JDBC
 * address, user and password, or three dashes for H2 in the folder; n, or 0 for never; the port, or
 * 0 for any; the moment at which its clock begins to run, or a dash for that of the machine.
 */
public final class MortalServer {
  private MortalServer() {}

  public static void main(String[] args) {
    boolean embedded = args[1].equals("-");
    java.util.logging.Logger.getLogger("").setLevel(java.util.logging.Level.WARNING);
    Settings settings =
        new Settings(
            embedded ? Optional.empty() : Optional.of(args[1]),
            embedded ? Optional.empty() : Optional.of(args[2]),
            embedded ? Optional.empty() : Optional.of(args[3]),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Path.of(args[0]));
    long last = Long.parseLong(args[4]);
    AtomicLong writes = new AtomicLong();
    Clock clock = clock(args[6]);
    Wiring wiring =
        Wiring.open(
            settings, clock, inner -> dying(inner, writes, last), Scheduler::place, Runnable::run);
    if (wiring.desk().list().isEmpty()) {
      wiring.importBook().importBook(Demo.book(LocalDate.now(clock)), "test");
    }
    writes.set(0);
    Server.Options options =
        new Server.Options(
            "127.0.0.1",
            Integer.parseInt(args[5]),
            Optional.empty(),
            Optional.empty(),
            false,
            false,
            Optional.of(Set.of("127.0.0.1")));
    int port = wiring.server(options, Site.SECRET, Opening.CLOSED).start();
    System.out.println("listening " + port);
  }

  private static Clock clock(String begins) {
    Clock machine = Clock.systemUTC();
    return begins.equals("-")
        ? machine
        : Clock.offset(machine, Duration.between(machine.instant(), Instant.parse(begins)));
  }

  /** Dies after a commit and before what it says is on disk. */
  private static Sync dying(Sync inner, AtomicLong writes, long last) {
    return () -> {
      if (writes.incrementAndGet() == last) {
        Runtime.getRuntime().halt(137);
      }
      inner.await();
    };
  }
}
