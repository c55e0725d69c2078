package halfgram.prep;

import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/**
 * Something a cook said of a thing that food goes through; never changed, only undone.
 *
 * @param thing id of it, see {@link Things}
 * @param how it was washed; of a task done with another kit, what that is
 * @param task that is done with another kit; empty for a wash
 * @param undoes id of the entry that it takes back
 */
public record Wash(
    UUID id,
    String thing,
    String how,
    Optional<String> task,
    String who,
    Instant at,
    Optional<UUID> undoes) {

  /** Whether it says that the thing is clean. */
  public boolean cleans() {
    return task.isEmpty() && undoes.isEmpty();
  }
}
