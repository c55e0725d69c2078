package halfgram.cli;

import halfgram.measure.Message;
import halfgram.words.Messages;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;

/** Finds the command and runs it; what goes wrong is said on the error stream, one a line. */
public final class Cli {
  private static final Pattern CONTROLS = Pattern.compile("\\p{Cntrl}+");

  private final PrintStream out;
  private final PrintStream err;
  private final Messages messages = new Messages("en", ZoneOffset.UTC);

  public Cli(PrintStream out, PrintStream err) {
    this.out = new PrintStream(out, false, StandardCharsets.UTF_8);
    this.err = new PrintStream(err, true, StandardCharsets.UTF_8);
  }

  /** Runs one command and answers its exit status. */
  public int run(String... args) {
    int status = run(Arrays.asList(args));
    out.flush();
    return status;
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
      case "scale" -> new ScaleCommand(this).run(rest);
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
