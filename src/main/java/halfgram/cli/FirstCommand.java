package halfgram.cli;

import halfgram.desk.FirstRun;
import halfgram.desk.Signing;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** {@code first CODE}: the first kitchen and its owner, who chooses a password with the code. */
final class FirstCommand {
  private final Cli cli;

  FirstCommand(Cli cli) {
    this.cli = cli;
  }

  int run(List<String> args) {
    Arguments arguments =
        new Arguments(args, Set.of("--data", "--name", "--zone", "--owner", "--shown"), Set.of());
    List<String> words = arguments.words("CODE");
    for (String needed : List.of("--name", "--zone", "--owner")) {
      if (!arguments.has(needed)) {
        arguments.problem("usage.no-argument", needed);
      }
    }
    arguments.noMoreWords(1);
    Holding holding = new Holding(cli, arguments, "first", args);
    return holding.run(
        List.of(),
        wiring -> {
          String owner = arguments.find("--owner").orElse("");
          FirstRun.Draft draft =
              new FirstRun.Draft(
                  words.get(0),
                  arguments.find("--name").orElse(""),
                  arguments.find("--zone").orElse(""),
                  owner,
                  arguments.find("--shown").orElse(owner),
                  Optional.empty());
          FirstRun.Outcome outcome = wiring.firstRun().make(draft, new Signing.From("command", ""));
          outcome.reasons().forEach(reason -> PersonCommand.tell(cli, reason));
          outcome
              .code()
              .ifPresent(code -> cli.out().println(cli.messages().say("person.code", owner, code)));
          return outcome.reasons().isEmpty() ? Exit.DONE : Exit.NO;
        });
  }
}
