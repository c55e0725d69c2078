package halfgram.cli;

import halfgram.Settings;
import halfgram.Wiring;
import halfgram.kitchen.KitchenStore;
import halfgram.measure.Message;
import halfgram.prep.schedule.Placing;
import halfgram.prep.schedule.Scheduler;
import halfgram.words.Messages;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** Finds the command and runs it; what goes wrong is said on the error stream, one a line. */
public final class Cli {
  private static final Pattern CONTROLS = Pattern.compile("\\p{Cntrl}+");

  private final PrintStream out;
  private final PrintStream err;
  private final Messages messages = new Messages("en", ZoneOffset.UTC);

  private final Settings settings;
  private final Optional<Wiring> held;
  private FilesOf files = FilesOf.disk();
  private Placing placing = Scheduler::place;

  public Cli(PrintStream out, PrintStream err) {
    this(out, err, Settings.fromEnvironment(), Optional.empty());
  }

  /** Runs commands within the process that holds the database. */
  public Cli(PrintStream out, PrintStream err, Wiring held) {
    this(out, err, held.settings(), Optional.of(held));
  }

  private Cli(PrintStream out, PrintStream err, Settings settings, Optional<Wiring> held) {
    this.out = new PrintStream(out, false, StandardCharsets.UTF_8);
    this.err = new PrintStream(err, true, StandardCharsets.UTF_8);
    this.settings = settings;
    this.held = held;
  }

  /** This, reading and writing other files. */
  Cli with(FilesOf other) {
    files = other;
    return this;
  }

  /** This, placing workdays otherwise. */
  Cli with(Placing other) {
    placing = other;
    return this;
  }

  Placing placing() {
    return placing;
  }

  FilesOf files() {
    return files;
  }

  Settings settings() {
    return settings;
  }

  /** What this process already holds open, when it is the server. */
  Optional<Wiring> held() {
    return held;
  }

  /** Runs one command and answers its exit status. */
  public int run(String... args) {
    KitchenStore.asked(Optional.of(new KitchenStore.Origin("command", owner(), "")));
    try {
      return run(Arrays.asList(args));
    } finally {
      KitchenStore.asked(Optional.empty());
      out.flush();
    }
  }

  /** Who runs this: a command is the machine owner's, whoever that is. */
  private static String owner() {
    return System.getProperty("user.name", "");
  }

  private int run(List<String> args) {
    if (args.isEmpty()) {
      return usage(List.of());
    }
    List<String> rest = args.subList(1, args.size());
    if (rest.contains("--help")) {
      out.println(messages.say("usage"));
      return Exit.DONE;
    }
    return switch (args.get(0)) {
      case "plan" -> new PlanCommand(this).run(rest);
      case "why" -> new WhyCommand(this).run(rest);
      case "check" -> new CheckCommand(this).run(rest);
      case "serve" -> new ServeCommand(this).run(rest);
      case "import" -> new ImportCommand(this).run(rest);
      case "export" -> new ExportCommand(this).run(rest);
      case "call" -> new CallCommand(this).run(rest);
      case "slip" -> new SlipCommand(this).run(rest);
      case "first" -> new FirstCommand(this).run(rest);
      case "person" -> new PersonCommand(this).run(rest);
      case "technique" -> new TechniqueCommand(this).run(rest);
      case "scale" -> new ScaleCommand(this).run(rest);
      case "schedule" -> new ScheduleCommand(this).run(rest);
      case "help", "--help", "-h" -> {
        out.println(messages.say("usage"));
        yield Exit.DONE;
      }
      default -> usage(List.of(Message.of("usage.unknown", args.get(0))));
    };
  }

  Messages messages() {
    return messages;
  }

  PrintStream out() {
    return out;
  }

  /** Says what another process said on its error stream. */
  void say(String said) {
    err.print(said);
    err.flush();
  }

  /** Says what was wrong with the call, then how to call. */
  int usage(List<Message> problems) {
    problems.forEach(problem -> error(messages.say(problem)));
    err.println(messages.say("usage"));
    return Exit.UNUSABLE;
  }

  /** Says one thing on the error stream, on one line whatever was typed into it. */
  void error(String said) {
    err.println(CONTROLS.matcher(said).replaceAll(" "));
  }
}
