package halfgram.lot;

import java.util.Optional;
import java.util.UUID;

/**
 * A tub as the ledger knows it: the lot with what is left by its movements.
 *
 * @param task the task that filled it
 * @param change number of the change that made it
 * @param assumed whether use was assumed since anybody counted it
 */
public record Tub(UUID id, Lot lot, Optional<String> task, long change, boolean assumed) {}
