package halfgram.db;

import org.jooq.DSLContext;

/** A transaction under way; only stores look inside. */
public record Tx(DSLContext sql) {}
