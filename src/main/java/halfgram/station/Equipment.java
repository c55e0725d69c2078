package halfgram.station;

import halfgram.kitchen.Text;
import java.util.Optional;

/** A machine (or several alike): where it stands and what one fill of it may be. */
public record Equipment(
    String code, Text name, Optional<String> station, int units, FillLimits limits) {}
