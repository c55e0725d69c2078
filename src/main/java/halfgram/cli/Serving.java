package halfgram.cli;

import halfgram.Settings;
import halfgram.Wiring;
import halfgram.db.Database;
import halfgram.measure.Message;
import halfgram.pages.door.Opening;
import halfgram.web.Server;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.OptionalInt;

/**
 * A server and the database that it holds. Where the database has given up, as on a full disk, both
 * are begun anew once there is room: what the program knows of a kitchen may not be on disk then.
 */
final class Serving implements AutoCloseable {
  /** Enough for a day's work, so that it does not give up again at once. */
  private static final long ROOM_BYTES = 64L << 20;

  private final Cli cli;
  private final Listening listening;
  private final String secret;
  private final Opening opening;
  private Wiring wiring;
  private Server server;
  private OptionalInt port = OptionalInt.empty();
  private boolean isTold;
  private boolean isClosed;

  /**
   * @param wiring the open database, closed with this
   * @param secret opens the way for commands of this machine
   */
  Serving(Cli cli, Wiring wiring, Listening listening, String secret, Opening opening) {
    this.cli = cli;
    this.wiring = wiring;
    this.listening = listening;
    this.secret = secret;
    this.opening = opening;
    this.server = listener();
  }

  private Server listener() {
    Server.Options options = listening.options(wiring.settings().tlsPassword(), port);
    return wiring.server(options, secret, opening);
  }

  /**
   * Listens and leaves a note for commands; answers the port that people use.
   *
   * @throws Server.CannotListen when the address or the port is not to be had
   */
  synchronized int start() throws IOException {
    int bound = server.start();
    port = OptionalInt.of(bound);
    String own = listening.own(server.localPort());
    Running.leave(wiring.settings().data(), new Running(own, secret));
    return bound;
  }

  /** Begins anew where the database has given up and there is room; else tries at the next look. */
  synchronized void look() {
    if (isClosed || !wiring.hasGivenUp()) {
      return;
    }
    Settings settings = wiring.settings();
    if (!isTold) {
      cli.error(cli.messages().say("serve.given-up", settings.data()));
      isTold = true;
    }
    if (!hasRoom(settings.data())) {
      return;
    }
    wiring.close();
    try {
      wiring = Wiring.open(settings, Clock.systemUTC(), cli.placing());
      server.close();
      server = listener();
      start();
      isTold = false;
      cli.error(cli.messages().say("serve.again"));
    } catch (Database.Unavailable e) {
      cli.error(DataFolder.unavailable(cli.messages(), settings, e));
    } catch (Server.CannotListen e) {
      wiring.close();
      cli.error(cli.messages().say(taken(e)));
    } catch (IOException e) {
      cli.error(settings.data() + ": " + DataFolder.reason(cli.messages(), e));
    }
  }

  /** Why nobody can be listened to. */
  Message taken(Server.CannotListen e) {
    return Message.of(
        e.isTaken() ? "serve.port-taken" : "serve.no-address",
        listening.host(),
        port.orElse(listening.port()));
  }

  private static boolean hasRoom(Path data) {
    try {
      return Files.getFileStore(data).getUsableSpace() >= ROOM_BYTES;
    } catch (IOException e) {
      return false;
    }
  }

  /** Requests that run are finished, streams closed, and the database written. */
  @Override
  public synchronized void close() {
    isClosed = true;
    try {
      Running.remove(wiring.settings().data());
    } catch (IOException e) {
      // A note that stays says an address where nobody answers: it does no harm.
    } finally {
      server.close();
      wiring.close();
    }
  }
}
