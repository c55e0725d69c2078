package halfgram.people;

import java.util.Optional;
import java.util.UUID;

/**
 * Who shows a token.
 *
 * @param account of a session; empty for a tablet
 * @param session its id; empty for a tablet
 * @param caller what they are in the kitchen that was asked for; empty for somebody of others
 */
public record Known(Optional<Account> account, Optional<UUID> session, Optional<Caller> caller) {}
