package halfgram.pages.wall;

import halfgram.ingredient.Form;
import halfgram.ingredient.Weighing;
import halfgram.measure.Amount;
import halfgram.measure.Exact;
import halfgram.measure.Ratio;
import halfgram.prep.Begun;
import halfgram.prep.Task;
import halfgram.prep.WeighGroup;
import halfgram.prep.WeighLine;
import halfgram.words.Messages;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;
import java.util.function.LongSupplier;
import java.util.stream.Stream;

/**
 * The weigh list of a task: the number is what the hand needs next, cut at its point so that all
 * points stand in one line.
 */
final class WeighRows {
  private static final int MOST_DECIMALS = 3;

  /** Lines that go into one vessel. */
  record Group(String into, List<Row> rows) {}

  /** Where a line stands. */
  enum Place {
    DONE,
    NOW,
    LATER
  }

  /**
   * One line.
   *
   * @param whole digits before the point
   * @param fraction the point and what follows, or nothing
   * @param heed what it must not be taken for
   */
  record Row(
      String path,
      String whole,
      String fraction,
      String unit,
      String name,
      String scale,
      String heed,
      List<String> notes,
      Place place,
      long sequence) {
    public String number() {
      return whole + fraction;
    }

    public boolean isDone() {
      return place == Place.DONE;
    }

    public boolean isNow() {
      return place == Place.NOW;
    }
  }

  private record Figure(BigDecimal number, int decimals, String unit, String name, String scale) {}

  private final Scene scene;
  private final Messages words;
  private final Task task;
  private final LongSupplier sequence;

  WeighRows(Scene scene, Task task, LongSupplier sequence) {
    this.scene = scene;
    this.words = scene.words();
    this.task = task;
    this.sequence = sequence;
  }

  List<Group> list() {
    SortedSet<String> weighed = scene.progress(task).weighed();
    String next =
        scene.isDone(task)
            ? ""
            : lines()
                .map(WeighLine::path)
                .filter(path -> !weighed.contains(path))
                .findFirst()
                .orElse("");
    List<Group> groups = new ArrayList<>();
    for (WeighGroup group : task.weigh()) {
      List<Row> rows =
          group.lines().stream()
              .map(line -> row(line, weighed.contains(line.path()), line.path().equals(next)))
              .toList();
      groups.add(new Group(into(group), rows));
    }
    return groups;
  }

  private Stream<WeighLine> lines() {
    return task.weigh().stream().flatMap(group -> group.lines().stream());
  }

  private String into(WeighGroup group) {
    return group
        .vessel()
        .map(
            vessel ->
                group.count() == 1
                    ? words.say("sheet.into", vessel.name())
                    : words.say("sheet.into-several", vessel.name(), group.count()))
        .orElse("");
  }

  private Row row(WeighLine line, boolean weighed, boolean next) {
    Figure figure = figure(line);
    int decimals = Math.max(0, Math.min(MOST_DECIMALS, figure.decimals()));
    String shown = figure.number().setScale(decimals, RoundingMode.HALF_UP).toPlainString();
    int point = shown.indexOf('.') < 0 ? shown.length() : shown.indexOf('.');
    Place place = next ? Place.NOW : Place.LATER;
    return new Row(
        line.path(),
        shown.substring(0, point),
        shown.substring(point),
        figure.unit(),
        figure.name(),
        figure.scale(),
        heed(line),
        notes(line),
        weighed ? Place.DONE : place,
        sequence.getAsLong());
  }

  private Figure figure(WeighLine line) {
    String name = words.text(line.name());
    Weighing weighing = line.weighing();
    if (line.counted().isPresent()) {
      var count = line.counted().get();
      String about = words.say("sheet.about", amount(Amount.of(weighing.target())));
      BigDecimal number = count.number();
      return new Figure(number, number.stripTrailingZeros().scale(), count.unit(), name, about);
    }
    if (weighing.dilution().isPresent()) {
      Weighing.Dilution dilution = weighing.dilution().get();
      String mixed = words.say(isDryMix(line) ? "sheet.dry-mix-of" : "sheet.mix-of", name);
      return new Figure(
          dilution.take().grams(),
          dilution.takeScale().step().scale(),
          "g",
          mixed,
          words.text(dilution.takeScale().name()));
    }
    return new Figure(
        weighing.shown().grams(),
        weighing.scale().map(scale -> scale.step().scale()).orElse(2),
        "g",
        name,
        weighing.scale().map(scale -> words.text(scale.name())).orElse(""));
  }

  private String heed(WeighLine line) {
    if (line.lookAlikes().isEmpty()) {
      return "";
    }
    String others = String.join(", ", line.lookAlikes().stream().map(words::text).toList());
    return words.say("sheet.not", words.say("sheet.not-word", others));
  }

  private List<String> notes(WeighLine line) {
    List<String> notes = new ArrayList<>();
    Weighing weighing = line.weighing();
    if (weighing.parts() > 1) {
      notes.add(words.say("sheet.parts", weighing.parts()));
    }
    if (line.apart()) {
      notes.add(words.say("sheet.apart"));
    }
    weighing.dilution().ifPresent(dilution -> notes.add(mix(line, dilution)));
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
      notes.add(words.say("sheet.in-all", task.fill().count(), amount(all)));
    }
    if (line.line().trim().compareTo(Ratio.ONE) != 0) {
      notes.add(words.say("sheet.trim", amount(Amount.of(line.pulled()))));
    }
    line.tubs()
        .forEach(
            draw ->
                notes.add(
                    words.say(
                        Begun.isExpected(draw.lot()) ? "sheet.from-begun" : "sheet.from-tub",
                        scene.names().user(draw.lot().code()),
                        amount(draw.amount()))));
    return notes;
  }

  private String mix(WeighLine line, Weighing.Dilution dilution) {
    return words.say(
        "sheet.dilution",
        Exact.plain(dilution.substance().grams(), 3),
        words.text(line.name()),
        Exact.plain(dilution.carrier().grams(), 3),
        carrier(line),
        Exact.plain(line.weighing().target().grams(), 3));
  }

  private static boolean isUnweighed(WeighLine line) {
    return line.weighing().scale().isEmpty()
        && line.weighing().dilution().isEmpty()
        && line.counted().isEmpty()
        && !line.weighing().target().isZero();
  }

  /** Whether a dose is carried by a powder. */
  private boolean isDryMix(WeighLine small) {
    return lines()
        .filter(line -> line.line().code().equals(small.carrier().orElse("")))
        .flatMap(line -> line.line().item().ingredient().stream())
        .anyMatch(code -> scene.book().ingredient(code).form() == Form.POWDER);
  }

  private String carrier(WeighLine small) {
    String code = small.carrier().orElse("");
    return lines()
        .filter(line -> line.line().code().equals(code))
        .map(line -> words.text(line.name()))
        .findFirst()
        .orElse(code);
  }

  private String amount(Amount amount) {
    return scene.names().amount(amount);
  }
}
