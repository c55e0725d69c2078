package halfgram.prep;

import java.time.Instant;
import java.util.Optional;
import java.util.SortedSet;

/**
 * Work for a diet that shares a thing of the kit, on one day, with work that leaves in it what the
 * diet goes without.
 *
 * @param thing id of it, see {@link Things}
 * @param free the work for the diet
 * @param soils the work that leaves it: the last before, or the first after when none is before
 * @param allergens codes of what it leaves
 * @param startBy when the work for the diet would have to start to be done before all that leaves
 *     it; empty when it is before it already, or when lags do not allow it
 */
public record Contact(
    String thing, Task free, Task soils, SortedSet<String> allergens, Optional<Instant> startBy) {

  /** Whether, by the latest starts, the work for the diet comes first. */
  public boolean isFirst() {
    return !soils.start().isBefore(free.end());
  }
}
