package halfgram.formula;

import halfgram.measure.Mass;
import halfgram.measure.Ratio;

/** What stays in bag and bowl: a fixed mass and a share of the rest. */
public record Residue(Mass fixed, Ratio share) {
  public static final Residue NONE = new Residue(Mass.ZERO, Ratio.ZERO);
}
