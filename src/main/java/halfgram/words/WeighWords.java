package halfgram.words;

import halfgram.ingredient.Form;
import halfgram.ingredient.Scale;
import halfgram.ingredient.Weighing;
import halfgram.measure.Amount;
import halfgram.measure.Mass;
import halfgram.measure.Ratio;
import halfgram.measure.Unit;
import halfgram.prep.Begun;
import halfgram.prep.KitchenBook;
import halfgram.prep.WeighGroup;
import halfgram.prep.WeighLine;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * How the lines of one weigh list are said, on paper and on every page: the number the hand needs
 * next, what must not be taken for it, and what else to know.
 */
public final class WeighWords {

  /** What a number is: counted out, taken of a dilution, or read off the display. */
  public enum Kind {
    COUNTED,
    TAKE,
    SHOWN
  }

  /**
   * The number of a line.
   *
   * @param number with as many decimals as the scale shows
   * @param unit what the scale reads, or what is counted
   * @param said the number with the signs of the language
   * @param beside the same in the kitchen's other units; empty when there is nothing beside it
   * @param scale the scale, or about how much a counted number weighs
   */
  public record Figure(
      Kind kind,
      BigDecimal number,
      String unit,
      String said,
      String beside,
      String name,
      String scale) {

    /** Where to weigh it, and what it is in the other units. */
    public String under() {
      return scale.isEmpty() || beside.isEmpty() ? scale + beside : scale + Dots.BETWEEN + beside;
    }

    /** Digits before the point. */
    public String whole() {
      return number.scale() > 0 ? said.substring(0, said.length() - number.scale() - 1) : said;
    }

    /** The point and the digits behind it; empty for a whole number. */
    public String fraction() {
      return said.substring(whole().length());
    }
  }

  /** How many figures are said of what no scale reads, and how many of them behind the point. */
  private static final int COUNTING = 4;

  private static final int MOST_DECIMALS = 2;

  private final KitchenBook book;
  private final Messages words;
  private final List<WeighGroup> groups;
  private final long fills;
  private final UnaryOperator<String> tubs;

  /**
   * The list of one task, or of a formula at a size.
   *
   * @param fills how many times each line is weighed
   * @param tubs what a tub is called, by its code; a tub still being made goes by its make
   */
  public WeighWords(
      KitchenBook book,
      Messages words,
      List<WeighGroup> groups,
      long fills,
      UnaryOperator<String> tubs) {
    this.book = book;
    this.words = words;
    this.groups = groups;
    this.fills = fills;
    this.tubs = tubs;
  }

  /** "in the dry cup"; empty without a vessel. */
  public Optional<String> into(WeighGroup group) {
    return group
        .vessel()
        .map(
            vessel ->
                group.count() == 1
                    ? words.say("sheet.into", vessel.name())
                    : words.say("sheet.into-several", vessel.name(), group.count()));
  }

  public Figure figure(WeighLine line) {
    String name = words.text(line.name());
    Weighing weighing = line.weighing();
    if (line.counted().isPresent()) {
      var count = line.counted().get();
      String about = words.say("sheet.about", words.amount(Amount.of(weighing.target())));
      int decimals = count.number().stripTrailingZeros().scale();
      BigDecimal number = count.number().setScale(Math.max(0, decimals), RoundingMode.HALF_UP);
      String unit = words.unit(number, count.unit());
      return new Figure(Kind.COUNTED, number, unit, said(number), "", name, about);
    }
    if (weighing.dilution().isPresent()) {
      Weighing.Dilution dilution = weighing.dilution().get();
      String mixed = words.say(isDryMix(line) ? "sheet.dry-mix-of" : "sheet.mix-of", name);
      return read(Kind.TAKE, dilution.take(), dilution.takeScale(), mixed);
    }
    Mass shown = weighing.shown();
    return weighing
        .scale()
        .map(scale -> read(Kind.SHOWN, shown, scale, name))
        .orElseGet(
            () -> {
              BigDecimal number = unread(shown.grams());
              BigDecimal step = BigDecimal.ONE.movePointLeft(number.scale());
              String beside = words.figures().beside(number, Unit.GRAM, step);
              return new Figure(Kind.SHOWN, number, "g", said(number), beside, name, "");
            });
  }

  /** What no scale reads: four figures that count, whole grams and hundredths at most. */
  private static BigDecimal unread(BigDecimal grams) {
    int before = Math.max(1, grams.precision() - grams.scale());
    int decimals = Math.max(0, Math.min(MOST_DECIMALS, COUNTING - before));
    return grams.setScale(decimals, RoundingMode.HALF_UP);
  }

  /** What a scale reads stays as it reads it: what a kitchen is used to stands beside it. */
  private Figure read(Kind kind, Mass mass, Scale scale, String name) {
    BigDecimal number = scale.display(mass.grams());
    String beside = words.figures().beside(mass.grams(), scale.reads(), scale.step());
    String unit = scale.reads().symbol();
    return new Figure(kind, number, unit, said(number), beside, name, words.text(scale.name()));
  }

  private String said(BigDecimal number) {
    return words.figures().read(number);
  }

  /** A mass as the scale of a line reads it. */
  private String onScale(BigDecimal grams, Optional<Scale> scale, int decimals) {
    return scale
        .filter(of -> of.reads() != Unit.GRAM)
        .map(of -> said(of.display(grams)) + " " + of.reads().symbol())
        .orElseGet(() -> words.figures().number(grams, decimals) + " g");
  }

  /** What it must not be taken for; empty when there is nothing like it. */
  public Optional<String> heed(WeighLine line) {
    if (line.lookAlikes().isEmpty()) {
      return Optional.empty();
    }
    String others = String.join(", ", line.lookAlikes().stream().map(words::text).toList());
    return Optional.of(words.say("sheet.not", words.say("sheet.not-word", others)));
  }

  /** Everything else to know, in the order in which the hand needs it. */
  public List<String> notes(WeighLine line) {
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
      notes.add(
          words.say("sheet.held-back", onScale(line.heldBack().grams(), weighing.scale(), 2)));
    }
    String stopWhen = line.line().dose().stopWhen().map(words::text).orElse("");
    line.atLeast()
        .ifPresent(
            likely ->
                notes.add(
                    words.say(
                        "sheet.from-to", onScale(likely.grams(), weighing.scale(), 1), stopWhen)));
    if (isUnweighed(line) && !book.scales().isEmpty()) {
      notes.add(words.say("sheet.exactly"));
    }
    if (fills > 1 && line.counted().isEmpty()) {
      Amount all = Amount.of(weighing.target()).times(fills);
      notes.add(words.say("sheet.in-all", fills, words.amount(all)));
    }
    if (line.line().trim().compareTo(Ratio.ONE) != 0) {
      notes.add(words.say("sheet.trim", words.amount(Amount.of(line.pulled()))));
    }
    line.tubs()
        .forEach(
            draw ->
                notes.add(
                    words.say(
                        Begun.isExpected(draw.lot()) ? "sheet.from-begun" : "sheet.from-tub",
                        tubs.apply(draw.lot().code()),
                        words.amount(draw.amount()))));
    return notes;
  }

  private String mix(WeighLine line, Weighing.Dilution dilution) {
    return words.say(
        "sheet.dilution",
        onScale(dilution.substance().grams(), Optional.of(dilution.substanceScale()), 3),
        words.text(line.name()),
        onScale(dilution.carrier().grams(), Optional.of(dilution.carrierScale()), 3),
        carrier(line).map(of -> words.text(of.name())).orElse(line.carrier().orElse("")),
        onScale(line.weighing().target().grams(), Optional.empty(), 3));
  }

  /** Whether no scale of the kitchen weighs it well enough, and nothing was worked out instead. */
  private static boolean isUnweighed(WeighLine line) {
    return line.weighing().scale().isEmpty()
        && line.weighing().dilution().isEmpty()
        && line.counted().isEmpty()
        && !line.weighing().target().isZero();
  }

  /** Whether a dose is carried by a powder. */
  private boolean isDryMix(WeighLine small) {
    return carrier(small)
        .flatMap(line -> line.line().item().ingredient())
        .filter(code -> book.ingredient(code).form() == Form.POWDER)
        .isPresent();
  }

  private Optional<WeighLine> carrier(WeighLine small) {
    return groups.stream()
        .flatMap(group -> group.lines().stream())
        .filter(line -> small.carrier().equals(Optional.of(line.line().code())))
        .findFirst();
  }
}
