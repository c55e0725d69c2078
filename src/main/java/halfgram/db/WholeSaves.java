package halfgram.db;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.concurrent.locks.Lock;
import java.util.concurrent.locks.ReentrantLock;
import org.h2.engine.Session;
import org.h2.engine.SessionLocal;
import org.h2.jdbc.JdbcConnection;
import org.h2.mvstore.MVStore;

/**
 * Keeps H2 from saving half a transaction.
 *
 * <p>H2 saves one map after the other, a table and each of its indexes is one, and goes on writing
 * meanwhile. A transaction that is under way then is saved with what it did to some of them and not
 * with the rest; if it ends meanwhile, its record of what to undo is not saved either. The next
 * save puts that right, but after a kill there is none: a change's number was given twice so, a row
 * was there without its place in an index. So transactions that write and H2's saves, also those of
 * its own writer in the background, exclude each other by the lock that H2 takes for a save. It is
 * H2's own and not open; a version that has none is refused when a database is opened.
 */
final class WholeSaves {
  private WholeSaves() {}

  /**
   * The lock that a transaction holds from its beginning until it has ended.
   *
   * @param connection of H2
   * @throws IllegalStateException for a version of H2 that saves in another way
   */
  static Lock lock(Connection connection) throws SQLException {
    try {
      VarHandle lock =
          MethodHandles.privateLookupIn(MVStore.class, MethodHandles.lookup())
              .findVarHandle(MVStore.class, "storeLock", ReentrantLock.class);
      return (ReentrantLock) lock.get(store(connection));
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException("this version of H2 does not show when it saves", e);
    }
  }

  /** What keeps the maps of a connection's database. */
  static MVStore store(Connection connection) throws SQLException {
    Session session = connection.unwrap(JdbcConnection.class).getSession();
    return ((SessionLocal) session).getDatabase().getStore().getMvStore();
  }
}
