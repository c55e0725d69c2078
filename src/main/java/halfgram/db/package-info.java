/**
 * The database: opening and migrating it, transactions, the answer that waits until what it says is
 * on disk. Refuses: to know what the rows mean.
 */
@NullMarked
package halfgram.db;

import org.jspecify.annotations.NullMarked;
