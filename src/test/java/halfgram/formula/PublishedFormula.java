package halfgram.formula;

import halfgram.kitchen.Text;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Mass;
import halfgram.measure.Ratio;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A formula as a published text writes it: percents of a base, a yield, perhaps pieces. */
final class PublishedFormula {
  private final List<Line> lines = new ArrayList<>();
  private Ratio yield = Ratio.ONE;
  private Optional<Mass> piece = Optional.empty();
  private Optional<Mass> written = Optional.empty();

  /** A part of the base; all of them are 100 %. */
  PublishedFormula base(String item, String percent) {
    return line(item, Dose.basis(share(percent)), Ratio.ONE, Line.Weighed.PREPARED);
  }

  /** A percent of the base. */
  PublishedFormula dose(String item, String percent) {
    return line(item, Dose.percent(share(percent)), Ratio.ONE, Line.Weighed.PREPARED);
  }

  /** The whole base, of which so many percent are left after trim. */
  PublishedFormula trimmed(String item, String yieldPercent, Line.Weighed weighed) {
    return line(item, Dose.basis(Ratio.ONE), share(yieldPercent), weighed);
  }

  PublishedFormula yields(String percent) {
    yield = share(percent);
    return this;
  }

  PublishedFormula pieces(String grams) {
    piece = Optional.of(Mass.grams(grams));
    return this;
  }

  PublishedFormula written(Amount mass) {
    written = Optional.of(Mass.exactly(mass.number()));
    return this;
  }

  private PublishedFormula line(String item, Dose dose, Ratio trim, Line.Weighed weighed) {
    lines.add(
        new Line(
            item,
            new Item.OfIngredient(item, Optional.empty()),
            trim,
            weighed,
            dose,
            Ratio.ZERO,
            Optional.empty(),
            "make",
            Optional.empty(),
            Optional.empty(),
            false,
            false));
    return this;
  }

  private static Ratio share(String percent) {
    return Ratio.percent(new BigDecimal(percent));
  }

  FormulaVersion version() {
    Step step =
        new Step(
            "make",
            Text.of("make"),
            List.of(Instruction.of(Text.of("make"))),
            "any",
            1,
            Work.NONE,
            Work.NONE,
            Duration.ZERO,
            List.of(),
            false,
            yield,
            Residue.NONE,
            Ratio.ZERO,
            List.of(),
            Optional.empty(),
            Optional.empty(),
            false,
            List.of());
    Output output =
        new Output(
            "out",
            Text.of("out"),
            piece.isPresent() ? Dimension.COUNT : Dimension.MASS,
            Ratio.ONE,
            piece,
            Output.Rest.NONE,
            Output.Hold.of(Duration.ofDays(1), Reason.NONE, ""),
            Optional.empty(),
            Optional.empty(),
            Output.Split.FULL,
            Optional.empty());
    return new FormulaVersion(
        "published",
        Text.of("published"),
        1,
        Optional.empty(),
        "",
        written,
        lines,
        List.of(step),
        List.of(output),
        false,
        Optional.empty(),
        List.of());
  }

  Scaling scaling() {
    FormulaVersion version = version();
    return new Scaling(version, MassBalance.of(version));
  }

  /** What is weighed out of an item at a size. */
  static BigDecimal weighed(Scaled scaled, String item) {
    return scaled.setOut(find(scaled, item)).number();
  }

  /** What is bought of an item at a size. */
  static BigDecimal bought(Scaled scaled, String item) {
    return scaled.purchased(find(scaled, item)).number();
  }

  private static Line find(Scaled scaled, String item) {
    return scaled.version().lines().stream()
        .filter(line -> line.code().equals(item))
        .findFirst()
        .orElseThrow();
  }
}
