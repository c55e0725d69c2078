package halfgram.pages.formulas;

import halfgram.formula.Dose;
import halfgram.formula.Line;
import halfgram.measure.Exact;
import halfgram.pages.MethodLine;
import halfgram.prep.Components;
import halfgram.prep.KitchenBook;
import halfgram.prep.Method;
import halfgram.prep.WeighGroup;
import halfgram.prep.WeighLine;
import halfgram.words.Messages;
import halfgram.words.WeighWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * One weight: its percent of the basis, what the display should read, and on which scale.
 *
 * @param href of the component's own page within the kitchen; empty for an ingredient
 * @param then what is done when it is in
 */
record WeighRow(
    String percent,
    boolean basis,
    String whole,
    String part,
    String unit,
    String name,
    String href,
    String scale,
    List<String> notes,
    List<MethodLine> then) {

  /** What goes into one vessel. */
  record Group(String into, List<WeighRow> rows) {}

  static List<Group> groups(
      KitchenBook book, List<WeighGroup> groups, Method method, Messages words) {
    WeighWords said = new WeighWords(book, words, groups, 1, UnaryOperator.identity());
    return groups.stream()
        .map(
            group ->
                new Group(
                    said.into(group).orElse(words.say("formulas.no-vessel")),
                    group.lines().stream()
                        .map(line -> of(book, said, line, method, words))
                        .toList()))
        .toList();
  }

  private static WeighRow of(
      KitchenBook book, WeighWords said, WeighLine line, Method method, Messages words) {
    WeighWords.Figure figure = said.figure(line);
    return new WeighRow(
        percent(line.line().dose(), words),
        line.line().dose().isBasis(),
        figure.whole(),
        figure.fraction(),
        figure.unit(),
        figure.name(),
        line.line().item().component().map(ref -> "formulas/" + ref.formula()).orElse(""),
        figure.under(),
        notes(book, said, line, words),
        MethodLine.of(method.below(line), words));
  }

  private static String percent(Dose dose, Messages words) {
    String counted = Exact.plain(dose.counted().percent(), 4);
    return dose.kind() == Dose.Kind.FROM_TO
        ? words.say("formulas.range", counted, Exact.plain(dose.setOut().percent(), 4))
        : counted;
  }

  static String name(KitchenBook book, Line line, Messages words) {
    return words.text(Components.name(book, line.item()));
  }

  /** What the line says of itself, then what the weigh list says of it. */
  private static List<String> notes(
      KitchenBook book, WeighWords said, WeighLine weighed, Messages words) {
    List<String> notes = new ArrayList<>();
    Line line = weighed.line();
    said.heed(weighed).ifPresent(notes::add);
    cut(book, line, words).ifPresent(notes::add);
    if (line.dose().kind() == Dose.Kind.ABSOLUTE) {
      line.dose().typed().ifPresent(typed -> notes.add(words.say("formulas.absolute", typed)));
    }
    if (line.dose().kind() == Dose.Kind.SEQUESTRANT) {
      notes.add(words.say("formulas.sequestrant"));
    }
    if (line.wholePacks()) {
      notes.add(words.say("formulas.whole-packs"));
    }
    notes.addAll(said.notes(weighed));
    return notes;
  }

  /** How it is cut, what of it stays, and who says so. */
  private static Optional<String> cut(KitchenBook book, Line line, Messages words) {
    Optional<String> name =
        line.item().fold(ingredient -> ingredient.cut(), component -> Optional.empty());
    return line.item()
        .ingredient()
        .map(book::ingredient)
        .flatMap(ingredient -> name.flatMap(ingredient::findCut))
        .map(
            cut ->
                words.say(
                    "formulas.cut",
                    name.orElse(""),
                    cut.value(),
                    words.say("why.standing." + cut.standing().word(), cut.source())));
  }
}
