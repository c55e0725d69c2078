package halfgram.cli;

import halfgram.Settings;
import halfgram.Wiring;
import halfgram.db.Database;
import halfgram.desk.House;
import halfgram.kitchen.KitchenStore.Stand;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToIntBiFunction;
import java.util.function.ToIntFunction;

/**
 * The database for one command: the one this process holds, or the server that holds it, which then
 * runs the command and sends back what it said, or the database itself, opened and closed again.
 */
final class Holding {
  /** Who changed something, as the log says it. */
  static final String WHO = "command";

  private final Cli cli;
  private final Arguments arguments;
  private final List<String> call;

  /**
   * @param command its name
   * @param args what was given with it
   */
  Holding(Cli cli, Arguments arguments, String command, List<String> args) {
    this.cli = cli;
    this.arguments = arguments;
    this.call = new ArrayList<>(List.of(command));
    this.call.addAll(args);
  }

  /** The settings of the environment with the data folder of the command line. */
  static Settings settings(Cli cli, Arguments arguments) {
    Settings settings = cli.settings();
    Optional<Path> data = arguments.find("--data", Holding::path, "accept.folder");
    return data.isPresent() ? settings.withData(data.get()) : settings;
  }

  private static Optional<Path> path(String text) {
    try {
      return Optional.of(Path.of(text));
    } catch (InvalidPathException e) {
      return Optional.empty();
    }
  }

  /** Runs on one kitchen: the one that was named, or the only one. */
  int runOnKitchen(ToIntBiFunction<Wiring, House> work) {
    Settings settings = settings(cli, arguments);
    boolean isEmpty =
        cli.held().isEmpty()
            && settings.databaseUrl().isEmpty()
            && !Files.exists(settings.databaseFile());
    if (isEmpty && arguments.problems().isEmpty()) {
      // Whoever only looks makes no folder.
      cli.error(cli.messages().say("command.no-kitchen", settings.data()));
      return Exit.UNUSABLE;
    }
    return run(
        List.of(),
        wiring -> {
          Optional<House> house = house(wiring);
          return house.isPresent() ? work.applyAsInt(wiring, house.get()) : Exit.UNUSABLE;
        });
  }

  /**
   * Runs on the database.
   *
   * @param reads files that the command reads
   */
  int run(List<String> reads, ToIntFunction<Wiring> work) {
    Settings settings = settings(cli, arguments);
    if (!arguments.problems().isEmpty()) {
      return cli.usage(arguments.problems());
    }
    if (cli.held().isPresent()) {
      return work.applyAsInt(cli.held().get());
    }
    try {
      if (isShared(settings)) {
        return open(settings, work);
      }
      Optional<Running> running = Running.find(settings.data());
      return running.isPresent() ? through(running.get(), reads) : open(settings, work);
    } catch (IOException e) {
      cli.error(settings.data() + ": " + DataFolder.reason(cli.messages(), e));
      return Exit.UNUSABLE;
    }
  }

  /** Whether several processes can have the database open. */
  private static boolean isShared(Settings settings) {
    return settings.databaseUrl().filter(url -> !url.startsWith("jdbc:h2:")).isPresent();
  }

  private int open(Settings settings, ToIntFunction<Wiring> work) throws IOException {
    if (settings.databaseUrl().isEmpty()) {
      DataFolder.make(settings.data());
    }
    try (Wiring wiring = Wiring.open(settings, Clock.systemUTC(), cli.placing())) {
      return work.applyAsInt(wiring);
    } catch (Database.Unavailable e) {
      cli.error(DataFolder.unavailable(cli.messages(), settings, e));
      return Exit.UNUSABLE;
    }
  }

  private int through(Running running, List<String> reads) throws IOException {
    Map<String, byte[]> files = new LinkedHashMap<>();
    for (String name : reads) {
      // What cannot be read is told by the command itself, with everything else.
      Optional<byte[]> bytes = find(name);
      bytes.ifPresent(there -> files.put(name, there));
    }
    Running.Answer answer = running.run(call, files);
    cli.out().print(answer.out());
    cli.say(answer.err());
    for (Map.Entry<String, byte[]> file : answer.files().entrySet()) {
      try {
        cli.files().write(file.getKey(), file.getValue());
      } catch (IOException e) {
        cli.error(file.getKey() + ": " + DataFolder.reason(cli.messages(), e));
        return Exit.UNUSABLE;
      }
    }
    return answer.status();
  }

  private Optional<byte[]> find(String name) {
    try {
      return Optional.of(cli.files().read(name));
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  /** The kitchen of the command; which there are is said when that is not clear. */
  Optional<House> house(Wiring wiring) {
    List<String> codes = wiring.desk().list().stream().map(Stand::code).toList();
    Optional<String> named = arguments.find("--kitchen");
    String known = String.join(", ", codes);
    if (codes.isEmpty()) {
      cli.error(cli.messages().say("command.no-kitchen", wiring.settings().data()));
    } else if (named.isPresent() && !codes.contains(named.get())) {
      cli.error(cli.messages().say("command.unknown-kitchen", named.get(), known));
    } else if (named.isEmpty() && codes.size() > 1) {
      cli.error(cli.messages().say("command.which-kitchen", known));
    } else {
      return wiring.desk().find(named.orElse(codes.get(0)));
    }
    return Optional.empty();
  }
}
