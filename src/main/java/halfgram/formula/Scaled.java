package halfgram.formula;

import halfgram.measure.Amount;
import halfgram.measure.Mass;
import halfgram.measure.Ratio;
import halfgram.measure.Rounding;

/**
 * A formula at a size: everything it weighs and gives follows from the mass of its basis.
 *
 * @param basis grams that are 100 %
 */
public record Scaled(FormulaVersion version, MassBalance balance, Amount basis) {

  /** What of a line is weighed out. */
  public Amount setOut(Line line) {
    return basis.timesExactly(line.dose().setOut());
  }

  /** What of a line the mix relies on. */
  public Amount counted(Line line) {
    return basis.timesExactly(line.dose().counted());
  }

  /** What of a line is pulled or bought, before trim. */
  public Amount purchased(Line line) {
    return basis.times(line.purchased());
  }

  /** Mass of all outputs together. */
  public Amount outputMass() {
    return balance.outputOf(basis);
  }

  /** What one output yields: grams, or the whole pieces that survive. */
  public Amount output(int index) {
    Output output = version.outputs().get(index);
    if (!output.isPieces()) {
      return outputMass().times(output.share());
    }
    return Amount.pieces(formed(index)).times(balance.piecesKept()).rounded(Rounding.DOWN_TO_WHOLE);
  }

  /** Whole pieces formed, before breakage; 0 for a mass output. */
  public long formed(int index) {
    Output output = version.outputs().get(index);
    return output
        .pieceMass()
        .map(piece -> outputMass().times(output.share()).over(Amount.of(piece)))
        .map(pieces -> Rounding.DOWN_TO_WHOLE.round(pieces.number()).longValueExact())
        .orElse(0L);
  }

  /** All pieces formed, whatever the output. */
  public long formed() {
    long pieces = 0;
    for (int i = 0; i < version.outputs().size(); i++) {
      pieces += formed(i);
    }
    return pieces;
  }

  /** The mass in the vessel at a step, at rest. */
  public Mass into(int step) {
    return balance.into(step, basis).mass(Rounding.TO_MICROGRAM);
  }

  public Scaled withBasis(Amount other) {
    return new Scaled(version, balance, other);
  }

  /** This size times a factor. */
  public Scaled times(Ratio factor) {
    return withBasis(basis.times(factor));
  }
}
