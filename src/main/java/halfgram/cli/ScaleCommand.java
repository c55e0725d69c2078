package halfgram.cli;

import halfgram.formula.ComponentRef;
import halfgram.formula.Fills;
import halfgram.formula.Formula;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Line;
import halfgram.formula.Output;
import halfgram.formula.Scaled;
import halfgram.formula.Scaling;
import halfgram.ingredient.Ingredient;
import halfgram.ingredient.Pack;
import halfgram.measure.Amount;
import halfgram.measure.Exact;
import halfgram.measure.Message;
import halfgram.measure.Quantity;
import halfgram.measure.Ratio;
import halfgram.prep.KitchenBook;
import halfgram.words.Messages;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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
    Optional<Scaled> scaled = scaled(book, version, arguments);
    if (!arguments.problems().isEmpty()) {
      return cli.usage(arguments.problems());
    }
    if (scaled.isEmpty()) {
      return Exit.NO;
    }
    Fills fills = Fills.fit(scaled.get(), item -> pack(book, item));
    // What is on hand cannot be raised: it is said what else would have been done.
    boolean asItIs = arguments.has("--have");
    cli.out()
        .print(
            asItIs
                ? text(book, scaled.get(), fills.raisedBy(), "scale.on-hand")
                : text(book, fills.scaled(), fills.raisedBy(), "scale.raised"));
    return Exit.DONE;
  }

  private static Optional<halfgram.measure.Mass> pack(KitchenBook book, String item) {
    return book.ingredient(item).packs().stream().map(Pack::mass).findFirst();
  }

  private Optional<Scaled> scaled(KitchenBook book, FormulaVersion version, Arguments arguments) {
    Scaling scaling = book.formulary().scaling(version);
    Optional<Integer> output = output(version, arguments);
    if (output.isEmpty()) {
      return Optional.empty();
    }
    Output made = version.outputs().get(output.get());
    if (arguments.has("--batches")) {
      Optional<BigDecimal> batches =
          arguments.find("--batches", ScaleCommand::count, "accept.count");
      Optional<Scaled> scaled = batches.flatMap(n -> scaling.byBatches(new Ratio(n)));
      if (batches.isPresent() && scaled.isEmpty()) {
        cli.error(cli.messages().say("usage.no-written", version.name()));
      }
      return scaled;
    }
    if (arguments.has("--have")) {
      Map<String, Amount> onHand = onHand(book, arguments);
      return areLines(version, onHand.keySet()) ? scaling.byScarcest(onHand) : Optional.empty();
    }
    if (arguments.has("--pieces")) {
      return arguments
          .find(
              "--pieces",
              text -> made.isPieces() ? whole(text) : Optional.empty(),
              "accept.piece-output")
          .map(n -> scaling.byPieces(output.get(), n));
    }
    if (arguments.has("--covers")) {
      Optional<Amount> each =
          arguments.find("--each", text -> amount(text, made), "accept.output-amount");
      return arguments
          .find("--covers", ScaleCommand::whole, "accept.whole")
          .flatMap(n -> each.map(e -> scaling.byCovers(output.get(), n, e)));
    }
    return arguments
        .find("--amount", text -> amount(text, made), "accept.output-amount")
        .map(amount -> scaling.byOutput(output.get(), amount));
  }

  /** Whether all these are weighed for a formula; what is not is said. */
  private boolean areLines(FormulaVersion version, Set<String> items) {
    List<String> lines =
        version.lines().stream()
            .filter(line -> !line.dose().setOut().isZero())
            .map(line -> line.item().code())
            .distinct()
            .toList();
    String known = String.join(", ", lines);
    items.stream()
        .filter(item -> !lines.contains(item))
        .sorted()
        .forEach(
            item -> cli.error(cli.messages().say("usage.not-a-line", item, version.name(), known)));
    return lines.containsAll(items);
  }

  private Optional<Integer> output(FormulaVersion version, Arguments arguments) {
    Optional<String> code = arguments.find("--output");
    List<String> codes = version.outputs().stream().map(Output::code).toList();
    if (code.isPresent() && !codes.contains(code.get())) {
      String known = String.join(", ", codes);
      cli.error(cli.messages().say("usage.no-output", code.get(), version.name(), known));
      return Optional.empty();
    }
    return Optional.of(version.outputIndex(code));
  }

  /** A quantity as typed in a hurry: "5kg" is "5 kg". */
  private static Optional<Quantity> typed(String text) {
    return Quantity.parse(text.strip().replaceFirst("^([0-9.]+)(?=[^0-9. ])", "$1 "));
  }

  private static Optional<Amount> amount(String text, Output output) {
    return typed(text)
        .flatMap(Quantity::canonical)
        .filter(amount -> amount.dimension() == output.unit() && amount.isPositive());
  }

  private static Optional<BigDecimal> count(String text) {
    return text.matches("\\d{1,7}(\\.\\d{1,3})?") && new BigDecimal(text).signum() > 0
        ? Optional.of(new BigDecimal(text))
        : Optional.empty();
  }

  private static Optional<Long> whole(String text) {
    return count(text).filter(n -> !text.contains(".")).map(BigDecimal::longValueExact);
  }

  private static Map<String, Amount> onHand(KitchenBook book, Arguments arguments) {
    Map<String, Amount> onHand = new HashMap<>();
    for (String have : arguments.all("--have")) {
      int equals = Math.max(0, have.indexOf('='));
      String item = have.substring(0, equals);
      Optional<Quantity> typed =
          item.isEmpty() ? Optional.empty() : typed(have.substring(equals + 1));
      Ingredient ingredient = book.ingredients().get(item);
      Optional<Amount> mass =
          typed.flatMap(
              quantity ->
                  ingredient == null
                      ? quantity
                          .canonical()
                          .filter(a -> a.dimension() == halfgram.measure.Dimension.MASS)
                      : ingredient.findMass(quantity));
      if (mass.isEmpty()) {
        arguments.problem("usage.bad", "--have", have, Message.of("accept.have"));
      }
      mass.ifPresent(m -> onHand.put(item, m));
    }
    return onHand;
  }

  private String text(KitchenBook book, Scaled scaled, List<Message> raisedBy, String raised) {
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
            .append(messages.say("scale.pull", Exact.plain(scaled.purchased(line).number(), 1)))
            .append(')');
      }
      text.append('\n');
    }
    for (int i = 0; i < version.outputs().size(); i++) {
      text.append(
              messages.say("scale.gives", SheetText.amount(messages, scaled.output(i)))
                  + " "
                  + messages.text(version.outputs().get(i).name()))
          .append('\n');
    }
    raisedBy.forEach(why -> text.append(messages.say(raised, why)).append('\n'));
    return text.toString();
  }
}
