package halfgram.prep;

import halfgram.station.Container;
import java.util.List;
import java.util.Optional;

/**
 * Lines that go into one vessel, in the order they go in.
 *
 * @param path why path of the count
 * @param count how many of the vessel it takes, by the volume of the lines
 */
public record WeighGroup(
    Optional<Container> vessel, List<WeighLine> lines, String path, int count) {}
