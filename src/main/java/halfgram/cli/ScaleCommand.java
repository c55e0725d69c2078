package halfgram.cli;

import halfgram.desk.ScaleFormula;
import halfgram.formula.ComponentRef;
import halfgram.formula.Formula;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Line;
import halfgram.formula.Scaled;
import halfgram.measure.Exact;
import halfgram.measure.Ratio;
import halfgram.prep.KitchenBook;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** {@code scale}: one formula at a size, in the five ways there are. */
final class ScaleCommand {
  private static final Set<String> WAYS =
      Set.of("--amount", "--pieces", "--covers", "--batches", "--have");
  private static final String WAYS_SAID =
      "--amount, --pieces, --covers with --each, --batches, --have";

  private final Cli cli;

  ScaleCommand(Cli cli) {
    this.cli = cli;
  }

  int run(List<String> args) {
    Arguments arguments =
        new Arguments(
            args,
            Source.with(
                "--output", "--amount", "--pieces", "--covers", "--each", "--batches", "--have"),
            Set.of());
    String code = arguments.word("FORMULA");
    if (WAYS.stream().filter(arguments::has).count() != 1) {
      arguments.problem("usage.one-size", WAYS_SAID);
    }
    if (arguments.has("--covers") || arguments.has("--each")) {
      arguments.get("--covers", "accept.whole");
      arguments.get("--each", "accept.output-amount");
    }
    List<String> call = new ArrayList<>(List.of("scale"));
    call.addAll(args);
    return Source.run(cli, arguments, call, found -> scale(found.book(), code, arguments));
  }

  private int scale(KitchenBook book, String code, Arguments arguments) {
    Optional<Formula> formula = book.formulary().find(code);
    if (formula.isEmpty()) {
      String known =
          String.join(", ", book.formulary().list().stream().map(Formula::code).toList());
      cli.error(cli.messages().say("usage.no-formula", code, known));
      return Exit.NO;
    }
    FormulaVersion version = formula.get().current();
    ScaleFormula.Outcome outcome = ScaleFormula.of(book, version, ask(arguments));
    for (ScaleFormula.Fault fault : outcome.faults()) {
      if (fault.kind() == ScaleFormula.Kind.REFUSED) {
        cli.error(cli.messages().say(fault.message()));
      } else {
        String option = "--" + fault.field().name().toLowerCase(Locale.ROOT);
        arguments.problem("usage.bad", option, fault.typed(), fault.message());
      }
    }
    if (!arguments.problems().isEmpty()) {
      return cli.usage(arguments.problems());
    }
    outcome.sized().ifPresent(sized -> cli.out().print(text(book, sized)));
    return outcome.sized().isPresent() ? Exit.DONE : Exit.NO;
  }

  private static ScaleFormula.Ask ask(Arguments arguments) {
    ScaleFormula.Way way =
        Arrays.stream(ScaleFormula.Way.values())
            .filter(one -> arguments.has(option(one)))
            .findFirst()
            .orElseThrow();
    return new ScaleFormula.Ask(
        way,
        arguments.find("--output"),
        arguments.find(option(way)).orElse(""),
        arguments.find("--each").orElse(""),
        arguments.all("--have").stream().map(ScaleFormula.Have::of).toList());
  }

  private static String option(ScaleFormula.Way way) {
    return "--" + way.name().toLowerCase(Locale.ROOT);
  }

  private String text(KitchenBook book, ScaleFormula.Sized sized) {
    Scaled scaled = sized.scaled();
    Messages messages = cli.messages();
    StringBuilder text = new StringBuilder();
    FormulaVersion version = scaled.version();
    text.append(messages.say("scale.title", version.name(), version.number())).append('\n');
    for (Line line : version.lines()) {
      String name =
          line.item()
              .fold(
                  ingredient -> messages.text(book.ingredient(ingredient.code()).name()),
                  component ->
                      messages.text(
                          book.formulary().get(ComponentRef.of(component.ref().formula())).name()));
      String number = Columns.aligned(scaled.setOut(line).number(), 2);
      text.append(number).append(" g  ").append(name);
      if (line.trim().compareTo(Ratio.ONE) != 0) {
        text.append("  (")
            .append(
                messages.say("scale.pull", Exact.plain(scaled.purchased(line).number(), 1) + " g"))
            .append(')');
      }
      text.append('\n');
    }
    for (int i = 0; i < version.outputs().size(); i++) {
      text.append(
              messages.say("scale.gives", messages.amount(scaled.output(i)))
                  + " "
                  + messages.text(version.outputs().get(i).name()))
          .append('\n');
    }
    sized.raisedBy().forEach(why -> text.append(messages.say(sized.raised(why))).append('\n'));
    return text.toString();
  }
}
