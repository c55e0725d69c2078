package halfgram.prep;

import halfgram.station.Container;
import java.util.List;
import java.util.Optional;

/** Lines that go into one vessel, in the order they go in. */
public record WeighGroup(Optional<Container> vessel, List<WeighLine> lines) {}
