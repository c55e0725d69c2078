package halfgram.pages.formulas;

import halfgram.formula.Dose;
import halfgram.formula.Line;
import halfgram.ingredient.Weighing;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Exact;
import halfgram.measure.Ratio;
import halfgram.prep.Components;
import halfgram.prep.KitchenBook;
import halfgram.prep.WeighGroup;
import halfgram.prep.WeighLine;
import halfgram.words.Messages;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/**
 * One weight: its percent of the basis, what the display should read, and on which scale.
 *
 * @param href of the component's own page within the kitchen; empty for an ingredient
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
    List<String> notes) {

  /** What goes into one vessel. */
  record Group(String into, List<WeighRow> rows) {}

  static List<Group> groups(KitchenBook book, List<WeighGroup> groups, Messages words) {
    List<Group> said = new ArrayList<>();
    for (WeighGroup group : groups) {
      String into =
          group
              .vessel()
              .map(
                  vessel ->
                      group.count() == 1
                          ? words.say("sheet.into", vessel.name())
                          : words.say("sheet.into-several", vessel.name(), group.count()))
              .orElse(words.say("formulas.no-vessel"));
      said.add(
          new Group(
              into, group.lines().stream().map(line -> of(book, group, line, words)).toList()));
    }
    return said;
  }

  private static WeighRow of(KitchenBook book, WeighGroup group, WeighLine line, Messages words) {
    Weighing weighing = line.weighing();
    String number;
    String unit = "g";
    String scale = weighing.scale().map(s -> words.text(s.name())).orElse("");
    if (line.counted().isPresent()) {
      number = line.counted().get().number().toPlainString();
      unit = line.counted().get().unit();
      scale = words.say("sheet.about", amount(Amount.of(weighing.target()), words));
    } else if (weighing.dilution().isPresent()) {
      Weighing.Dilution dilution = weighing.dilution().get();
      number = fixed(dilution.take().grams(), dilution.takeScale().step().scale());
      scale = words.text(dilution.takeScale().name());
    } else {
      int decimals = weighing.scale().map(s -> s.step().scale()).orElse(2);
      number = fixed(weighing.shown().grams(), decimals);
    }
    int point = number.indexOf('.');
    return new WeighRow(
        percent(line.line().dose(), words),
        line.line().dose().isBasis(),
        point < 0 ? number : number.substring(0, point),
        point < 0 ? "" : number.substring(point),
        unit,
        name(book, line.line(), words),
        line.line().item().component().map(ref -> "formulas/" + ref.formula()).orElse(""),
        scale,
        notes(book, group, line, words));
  }

  private static String fixed(BigDecimal number, int decimals) {
    return number.setScale(Math.max(0, decimals), java.math.RoundingMode.HALF_UP).toPlainString();
  }

  private static String percent(Dose dose, Messages words) {
    String counted = Exact.plain(dose.counted().percent(), 4);
    return dose.kind() == Dose.Kind.FROM_TO
        ? words.say("formulas.range", counted, Exact.plain(dose.setOut().percent(), 4))
        : counted;
  }

  static String name(KitchenBook book, Line line, Messages words) {
    return line.item()
        .fold(
            ingredient -> words.text(book.ingredient(ingredient.code()).name()),
            component -> words.text(Components.name(book.formulary(), component.ref())));
  }

  private static List<String> notes(
      KitchenBook book, WeighGroup group, WeighLine weighed, Messages words) {
    List<String> notes = new ArrayList<>();
    Line line = weighed.line();
    Weighing weighing = weighed.weighing();
    line.item()
        .ingredient()
        .map(book::ingredient)
        .ifPresent(
            ingredient ->
                ingredientOf(line)
                    .flatMap(ingredient::findCut)
                    .ifPresent(
                        cut ->
                            notes.add(
                                words.say(
                                    "formulas.cut",
                                    ingredientOf(line).orElse(""),
                                    cut.value(),
                                    words.say(
                                        "why.standing." + cut.standing().word(), cut.source())))));
    if (line.trim().compareTo(Ratio.ONE) != 0) {
      notes.add(words.say("sheet.trim", amount(Amount.of(weighed.pulled()), words)));
    }
    if (weighing.parts() > 1) {
      notes.add(words.say("sheet.parts", weighing.parts()));
    }
    if (weighed.apart()) {
      notes.add(words.say("sheet.apart"));
    }
    if (!weighed.lookAlikes().isEmpty()) {
      String others = String.join(", ", weighed.lookAlikes().stream().map(words::text).toList());
      notes.add(words.say("sheet.not", words.say("sheet.not-word", others)));
    }
    weighing
        .dilution()
        .ifPresent(
            dilution ->
                notes.add(
                    words.say(
                        "sheet.dilution",
                        Exact.plain(dilution.substance().grams(), 3),
                        name(book, line, words),
                        Exact.plain(dilution.carrier().grams(), 3),
                        carrier(book, group, weighed, words),
                        Exact.plain(weighing.target().grams(), 3))));
    if (!weighed.heldBack().isZero()) {
      notes.add(words.say("sheet.held-back", Exact.plain(weighed.heldBack().grams(), 2)));
    }
    weighed
        .atLeast()
        .ifPresent(
            likely ->
                notes.add(
                    words.say(
                        "sheet.from-to",
                        Exact.plain(likely.grams(), 1),
                        line.dose().stopWhen().orElse(""))));
    if (line.dose().kind() == Dose.Kind.ABSOLUTE) {
      line.dose().typed().ifPresent(typed -> notes.add(words.say("formulas.absolute", typed)));
    }
    if (line.dose().kind() == Dose.Kind.SEQUESTRANT) {
      notes.add(words.say("formulas.sequestrant"));
    }
    if (line.wholePacks()) {
      notes.add(words.say("formulas.whole-packs"));
    }
    boolean none =
        weighing.scale().isEmpty()
            && weighing.dilution().isEmpty()
            && weighed.counted().isEmpty()
            && !weighing.target().isZero();
    if (none) {
      notes.add(words.say("sheet.exactly"));
    }
    return notes;
  }

  private static java.util.Optional<String> ingredientOf(Line line) {
    return line.item()
        .fold(ingredient -> ingredient.cut(), component -> java.util.Optional.empty());
  }

  private static String carrier(
      KitchenBook book, WeighGroup group, WeighLine small, Messages words) {
    String code = small.carrier().orElse("");
    return group.lines().stream()
        .filter(other -> other.line().code().equals(code))
        .map(other -> name(book, other.line(), words))
        .findFirst()
        .orElse(code);
  }

  /** As everywhere: whole grams from 100 g on, tenths below, kilograms from 10 kg. */
  static String amount(Amount amount, Messages words) {
    if (amount.dimension() == Dimension.COUNT) {
      return words.say("sheet.pieces", Exact.plain(amount.number(), 0));
    }
    BigDecimal grams = amount.number();
    return grams.compareTo(BigDecimal.valueOf(10_000)) >= 0
        ? Exact.plain(grams.movePointLeft(3), 3) + " kg"
        : Exact.plain(grams, grams.compareTo(Exact.HUNDRED) >= 0 ? 0 : 1) + " g";
  }
}
