package halfgram.prep;

import halfgram.formula.Output;
import halfgram.measure.Amount;
import halfgram.station.Container;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * What a make puts away of one output.
 *
 * @param path why path of the amount made
 * @param made what comes out
 * @param needed what of it is asked for
 * @param fills what goes into each container, in order; empty without a container
 * @param useBy end of its hold, or of what in it ends before
 * @param useByOf code of the tub, or the make, whose date that is
 */
public record Stored(
    String path,
    Output output,
    Amount made,
    Amount needed,
    Optional<Container> container,
    List<Amount> fills,
    Instant useBy,
    Optional<String> useByOf) {}
