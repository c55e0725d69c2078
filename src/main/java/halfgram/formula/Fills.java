package halfgram.formula;

import halfgram.measure.Amount;
import halfgram.measure.Exact;
import halfgram.measure.Mass;
import halfgram.measure.Message;
import halfgram.measure.Ratio;
import halfgram.measure.Rounding;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * How a make goes through its machines: equal fills of each, none above the machine's most, none
 * under its least, each a multiple of its step; and whole packs where a line asks. The make is only
 * ever raised, never cut: what comes out over is stock.
 *
 * <p>Source: common practice.
 *
 * @param scaled the make after raising
 * @param raisedBy why the make was raised, in the order it happened
 */
public record Fills(Scaled scaled, List<Message> raisedBy) {

  /**
   * Fills of one step.
   *
   * @param count at least 1
   * @param each mass of one fill
   */
  public record Fill(int count, Mass each) {}

  private static final int ROUNDS = 8;

  /** A growth that 34 digits cannot tell from none. */
  private static final Ratio SAME = Ratio.of("1.000000000000000000001");

  /**
   * Raises a make until every machine and pack is content.
   *
   * @param packOf the pack of an ingredient code, to which a whole-pack line is raised
   */
  public static Fills fit(Scaled wanted, Function<String, Optional<Mass>> packOf) {
    Scaled scaled = wanted;
    List<Message> raisedBy = new ArrayList<>();
    for (int round = 0; round < ROUNDS; round++) {
      Scaled before = scaled;
      scaled = toPacks(scaled, packOf, raisedBy);
      scaled = toMachines(scaled, raisedBy);
      if (scaled.basis().compareTo(before.basis()) == 0) {
        break;
      }
    }
    return new Fills(scaled, List.copyOf(raisedBy));
  }

  private static Scaled toPacks(
      Scaled scaled, Function<String, Optional<Mass>> packOf, List<Message> raisedBy) {
    Scaled raised = scaled;
    for (Line line : scaled.version().lines()) {
      Optional<Mass> pack =
          line.wholePacks() ? line.item().ingredient().flatMap(packOf) : Optional.empty();
      if (pack.isPresent()) {
        BigDecimal whole = Rounding.upToStep(raised.purchased(line).number(), pack.get().grams());
        Amount basis = Amount.grams(whole).dividedBy(line.purchased());
        raised = raise(raised, basis, Message.of("raised.pack", line.item().code()), raisedBy);
      }
    }
    return raised;
  }

  private static Scaled toMachines(Scaled scaled, List<Message> raisedBy) {
    Scaled raised = scaled;
    for (int i = 0; i < scaled.version().steps().size(); i++) {
      for (MachineUse use : scaled.version().steps().get(i).machines()) {
        if (!scaled.balance().holds(i)) {
          continue;
        }
        BigDecimal mass = raised.balance().into(i, raised.basis()).number();
        BigDecimal fitted = fitted(mass, use);
        Amount basis = raised.balance().basisForInto(i, Amount.grams(fitted));
        raised = raise(raised, basis, Message.of("raised.machine", use.equipment()), raisedBy);
      }
    }
    return raised;
  }

  /** The mass at or above this one that the machine takes in equal fills. */
  private static BigDecimal fitted(BigDecimal mass, MachineUse use) {
    long count = count(mass, use);
    BigDecimal fill = mass.divide(BigDecimal.valueOf(count), Exact.DIGITS);
    if (use.limits().min().isPresent()) {
      fill = fill.max(use.limits().min().get().grams());
    }
    if (use.limits().step().isPresent()) {
      fill = Rounding.upToStep(fill, use.limits().step().get().grams());
      if (use.limits().max().isPresent() && fill.compareTo(use.limits().max().get().grams()) > 0) {
        count++;
        fill =
            Rounding.upToStep(
                mass.divide(BigDecimal.valueOf(count), Exact.DIGITS),
                use.limits().step().get().grams());
        fill = fill.max(use.limits().min().map(Mass::grams).orElse(BigDecimal.ZERO));
      }
    }
    return fill.multiply(BigDecimal.valueOf(count)).max(mass);
  }

  private static long count(BigDecimal mass, MachineUse use) {
    return use.limits()
        .max()
        .map(max -> mass.divide(max.grams(), Exact.DIGITS))
        .map(fills -> Math.max(1, Rounding.UP_TO_WHOLE.round(fills).longValueExact()))
        .orElse(1L);
  }

  private static Scaled raise(Scaled from, Amount basis, Message why, List<Message> raisedBy) {
    Ratio growth = basis.over(from.basis().isZero() ? basis : from.basis());
    if (growth.compareTo(SAME) <= 0) {
      return from;
    }
    if (!raisedBy.contains(why)) {
      raisedBy.add(why);
    }
    return from.withBasis(basis);
  }

  /** The fills that a step takes, by the machine that needs most. */
  public static Fill of(Scaled scaled, int step) {
    Amount mass = scaled.balance().into(step, scaled.basis());
    long count = 1;
    for (MachineUse use : scaled.version().steps().get(step).machines()) {
      count = Math.max(count, count(mass.number(), use));
    }
    return new Fill((int) count, mass.dividedBy(count).mass(Rounding.TO_MICROGRAM));
  }

  /** Whether anything about a formula could raise a make. */
  public static boolean mayRaise(FormulaVersion version) {
    return version.lines().stream().anyMatch(Line::wholePacks)
        || version.steps().stream()
            .flatMap(step -> step.machines().stream())
            .anyMatch(use -> use.limits().min().isPresent() || use.limits().step().isPresent());
  }
}
