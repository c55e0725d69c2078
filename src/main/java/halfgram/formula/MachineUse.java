package halfgram.formula;

import halfgram.station.FillLimits;
import java.time.Duration;

/**
 * A machine that a step occupies.
 *
 * @param units how many of it there are
 * @param limits of one fill, the formula's own where it gives them
 * @param perFill extra time of each fill after the first
 */
public record MachineUse(String equipment, int units, FillLimits limits, Duration perFill) {}
