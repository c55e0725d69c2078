package halfgram.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.api.TechniqueInputs;
import halfgram.api.TechniqueJson;
import halfgram.book.Reference;
import halfgram.input.Problem;
import halfgram.measure.Message;
import halfgram.technique.Calculation;
import halfgram.technique.Figure;
import halfgram.technique.Input;
import halfgram.technique.Tables;
import halfgram.technique.Technique;
import halfgram.technique.Techniques;
import halfgram.words.Messages;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * {@code technique NAME}: one technique worked out from inputs of the standard input or a file;
 * {@code technique --list}: all of them with what they ask for. Reference rows are the shipped
 * ones, or with {@code --book}, {@code --data} or {@code --kitchen} that kitchen's.
 */
final class TechniqueCommand {
  private final Cli cli;

  TechniqueCommand(Cli cli) {
    this.cli = cli;
  }

  int run(List<String> args) {
    Arguments arguments =
        new Arguments(
            args,
            Set.of("--book", "--data", "--kitchen", "--inputs", "--body"),
            Set.of("--json", "--list"));
    if (arguments.has("--list")) {
      arguments.noMoreWords(0);
    }
    String name = arguments.has("--list") ? "" : arguments.word("NAME");
    Optional<Technique> technique = Techniques.find(name);
    if (technique.isEmpty() && !name.isEmpty()) {
      arguments.problem("usage.bad", "NAME", name, String.join(", ", names()));
    }
    if (!arguments.problems().isEmpty()) {
      return cli.usage(arguments.problems());
    }
    Optional<String> body =
        technique.isEmpty()
            ? Optional.of("{}")
            : arguments.find("--body").or(() -> read(arguments));
    if (body.isEmpty()) {
      return Exit.UNUSABLE;
    }
    Asked asked = new Asked(technique, body.get(), arguments.has("--json"), source(arguments));
    boolean own = arguments.has("--book") || arguments.has("--data") || arguments.has("--kitchen");
    if (!own) {
      return answer(asked, Reference.load().tables());
    }
    List<String> call = new ArrayList<>(List.of("technique"));
    call.addAll(args);
    if (!arguments.has("--body")) {
      call.addAll(List.of("--body", body.get()));
    }
    return Source.run(cli, arguments, call, found -> answer(asked, found.book().tables()));
  }

  /** What is to be worked out, and how it is to be said. */
  private record Asked(Optional<Technique> technique, String body, boolean json, String source) {}

  private static List<String> names() {
    return Techniques.list().stream().map(Technique::name).toList();
  }

  private int answer(Asked asked, Tables tables) {
    TechniqueJson writer = new TechniqueJson(cli.messages(), tables);
    if (asked.technique().isEmpty()) {
      cli.out()
          .print(
              asked.json() ? pretty(writer.list(Techniques.list())) : list(cli.messages(), tables));
      return Exit.DONE;
    }
    Optional<Map<String, String>> typed = typed(asked);
    if (typed.isEmpty()) {
      return Exit.UNUSABLE;
    }
    Calculation worked = Calculation.of(asked.technique().get(), tables, typed.get());
    for (Problem problem : worked.problems()) {
      cli.error(Books.said(cli.messages(), asked.source(), problem));
    }
    if (worked.result().isPresent()) {
      cli.out().print(asked.json() ? pretty(writer.worked(worked)) : text(cli.messages(), worked));
    }
    return worked.isGood() ? Exit.DONE : Exit.NO;
  }

  private static String source(Arguments arguments) {
    return arguments.has("--body") ? "--body" : arguments.find("--inputs").orElse("-");
  }

  private Optional<String> read(Arguments arguments) {
    String source = source(arguments);
    try {
      return Optional.of(new String(cli.files().read(source), StandardCharsets.UTF_8));
    } catch (IOException e) {
      cli.error(source + ": " + DataFolder.reason(cli.messages(), e));
      return Optional.empty();
    }
  }

  /** The inputs: an object of texts. */
  private Optional<Map<String, String>> typed(Asked asked) {
    Optional<Map<String, String>> typed = TechniqueInputs.read(asked.body());
    if (typed.isEmpty()) {
      cli.error(asked.source() + ": " + cli.messages().say("technique-command.unreadable"));
    }
    return typed;
  }

  private static String pretty(ObjectNode node) {
    return node.toPrettyString() + "\n";
  }

  private static String list(Messages words, Tables tables) {
    StringBuilder text = new StringBuilder();
    for (Technique technique : Techniques.list()) {
      String key = "technique." + technique.name();
      text.append(technique.name()).append("  ").append(words.say(Message.of(key))).append('\n');
      for (Input input : technique.inputs()) {
        text.append("  ").append(input.name()).append("  ");
        text.append(words.say(Message.of(key + ".in." + input.name()))).append("  ");
        text.append(accepted(words, tables, input)).append('\n');
      }
    }
    return text.toString();
  }

  private static String accepted(Messages words, Tables tables, Input input) {
    if (input.isWord()) {
      return input
          .table()
          .map(table -> String.join("|", tables.table(table).keySet()))
          .orElse(String.join("|", input.options()));
    }
    String range = Figure.plain(input.least()) + ".." + Figure.plain(input.most());
    String unit = input.unit().equals("1") ? "" : " " + input.unit();
    if (input.isNeeded()) {
      return range + unit + "  " + words.say("technique-command.needed");
    }
    return Double.isNaN(input.usual())
        ? range + unit + "  " + words.say("technique-command.optional")
        : range
            + unit
            + "  "
            + words.say(
                "technique-command.usual",
                Figure.plain(input.usual()) + unit,
                Message.of("standing." + input.standing().word()));
  }

  private static String text(Messages words, Calculation worked) {
    StringBuilder text = new StringBuilder();
    String key = "technique." + worked.technique().name();
    text.append(words.say(Message.of(key))).append('\n');
    worked
        .result()
        .ifPresent(
            result -> {
              for (Figure figure : result.figures()) {
                text.append(words.say(Message.of(key + ".out." + figure.name())))
                    .append(": ")
                    .append(figure.shown())
                    .append("  (")
                    .append(words.say(figure.why()))
                    .append(")\n");
              }
              result.stops().forEach(s -> text.append("! ").append(words.say(s)).append('\n'));
              result.warnings().forEach(w -> text.append("- ").append(words.say(w)).append('\n'));
              result
                  .cautions()
                  .forEach(
                      code ->
                          text.append("- ")
                              .append(words.say(Message.of("caution." + code)))
                              .append('\n'));
              result.sources().forEach(source -> text.append("  ").append(source).append('\n'));
            });
    return text.toString();
  }
}
