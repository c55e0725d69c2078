package halfgram.people;

import java.time.Instant;
import java.util.UUID;

/**
 * A browser or a script in which somebody has signed in.
 *
 * @param agent what it says it is
 * @param address from where it signed in
 */
public record Session(
    UUID id, UUID account, Instant since, Instant seen, String agent, String address) {}
