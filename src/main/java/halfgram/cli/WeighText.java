package halfgram.cli;

import halfgram.ingredient.Form;
import halfgram.ingredient.Weighing;
import halfgram.measure.Amount;
import halfgram.measure.Exact;
import halfgram.measure.Ratio;
import halfgram.prep.Begun;
import halfgram.prep.KitchenBook;
import halfgram.prep.Task;
import halfgram.prep.WeighGroup;
import halfgram.prep.WeighLine;
import halfgram.station.Container;
import halfgram.words.Messages;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/**
 * The weigh list of a task as plain text. The number is what the hand needs next: the mass on the
 * display, the count, or what to take of a dilution; the point always stands in the same column.
 */
final class WeighText {
  private static final int NAME = 34;

  private final KitchenBook book;
  private final Messages messages;
  private final int indent;
  private final StringBuilder text = new StringBuilder();

  WeighText(KitchenBook book, Messages messages, int indent) {
    this.book = book;
    this.messages = messages;
    this.indent = indent;
  }

  String write(Task task) {
    text.setLength(0);
    for (WeighGroup group : task.weigh()) {
      group.vessel().ifPresent(vessel -> line(indent, into(vessel, group.count())));
      group.lines().forEach(line -> write(task, line));
    }
    return text.toString();
  }

  private String into(Container vessel, int count) {
    return count == 1
        ? messages.say("sheet.into", vessel.name())
        : messages.say("sheet.into-several", vessel.name(), count);
  }

  private void write(Task task, WeighLine line) {
    String name = messages.text(line.name());
    if (line.counted().isPresent()) {
      var count = line.counted().get();
      String grams = SheetText.amount(messages, Amount.of(line.weighing().target()));
      row(
          count.number(),
          count.number().stripTrailingZeros().scale(),
          count.unit(),
          name,
          messages.say("sheet.about", grams));
    } else if (line.weighing().dilution().isPresent()) {
      Weighing.Dilution dilution = line.weighing().dilution().get();
      row(
          dilution.take().grams(),
          dilution.takeScale().step().scale(),
          "g",
          messages.say(isDryMix(task, line) ? "sheet.dry-mix-of" : "sheet.mix-of", name),
          messages.text(dilution.takeScale().name()));
    } else {
      int decimals = line.weighing().scale().map(scale -> scale.step().scale()).orElse(2);
      String scale = line.weighing().scale().map(s -> messages.text(s.name())).orElse("");
      row(line.weighing().shown().grams(), decimals, "g", name, scale);
    }
    notes(task, line).forEach(note -> line(indent + 15, note));
  }

  private void row(BigDecimal number, int decimals, String unit, String name, String scale) {
    String row =
        " ".repeat(indent)
            + Columns.aligned(number, Math.max(0, decimals))
            + Columns.left(unit, 2)
            + " "
            + Columns.left(name, NAME)
            + " "
            + scale;
    text.append(row.stripTrailing()).append('\n');
  }

  private List<String> notes(Task task, WeighLine line) {
    List<String> notes = new ArrayList<>();
    Weighing weighing = line.weighing();
    if (weighing.parts() > 1) {
      notes.add(messages.say("sheet.parts", weighing.parts()));
    }
    if (line.apart()) {
      notes.add(messages.say("sheet.apart"));
    }
    if (!line.lookAlikes().isEmpty()) {
      String others = String.join(", ", line.lookAlikes().stream().map(messages::text).toList());
      notes.add(messages.say("sheet.not", messages.say("sheet.not-word", others)));
    }
    weighing.dilution().ifPresent(dilution -> notes.add(mix(task, line, dilution)));
    if (!line.heldBack().isZero()) {
      notes.add(messages.say("sheet.held-back", plain(line.heldBack().grams(), 2)));
    }
    line.atLeast()
        .ifPresent(
            likely ->
                notes.add(
                    messages.say(
                        "sheet.from-to",
                        plain(likely.grams(), 1),
                        line.line().dose().stopWhen().orElse(""))));
    if (isUnweighed(line)) {
      notes.add(messages.say("sheet.exactly"));
    }
    if (task.fill().count() > 1 && line.counted().isEmpty()) {
      Amount all = Amount.of(weighing.target()).times(task.fill().count());
      notes.add(messages.say("sheet.in-all", task.fill().count(), SheetText.amount(messages, all)));
    }
    if (line.line().trim().compareTo(Ratio.ONE) != 0) {
      notes.add(messages.say("sheet.trim", SheetText.amount(messages, Amount.of(line.pulled()))));
    }
    line.tubs()
        .forEach(
            draw ->
                notes.add(
                    messages.say(
                        Begun.isExpected(draw.lot()) ? "sheet.from-begun" : "sheet.from-tub",
                        draw.lot().code(),
                        SheetText.amount(messages, draw.amount()))));
    return notes;
  }

  private String mix(Task task, WeighLine line, Weighing.Dilution dilution) {
    return messages.say(
        "sheet.dilution",
        plain(dilution.substance().grams(), 3),
        messages.text(line.name()),
        plain(dilution.carrier().grams(), 3),
        carrier(task, line),
        plain(line.weighing().target().grams(), 3));
  }

  private static boolean isUnweighed(WeighLine line) {
    return line.weighing().scale().isEmpty()
        && line.weighing().dilution().isEmpty()
        && line.counted().isEmpty()
        && !line.weighing().target().isZero();
  }

  /** Whether a dose is carried by a powder. */
  private boolean isDryMix(Task task, WeighLine small) {
    return task.weigh().stream()
        .flatMap(group -> group.lines().stream())
        .filter(line -> line.line().code().equals(small.carrier().orElse("")))
        .flatMap(line -> line.line().item().ingredient().stream())
        .anyMatch(code -> book.ingredient(code).form() == Form.POWDER);
  }

  private String carrier(Task task, WeighLine small) {
    String code = small.carrier().orElse("");
    return task.weigh().stream()
        .flatMap(group -> group.lines().stream())
        .filter(line -> line.line().code().equals(code))
        .map(line -> messages.text(line.name()))
        .findFirst()
        .orElse(code);
  }

  private static String plain(BigDecimal number, int decimals) {
    return Exact.plain(number, decimals);
  }

  private void line(int at, String said) {
    String line = " ".repeat(at) + Columns.wrap(said, at);
    text.append(line.stripTrailing()).append('\n');
  }
}
