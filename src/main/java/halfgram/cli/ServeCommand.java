package halfgram.cli;

import halfgram.Settings;
import halfgram.Wiring;
import halfgram.db.Database;
import halfgram.desk.Demo;
import halfgram.kitchen.KitchenStore.Stand;
import halfgram.web.Server;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.LocalDate;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CountDownLatch;

/** {@code serve}: the pages, until somebody stops it. */
final class ServeCommand {
  private static final int PORT = 8088;

  private final Cli cli;

  ServeCommand(Cli cli) {
    this.cli = cli;
  }

  int run(List<String> args) {
    Arguments arguments =
        new Arguments(args, Set.of("--listen", "--port", "--tls", "--data"), Set.of("--demo"));
    arguments.noMoreWords(0);
    Settings settings = cli.settings();
    if (arguments.find("--data").isPresent()) {
      settings = settings.withData(Path.of(arguments.find("--data").get()));
    }
    Optional<Integer> port = arguments.find("--port", ServeCommand::port, "accept.port");
    if (!arguments.problems().isEmpty()) {
      return cli.usage(arguments.problems());
    }
    String host = arguments.find("--listen").or(settings::listen).orElse("127.0.0.1");
    int wanted = port.or(() -> cli.settings().port().flatMap(ServeCommand::port)).orElse(PORT);
    try {
      Files.createDirectories(settings.data());
      return serve(settings, host, wanted, arguments.has("--demo"));
    } catch (Database.Unavailable e) {
      cli.error(String.valueOf(e.getMessage()));
      return Exit.UNUSABLE;
    } catch (IOException e) {
      cli.error(settings.data() + ": " + e.getMessage());
      return Exit.UNUSABLE;
    }
  }

  private int serve(Settings settings, String host, int port, boolean demo) throws IOException {
    Wiring wiring = Wiring.open(settings, Clock.systemUTC());
    if (demo && wiring.desk().list().isEmpty()) {
      wiring.importBook().importBook(Demo.book(LocalDate.now(Clock.systemUTC())), "demo");
    }
    byte[] random = new byte[32];
    new SecureRandom().nextBytes(random);
    String secret = HexFormat.of().formatHex(random);
    Server.Options options =
        new Server.Options(
            host, port, Optional.empty(), Optional.empty(), false, Optional.of(names(host)));
    Server server = wiring.server(options, secret);
    int bound = server.start();
    String address = "http://" + host + ":" + bound;
    Running.leave(settings.data(), new Running(address, secret));
    CountDownLatch stopped = new CountDownLatch(1);
    Runtime.getRuntime()
        .addShutdownHook(
            new Thread(
                () -> {
                  server.close();
                  wiring.close();
                  stopped.countDown();
                },
                "halfgram-stop"));
    List<Stand> kitchens = wiring.desk().list();
    String door = kitchens.size() == 1 ? "/k/" + kitchens.get(0).code() + "/" : "/";
    cli.out().println(cli.messages().say("serve.ready", address + door));
    cli.out().flush();
    try {
      stopped.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    Running.remove(settings.data());
    return Exit.DONE;
  }

  private static Set<String> names(String host) {
    Set<String> names = new TreeSet<>(Set.of("localhost", "127.0.0.1", "[::1]"));
    names.add(host);
    return names;
  }

  static Optional<Integer> port(String text) {
    return text.matches("\\d{1,5}") && Integer.parseInt(text) <= 65_535
        ? Optional.of(Integer.parseInt(text))
        : Optional.empty();
  }
}
