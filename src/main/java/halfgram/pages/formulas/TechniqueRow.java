package halfgram.pages.formulas;

import halfgram.formula.FormulaVersion;
import halfgram.formula.TechniqueUse;
import halfgram.formula.TechniqueYield;
import halfgram.measure.Message;
import halfgram.prep.BathFacts;
import halfgram.prep.KitchenBook;
import halfgram.technique.Addition;
import halfgram.technique.Result;
import halfgram.technique.bath.SphereBath;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A technique of a formula.
 *
 * @param page where it is worked out with the formula's numbers
 * @param where it is attached to
 * @param inputs what of its inputs is the formula's own
 * @param adds what it adds to every batch
 * @param warnings what a cook with experience would remark on
 */
record TechniqueRow(
    String name,
    String page,
    String where,
    List<String> inputs,
    List<String> adds,
    List<String> warnings) {

  static TechniqueRow of(
      KitchenBook book, FormulaVersion version, TechniqueUse use, Messages words) {
    String key = "technique." + use.name();
    List<String> inputs = new ArrayList<>();
    use.typed()
        .forEach(
            (input, typed) -> {
              Message name = Message.of("technique." + use.name() + ".in." + input);
              inputs.add(words.say("formulas.own-input", name, typed));
            });
    List<Message> warnings =
        new ArrayList<>(
            use.drops()
                ? BathFacts.bath(book, version).map(SphereBath::warnings).orElse(List.of())
                : use.result().map(Result::warnings).orElse(List.of()));
    TechniqueYield.findDoubt(version, use).ifPresent(warnings::add);
    use.additions().stream()
        .flatMap(one -> unweighed(version, use, one).stream())
        .forEach(warnings::add);
    return new TechniqueRow(
        words.say(Message.of(key)),
        "techniques/" + use.name() + "?formula=" + version.formula(),
        use.drops()
            ? words.say("formulas.technique-of", use.step(), use.bath())
            : words.say("formulas.technique-at", use.step()),
        inputs,
        use.additions().stream().flatMap(one -> added(version, use, one, words).stream()).toList(),
        warnings.stream().map(words::say).toList());
  }

  private static List<String> added(
      FormulaVersion version, TechniqueUse use, Addition addition, Messages words) {
    if (addition instanceof Addition.Weighed weighed) {
      if (!isWeighed(version, weighed)) {
        return List.of();
      }
      Message figure = figure(use, weighed);
      return List.of(words.say("formulas.adds-weighed", figure, weighed.share()));
    }
    if (addition instanceof Addition.Stands stands) {
      return List.of(words.say("formulas.adds-stands", stands.least(), stands.source()));
    }
    if (addition instanceof Addition.Keeps keeps) {
      return List.of(words.say("formulas.adds-keeps", keeps.days(), keeps.source()));
    }
    if (addition instanceof Addition.Good good) {
      return List.of(words.say("formulas.adds-good", good.most(), good.source()));
    }
    if (addition instanceof Addition.Load load) {
      return List.of(
          words.say("formulas.adds-load", words.amount(halfgram.measure.Amount.of(load.most()))));
    }
    if (addition instanceof Addition.Caution caution) {
      return List.of(words.say(Message.of("caution." + caution.code())));
    }
    return addition instanceof Addition.Reminder reminder
        ? List.of(words.say(reminder.said()))
        : List.of();
  }

  private static boolean isWeighed(FormulaVersion version, Addition.Weighed weighed) {
    return version.lines().stream()
        .anyMatch(line -> line.dose().figure().filter(weighed.figure()::equals).isPresent());
  }

  private static Message figure(TechniqueUse use, Addition.Weighed weighed) {
    return Message.of("technique." + use.name() + ".out." + weighed.figure());
  }

  /** What is worked out goes into no batch unless a line names it. */
  private static Optional<Message> unweighed(
      FormulaVersion version, TechniqueUse use, Addition addition) {
    return addition instanceof Addition.Weighed weighed && !isWeighed(version, weighed)
        ? Optional.of(
            Message.of(
                "formulas.adds-unweighed",
                figure(use, weighed),
                weighed.share(),
                Message.of("formulas.field.by-technique"),
                weighed.figure()))
        : Optional.empty();
  }
}
