package halfgram.station;

import halfgram.kitchen.Text;
import java.util.Optional;

/**
 * A machine (or several alike): where it stands and what one fill of it may be.
 *
 * @param touches whether food touches it, so that it carries allergens until it is washed
 */
public record Equipment(
    String code,
    Text name,
    Optional<String> station,
    int units,
    FillLimits limits,
    boolean touches) {}
