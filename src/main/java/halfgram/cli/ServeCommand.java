package halfgram.cli;

import halfgram.Settings;
import halfgram.Wiring;
import halfgram.db.Database;
import halfgram.desk.Demo;
import halfgram.kitchen.KitchenStore.Stand;
import halfgram.measure.Message;
import halfgram.pages.door.Opening;
import halfgram.web.Server;
import java.io.IOException;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/** {@code serve}: the pages, until somebody stops it. */
final class ServeCommand {
  /** How often it is seen to whether the database is still there. */
  private static final int LOOK_SECONDS = 5;

  private final Cli cli;

  ServeCommand(Cli cli) {
    this.cli = cli;
  }

  int run(List<String> args) {
    Arguments arguments =
        new Arguments(args, Set.of("--listen", "--port", "--tls", "--data"), Set.of("--demo"));
    arguments.noMoreWords(0);
    if (cli.held().isPresent()) {
      cli.error(cli.messages().say("serve.already", cli.settings().data()));
      return Exit.UNUSABLE;
    }
    Settings settings = Holding.settings(cli, arguments);
    Listening listening = Listening.of(arguments, settings);
    if (!arguments.problems().isEmpty()) {
      return cli.usage(arguments.problems());
    }
    Optional<Message> locked =
        listening.tls().flatMap(store -> TlsStore.findProblem(store, settings.tlsPassword()));
    if (locked.isPresent()) {
      cli.error(cli.messages().say(locked.get()));
      return Exit.UNUSABLE;
    }
    try {
      DataFolder.make(settings.data());
      if (settings.databaseUrl().isEmpty() && Running.find(settings.data()).isPresent()) {
        cli.error(cli.messages().say("serve.already", settings.data()));
        return Exit.UNUSABLE;
      }
      return serve(settings, listening, arguments.has("--demo"));
    } catch (Database.Unavailable e) {
      cli.error(DataFolder.unavailable(cli.messages(), settings, e));
    } catch (IOException e) {
      cli.error(settings.data() + ": " + DataFolder.reason(cli.messages(), e));
    }
    return Exit.UNUSABLE;
  }

  private int serve(Settings settings, Listening listening, boolean demo) throws IOException {
    Wiring wiring = Wiring.open(settings, Clock.systemUTC(), cli.placing());
    if (demo && wiring.desk().list().isEmpty()) {
      wiring.importBook().importBook(Demo.book(wiring.desk().now()), "demo");
      wiring.firstRun().fillDemo(wiring.desk().list().get(0).code());
      cli.out().println(cli.messages().say("serve.demo"));
    } else if (demo) {
      cli.out().println(cli.messages().say("serve.no-demo"));
    }
    String first = secret().substring(0, 24);
    Opening opening = new Opening(listening.isLoopback(), first);
    Serving serving = new Serving(cli, wiring, listening, secret(), opening);
    int port;
    try {
      port = serving.start();
    } catch (Server.CannotListen e) {
      wiring.close();
      cli.error(cli.messages().say(serving.taken(e)));
      return Exit.UNUSABLE;
    }
    CountDownLatch stopped = new CountDownLatch(1);
    Runtime.getRuntime()
        .addShutdownHook(
            new Thread(
                () -> {
                  serving.close();
                  stopped.countDown();
                },
                "halfgram-stop"));
    if (!listening.isLoopback() && !listening.isSecure()) {
      cli.error(cli.messages().say("serve.open", listening.host()));
    }
    String address = listening.address(port);
    if (wiring.firstRun().isDue()) {
      cli.out().println(cli.messages().say("serve.first", address + "/first?code=" + first));
    }
    for (Stand kitchen : wiring.desk().list()) {
      tellDoor(wiring, listening, kitchen);
    }
    cli.out().println(cli.messages().say("serve.ready", address + door(wiring)));
    cli.out().flush();
    try {
      while (!stopped.await(LOOK_SECONDS, TimeUnit.SECONDS)) {
        serving.look();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return Exit.DONE;
  }

  /** How to get into a kitchen that nobody can sign in to. */
  private void tellDoor(Wiring wiring, Listening listening, Stand kitchen) {
    boolean anybody = wiring.people().list(kitchen).stream().anyMatch(one -> one.account().ready());
    boolean demo = wiring.desk().isDemo(kitchen) && listening.isLoopback();
    if (!anybody && !demo) {
      cli.out().println(cli.messages().say("serve.nobody", kitchen.code()));
    }
  }

  private static String door(Wiring wiring) {
    List<Stand> kitchens = wiring.desk().list();
    return kitchens.size() == 1 ? "/k/" + kitchens.get(0).code() + "/" : "/";
  }

  /** Opens the way for commands of this machine; nobody can guess it. */
  static String secret() {
    byte[] random = new byte[32];
    new SecureRandom().nextBytes(random);
    return HexFormat.of().formatHex(random);
  }
}
