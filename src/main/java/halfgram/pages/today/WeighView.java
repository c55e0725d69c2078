package halfgram.pages.today;

import halfgram.ingredient.Form;
import halfgram.ingredient.Weighing;
import halfgram.measure.Amount;
import halfgram.measure.Exact;
import halfgram.measure.Ratio;
import halfgram.prep.Begun;
import halfgram.prep.Paths;
import halfgram.prep.Task;
import halfgram.prep.WeighGroup;
import halfgram.prep.WeighLine;
import halfgram.station.Container;
import halfgram.words.Messages;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What goes into one vessel, in the order it goes in. */
record WeighView(String vessel, List<Line> lines) {

  /**
   * One weight: the mass on the display, the count, or what to take of a dilution.
   *
   * @param whole digits before the point
   * @param part the point and the digits behind it; empty for a whole number
   * @param warning what it is easily taken for
   */
  record Line(
      String whole,
      String part,
      String unit,
      String href,
      String name,
      String scale,
      String warning,
      List<String> notes) {}

  static List<WeighView> of(Shown shown, Task task) {
    return task.weigh().stream()
        .map(
            group ->
                new WeighView(
                    group.vessel().map(vessel -> into(shown, vessel, group)).orElse(""),
                    group.lines().stream().map(line -> line(shown, task, line)).toList()))
        .toList();
  }

  private static String into(Shown shown, Container vessel, WeighGroup group) {
    return group.count() == 1
        ? shown.words().say("sheet.into", vessel.name())
        : shown.words().say("sheet.into-several", vessel.name(), group.count());
  }

  private static Line line(Shown shown, Task task, WeighLine line) {
    Messages words = shown.words();
    String name = shown.text(line.name());
    Weighing weighing = line.weighing();
    if (line.counted().isPresent()) {
      var count = line.counted().get();
      int decimals = Math.max(0, count.number().stripTrailingZeros().scale());
      String about = shown.names().amount(Amount.of(weighing.target()));
      return line(
          shown,
          task,
          line,
          count.number().setScale(decimals),
          "counted",
          count.unit(),
          name,
          words.say("sheet.about", about));
    }
    if (weighing.dilution().isPresent()) {
      Weighing.Dilution dilution = weighing.dilution().get();
      BigDecimal take = fixed(dilution.take().grams(), dilution.takeScale().step().scale());
      boolean dry = isDryMix(shown, task, line);
      String mixed = words.say(dry ? "sheet.dry-mix-of" : "sheet.mix-of", name);
      String scale = shown.text(dilution.takeScale().name());
      return line(shown, task, line, take, "take", "g", mixed, scale);
    }
    int decimals = weighing.scale().map(scale -> scale.step().scale()).orElse(2);
    String scale = weighing.scale().map(of -> shown.text(of.name())).orElse("");
    BigDecimal mass = fixed(weighing.shown().grams(), decimals);
    return line(shown, task, line, mass, "shown", "g", name, scale);
  }

  private static BigDecimal fixed(BigDecimal grams, int decimals) {
    return grams.setScale(Math.max(0, decimals), java.math.RoundingMode.HALF_UP);
  }

  private static Line line(
      Shown shown,
      Task task,
      WeighLine line,
      BigDecimal number,
      String field,
      String unit,
      String name,
      String scale) {
    String plain = number.toPlainString();
    int point = plain.indexOf('.');
    String others = String.join(", ", line.lookAlikes().stream().map(shown::text).toList());
    Messages words = shown.words();
    return new Line(
        point < 0 ? plain : plain.substring(0, point),
        point < 0 ? "" : plain.substring(point),
        unit,
        shown.why(Paths.weigh(task.make(), task.step(), line.line(), field)),
        name,
        scale,
        others.isEmpty() ? "" : words.say("sheet.not", words.say("sheet.not-word", others)),
        notes(shown, task, line));
  }

  private static List<String> notes(Shown shown, Task task, WeighLine line) {
    Messages words = shown.words();
    Weighing weighing = line.weighing();
    List<String> notes = new ArrayList<>();
    if (weighing.parts() > 1) {
      notes.add(words.say("sheet.parts", weighing.parts()));
    }
    if (line.apart()) {
      notes.add(words.say("sheet.apart"));
    }
    weighing.dilution().ifPresent(dilution -> notes.add(mix(shown, task, line, dilution)));
    if (!line.heldBack().isZero()) {
      notes.add(words.say("sheet.held-back", Exact.plain(line.heldBack().grams(), 2)));
    }
    line.atLeast()
        .ifPresent(
            likely ->
                notes.add(
                    words.say(
                        "sheet.from-to",
                        Exact.plain(likely.grams(), 1),
                        line.line().dose().stopWhen().orElse(""))));
    if (isUnweighed(line)) {
      notes.add(words.say("sheet.exactly"));
    }
    if (task.fill().count() > 1 && line.counted().isEmpty()) {
      Amount all = Amount.of(weighing.target()).times(task.fill().count());
      notes.add(words.say("sheet.in-all", task.fill().count(), shown.names().amount(all)));
    }
    if (line.line().trim().compareTo(Ratio.ONE) != 0) {
      notes.add(words.say("sheet.trim", shown.names().amount(Amount.of(line.pulled()))));
    }
    line.tubs()
        .forEach(
            draw ->
                notes.add(
                    words.say(
                        Begun.isExpected(draw.lot()) ? "sheet.from-begun" : "sheet.from-tub",
                        draw.lot().code(),
                        shown.names().amount(draw.amount()))));
    return notes;
  }

  private static String mix(Shown shown, Task task, WeighLine line, Weighing.Dilution dilution) {
    return shown
        .words()
        .say(
            "sheet.dilution",
            Exact.plain(dilution.substance().grams(), 3),
            line.name(),
            Exact.plain(dilution.carrier().grams(), 3),
            carrier(task, line).map(of -> shown.text(of.name())).orElse(""),
            Exact.plain(line.weighing().target().grams(), 3));
  }

  private static boolean isUnweighed(WeighLine line) {
    return line.weighing().scale().isEmpty()
        && line.weighing().dilution().isEmpty()
        && line.counted().isEmpty()
        && !line.weighing().target().isZero();
  }

  /** Whether a dose is carried by a powder. */
  private static boolean isDryMix(Shown shown, Task task, WeighLine small) {
    return carrier(task, small)
        .flatMap(line -> line.line().item().ingredient())
        .filter(code -> shown.book().ingredient(code).form() == Form.POWDER)
        .isPresent();
  }

  private static Optional<WeighLine> carrier(Task task, WeighLine small) {
    return task.weigh().stream()
        .flatMap(group -> group.lines().stream())
        .filter(line -> line.line().code().equals(small.carrier().orElse("")))
        .findFirst();
  }
}
