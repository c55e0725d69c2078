package halfgram.cli;

import halfgram.Wiring;
import halfgram.desk.House;
import halfgram.pages.door.Opening;
import halfgram.web.Server;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * {@code call METHOD PATH [FILE]}: anything the JSON API does, as a command; the answer goes to the
 * standard output. With a server running the call goes there, else to one that lasts for it.
 */
final class CallCommand {
  private static final Set<String> METHODS = Set.of("GET", "POST", "PUT", "DELETE");
  private static final Duration LONGEST = Duration.ofMinutes(2);

  private final Cli cli;

  CallCommand(Cli cli) {
    this.cli = cli;
  }

  int run(List<String> args) {
    Arguments arguments = new Arguments(args, Set.of("--data", "--kitchen", "--body"), Set.of());
    List<String> words = arguments.words("METHOD");
    String method = words.isEmpty() ? "GET" : words.get(0).toUpperCase(Locale.ROOT);
    if (!words.isEmpty() && !METHODS.contains(method)) {
      arguments.problem("usage.bad", "METHOD", words.get(0), "GET, POST, PUT, DELETE");
    }
    if (words.size() == 1) {
      arguments.problem("usage.no-argument", "PATH");
    }
    arguments.noMoreWords(3);
    if (words.size() > 2 && arguments.has("--body")) {
      arguments.problem("usage.extra", words.get(2));
    }
    List<String> reads = words.size() > 2 ? List.of(words.get(2)) : List.of();
    Holding holding = new Holding(cli, arguments, "call", args);
    return holding.run(
        reads,
        wiring -> {
          Optional<House> house = holding.house(wiring);
          if (house.isEmpty()) {
            return Exit.UNUSABLE;
          }
          try {
            String body =
                reads.isEmpty()
                    ? arguments.find("--body").orElse("")
                    : new String(cli.files().read(reads.get(0)), StandardCharsets.UTF_8);
            return call(wiring, house.get(), new Asked(method, words.get(1), body));
          } catch (IOException e) {
            cli.error(
                (reads.isEmpty() ? words.get(1) : reads.get(0))
                    + ": "
                    + DataFolder.reason(cli.messages(), e));
            return Exit.UNUSABLE;
          }
        });
  }

  /** A call: its method, its path below the kitchen's API, what is sent along. */
  private record Asked(String method, String path, String body) {}

  private int call(Wiring wiring, House house, Asked asked) throws IOException {
    Optional<Running> running =
        cli.held().isPresent() ? Running.find(wiring.settings().data()) : Optional.empty();
    if (running.isPresent()) {
      return send(running.get(), house, asked);
    }
    Server.Options options =
        new Server.Options(
            "127.0.0.1", 0, Optional.empty(), Optional.empty(), false, false, Optional.empty());
    String secret = ServeCommand.secret();
    try (Server server = wiring.server(options, secret, Opening.CLOSED)) {
      return send(new Running("http://127.0.0.1:" + server.start(), secret), house, asked);
    }
  }

  private int send(Running running, House house, Asked asked) throws IOException {
    String path = asked.path().startsWith("/") ? asked.path().substring(1) : asked.path();
    HttpRequest request;
    try {
      request =
          HttpRequest.newBuilder(
                  URI.create(running.address() + "/k/" + house.code() + "/api/v1/" + path))
              .timeout(LONGEST)
              .header(Running.SECRET, running.secret())
              .header("Content-Type", path.startsWith("tables/") ? "text/csv" : "application/json")
              .method(asked.method(), HttpRequest.BodyPublishers.ofString(asked.body()))
              .build();
    } catch (IllegalArgumentException e) {
      cli.error(cli.messages().say("command.no-path", asked.path()));
      return Exit.UNUSABLE;
    }
    try {
      HttpResponse<String> answer =
          HttpClient.newHttpClient()
              .send(request, HttpResponse.BodyHandlers.ofString(StandardCharsets.UTF_8));
      cli.out().println(answer.body());
      return answer.statusCode() < 300 ? Exit.DONE : Exit.NO;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException(e);
    }
  }
}
