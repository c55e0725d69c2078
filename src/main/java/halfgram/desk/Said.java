package halfgram.desk;

import java.time.Instant;

/**
 * The time at which something was done, as somebody says who enters it later.
 *
 * @param at when it was done
 * @param by who types it
 * @param sure whether they have been told what speaks against it, and say that it was so
 */
public record Said(Instant at, String by, boolean sure) {}
