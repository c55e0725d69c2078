package halfgram.formula;

import halfgram.station.FillLimits;
import java.time.Duration;

/**
 * A machine that a step occupies.
 *
 * @param units how many of it there are
 * @param limits of one fill, the formula's own where it gives them
 * @param perFill extra time of each fill after the first
 * @param during for how much of the step it is occupied
 */
public record MachineUse(
    String equipment, int units, FillLimits limits, Duration perFill, During during) {

  /** The part of a step for which a machine is occupied. */
  public enum During {
    /** From its start to its end. */
    STEP,
    /** While hands are on it. */
    HANDS,
    /** While it stands unattended. */
    ALONE
  }

  /** This use with other limits of one fill. */
  public MachineUse withLimits(FillLimits other) {
    return new MachineUse(equipment, units, other, perFill, during);
  }
}
