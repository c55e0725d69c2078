package halfgram.prep;

import halfgram.formula.Dose;
import halfgram.formula.Fills;
import halfgram.formula.Line;
import halfgram.formula.Step;
import halfgram.ingredient.Form;
import halfgram.ingredient.Scale;
import halfgram.ingredient.Stated;
import halfgram.ingredient.Weighing;
import halfgram.kitchen.Text;
import halfgram.measure.Amount;
import halfgram.measure.Because;
import halfgram.measure.Dimension;
import halfgram.measure.Exact;
import halfgram.measure.Mass;
import halfgram.measure.Message;
import halfgram.measure.Quantity;
import halfgram.measure.Ratio;
import halfgram.measure.Rounding;
import halfgram.prep.netting.Draw;
import halfgram.station.Container;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The weigh list of one task: lines grouped by vessel in the order they go in, each on its scale.
 *
 * <p>Rules. A mass comes to rest here, to the microgram, and is shown to the scale's step. A basis
 * line may be off by the base tolerance, others by the dose tolerance, unless the line says. The
 * vessel and what is in it already count in the scale's capacity; what no scale weighs well enough
 * under them is weighed apart and tipped in. What a dilution brings along of its carrier is taken
 * off the carrier's own line; without a line that can carry it there is no dilution.
 *
 * <p>Example: 4.4 g into a jug of 875 g of water: the 0.01 g scale carries 500 g, so apart.
 */
final class Weighings {
  private final KitchenBook book;
  private final Because because;

  Weighings(KitchenBook book, Because because) {
    this.book = book;
    this.because = because;
  }

  List<WeighGroup> of(Make make, Step step, Fills.Fill fill, Map<String, List<Draw>> tubs) {
    List<Line> lines =
        make.version().lines().stream().filter(line -> line.step().equals(step.code())).toList();
    List<Scale> scales =
        book.scales().stream()
            .filter(s -> s.station().isEmpty() || s.station().get().equals(step.station()))
            .toList();
    Map<String, Weighing> small = new HashMap<>();
    Map<String, String> carriers = new HashMap<>();
    Map<String, Mass> carried = dilutions(make, fill, lines, scales, small, carriers);
    List<WeighGroup> groups = new ArrayList<>();
    int from = 0;
    Optional<Scale> current = Optional.empty();
    while (from < lines.size()) {
      int to = from;
      Optional<String> vessel = lines.get(from).vessel();
      while (to < lines.size() && lines.get(to).vessel().equals(vessel)) {
        to++;
      }
      Optional<Container> container = vessel.map(code -> container(code));
      Mass onScale = container.map(Container::tare).orElse(Mass.ZERO);
      List<WeighLine> weighed = new ArrayList<>();
      for (Line line : lines.subList(from, to)) {
        Mass carries = carried.getOrDefault(line.code(), Mass.ZERO);
        Mass target = target(make, line, fill).minus(carries);
        boolean counted = counted(make, line, fill).isPresent();
        Weighing inPlace =
            counted
                ? Weighing.unweighed(target)
                : small.getOrDefault(line.code(), weigh(target, onScale, line, scales, current));
        Weighing weighing =
            counted || inPlace.scale().isPresent() || small.containsKey(line.code())
                ? inPlace
                : apart(target, line, scales, current);
        boolean apart = inPlace.scale().isEmpty() && weighing.scale().isPresent();
        Optional<String> carrier = Optional.ofNullable(carriers.get(line.code()));
        weighed.add(line(make, step, fill, line, weighing, apart, carries, carrier, tubs));
        current = weighing.scale();
        onScale = onScale.plus(target);
      }
      groups.add(group(make, step, container, weighed, groups.size() + 1));
      from = to;
    }
    return groups;
  }

  /**
   * Lines in one vessel, or in as many as their volume fills; what has no known density counts as 1
   * g/mL, near enough to tell a cup from a bucket.
   */
  private WeighGroup group(
      Make make, Step step, Optional<Container> vessel, List<WeighLine> lines, int position) {
    Amount volume = Amount.NO_MASS;
    for (WeighLine line : lines) {
      Ratio density =
          line.line()
              .item()
              .ingredient()
              .flatMap(code -> book.ingredient(code).density())
              .map(Stated::value)
              .orElse(Ratio.ONE);
      volume = volume.plus(Amount.of(line.weighing().target()).dividedBy(density));
    }
    Amount millilitres = new Amount(volume.number(), Dimension.VOLUME);
    int count =
        vessel
            .map(of -> Rounding.UP_TO_WHOLE.round(millilitres.over(of.volume()).number()))
            .map(number -> Math.max(1, number.intValueExact()))
            .orElse(1);
    String path = Paths.vessel(make, step, position);
    WeighGroup group = new WeighGroup(vessel, lines, path, count);
    if (because.asked()) {
      because.note(() -> vessels(group));
    }
    return group;
  }

  private static Because.Note vessels(WeighGroup group) {
    List<Because.Input> inputs =
        group.lines().stream()
            .map(
                line ->
                    Because.Input.derived(
                        Message.of("why.line", line.line().code()),
                        Notes.grams(line.weighing().target()),
                        line.path()))
            .toList();
    return new Because.Note(
        group.path(), String.valueOf(group.count()), Message.of("why.rule.vessels"), inputs);
  }

  /** The derivations of a weigh list that stands. */
  void note(Task task) {
    for (WeighGroup group : task.weigh()) {
      because.note(() -> vessels(group));
      for (WeighLine line : group.lines()) {
        because.note(
            () -> note(line.path(), task.make(), task.fill(), line.line(), line.weighing()));
      }
    }
  }

  private Container container(String code) {
    return java.util.Objects.requireNonNull(book.containers().get(code));
  }

  private static Mass target(Make make, Line line, Fills.Fill fill) {
    return make.scaled().setOut(line).dividedBy(fill.count()).mass(Rounding.TO_MICROGRAM);
  }

  private Weighing weigh(
      Mass target, Mass onScale, Line line, List<Scale> scales, Optional<Scale> current) {
    return Weighing.of(target, onScale, tolerance(line), scales, current);
  }

  /** In a cup of its own, tared away; a dose that nothing can carry is not diluted. */
  private Weighing apart(Mass target, Line line, List<Scale> scales, Optional<Scale> current) {
    Weighing alone = weigh(target, Mass.ZERO, line, scales, current);
    return alone.dilution().isEmpty() ? alone : Weighing.unweighed(target);
  }

  private Ratio tolerance(Line line) {
    return line.tolerance()
        .orElse(
            line.dose().isBasis()
                ? book.kitchen().baseTolerance()
                : book.kitchen().doseTolerance());
  }

  /**
   * Works the doses that are too small to weigh, each through a line of the same step that has
   * enough to carry it: its own choice, else the largest first.
   *
   * @return what each carrier line gives up
   */
  private Map<String, Mass> dilutions(
      Make make,
      Fills.Fill fill,
      List<Line> lines,
      List<Scale> scales,
      Map<String, Weighing> small,
      Map<String, String> carriers) {
    Map<String, Mass> carried = new HashMap<>();
    for (Line line : lines) {
      if (counted(make, line, fill).isPresent()) {
        continue;
      }
      Weighing alone = weigh(target(make, line, fill), Mass.ZERO, line, scales, Optional.empty());
      if (alone.dilution().isEmpty()) {
        continue;
      }
      Mass takes = alone.dilution().get().carrierTaken(alone.target());
      lines.stream()
          .filter(other -> !other.code().equals(line.code()) && mayCarry(other))
          .filter(other -> !small.containsKey(other.code()))
          .filter(
              other ->
                  target(make, other, fill)
                          .minus(carried.getOrDefault(other.code(), Mass.ZERO))
                          .compareTo(takes)
                      >= 0)
          .max(
              Comparator.comparing(
                      (Line other) -> line.carrier().filter(other.code()::equals).isPresent())
                  .thenComparing(other -> other.dose().setOut())
                  .thenComparing(Line::code))
          .ifPresent(
              carrier -> {
                small.put(line.code(), alone);
                carriers.put(line.code(), carrier.code());
                carried.merge(carrier.code(), takes, Mass::plus);
              });
    }
    return carried;
  }

  /** What a dose can be mixed into: an ingredient that is a powder or a liquid. */
  private boolean mayCarry(Line line) {
    return line.item()
        .ingredient()
        .filter(code -> book.ingredient(code).form() != Form.SOLID)
        .isPresent();
  }

  /** A line written in pieces or bunches is counted out, to the half; less than half is weighed. */
  private static Optional<Quantity> counted(Make make, Line line, Fills.Fill fill) {
    Optional<Quantity> typed =
        line.dose()
            .typed()
            .filter(
                quantity ->
                    quantity.canonical().filter(a -> a.dimension() != Dimension.COUNT).isEmpty());
    return typed.flatMap(
        quantity -> {
          Ratio batches =
              make.scaled()
                  .basis()
                  .over(Amount.of(make.version().written().orElseThrow()))
                  .dividedBy(new Ratio(BigDecimal.valueOf(fill.count())));
          BigDecimal number = quantity.number().multiply(batches.number(), Exact.DIGITS);
          return number.compareTo(HALF) < 0
              ? Optional.empty()
              : Optional.of(new Quantity(Rounding.toStep(number, HALF), quantity.unit()));
        });
  }

  private static final BigDecimal HALF = new BigDecimal("0.5");

  private WeighLine line(
      Make make,
      Step step,
      Fills.Fill fill,
      Line line,
      Weighing weighing,
      boolean apart,
      Mass carries,
      Optional<String> carrier,
      Map<String, List<Draw>> tubs) {
    Mass heldBack = Amount.of(weighing.target()).times(line.holdBack()).mass(Rounding.TO_MICROGRAM);
    Optional<Mass> atLeast =
        line.dose().kind() == Dose.Kind.FROM_TO
            ? Optional.of(
                make.scaled().counted(line).dividedBy(fill.count()).mass(Rounding.TO_MICROGRAM))
            : Optional.empty();
    String path = Paths.weigh(make, step, line, "mass");
    if (because.asked()) {
      because.note(() -> note(path, make, fill, line, weighing));
    }
    return new WeighLine(
        path,
        line,
        name(line),
        weighing,
        apart,
        weighing.scale().map(scale -> scale.shown(heldBack.grams())).orElse(heldBack),
        atLeast,
        carries,
        carrier,
        counted(make, line, fill),
        lookAlikes(line),
        make.scaled().purchased(line).mass(Rounding.TO_MICROGRAM),
        line.item()
            .component()
            .map(ref -> TaskList.tubKey(book, make.id(), ref))
            .map(key -> tubs.getOrDefault(key, List.of()))
            .orElse(List.of()));
  }

  Text name(Line line) {
    return Components.name(book, line.item());
  }

  private List<Text> lookAlikes(Line line) {
    return line.item()
        .ingredient()
        .map(code -> book.ingredient(code).lookAlikes())
        .map(codes -> codes.stream().map(code -> book.ingredient(code).name()).toList())
        .orElse(List.of());
  }

  private Because.Note note(String path, Make make, Fills.Fill fill, Line line, Weighing weighing) {
    List<Because.Input> inputs = new ArrayList<>();
    inputs.add(
        Because.Input.derived(
            Message.of("why.basis"),
            Notes.grams(make.scaled().basis()),
            "make/" + make.id() + "/basis"));
    inputs.add(
        Because.Input.entered(
            Message.of("why.dose." + line.dose().kind().name().toLowerCase(java.util.Locale.ROOT)),
            Exact.plain(line.dose().setOut().percent(), 4) + " %",
            Message.of("why.from-formula", make.version().formula(), make.version().number())));
    if (fill.count() > 1) {
      inputs.add(Because.Input.plain(Message.of("why.fills"), String.valueOf(fill.count())));
    }
    weighing
        .scale()
        .ifPresent(
            scale ->
                inputs.add(
                    Because.Input.plain(
                        Message.of("why.scale", scale.name(), Notes.percent(tolerance(line))),
                        Notes.grams(scale.step()))));
    return new Because.Note(
        path, Notes.grams(weighing.target()), Message.of("why.rule.weigh"), inputs);
  }
}
