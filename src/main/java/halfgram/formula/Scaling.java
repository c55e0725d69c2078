package halfgram.formula;

import halfgram.measure.Amount;
import halfgram.measure.Ratio;
import halfgram.measure.Rounding;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * The five ways to size a formula: by what it should yield, by covers, by pieces, by written
 * batches, and by the scarcest ingredient. All give the mass of the basis; rounding to machines and
 * packs comes after ({@link Fills}).
 *
 * <p>Example: 73 loaves of 390 g from flour 100, water 67, salt 2, yeast 1 (170 % together): 28 470
 * g of dough, so 16 747.06 g of flour (published percent worksheet).
 */
public final class Scaling {
  private final FormulaVersion version;
  private final MassBalance balance;

  public Scaling(FormulaVersion version, MassBalance balance) {
    this.version = version;
    this.balance = balance;
  }

  /** So that one output yields this many grams, or this many sound pieces. */
  public Scaled byOutput(int index, Amount wanted) {
    Output output = version.outputs().get(index);
    Amount mass = output.massOf(output.isPieces() ? toForm(wanted) : wanted);
    return at(balance.basisFor(mass.dividedBy(output.share())));
  }

  /** So that this many covers get this much each. */
  public Scaled byCovers(int index, long covers, Amount perCover) {
    return byOutput(index, perCover.times(covers));
  }

  /** So that this many sound pieces come out. */
  public Scaled byPieces(int index, long pieces) {
    return byOutput(index, Amount.pieces(pieces));
  }

  /** So many times the batch as written; empty when the formula says no written batch. */
  public Optional<Scaled> byBatches(Ratio batches) {
    return version.written().map(written -> at(Amount.of(written).times(batches)));
  }

  /**
   * As much as the scarcest allows.
   *
   * @param onHand what there is by item code, in grams of the weight as the lines write it
   */
  public Optional<Scaled> byScarcest(Map<String, Amount> onHand) {
    Map<String, Ratio> shares = new LinkedHashMap<>();
    version
        .lines()
        .forEach(line -> shares.merge(line.item().code(), line.dose().setOut(), Ratio::plus));
    return shares.entrySet().stream()
        .filter(share -> !share.getValue().isZero())
        .flatMap(
            share ->
                Optional.ofNullable(onHand.get(share.getKey()))
                    .map(there -> there.dividedBy(share.getValue()))
                    .stream())
        .min(Comparator.naturalOrder())
        .map(this::at);
  }

  /** Pieces to form so that this many survive: ceil(n / (1 - breakage)). 267 at 8 % need 291. */
  public Amount toForm(Amount pieces) {
    return pieces.dividedBy(balance.piecesKept()).rounded(Rounding.UP_TO_WHOLE);
  }

  private Scaled at(Amount basis) {
    return new Scaled(version, balance, basis);
  }
}
