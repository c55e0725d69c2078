package halfgram.db;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;
import javax.sql.DataSource;
import org.h2.mvstore.MVStore;
import org.jspecify.annotations.Nullable;

/**
 * H2 writes a commit to its file some time later and forces nothing to disk. One thread does both
 * on a connection of its own; everybody who waits when it starts shares it. Never called inside a
 * transaction: it waits for nobody, but nobody may hold a row's lock while waiting for the disk.
 *
 * <p>{@code CHECKPOINT SYNC} is not enough. When H2's own writer in the background has just taken
 * the changes up, the checkpoint finds none unsaved and forces a file to disk into which they are
 * still to be written. So a round saves, waits for what that writer has in hand, names what it
 * saved in the file's header ({@link NewestChunk}), and forces then.
 */
final class GroupSync implements Sync {
  private final ReentrantLock lock = new ReentrantLock();
  private final Condition asked = lock.newCondition();
  private final Condition synced = lock.newCondition();
  private final Connection connection;
  private final MVStore store;
  private final NewestChunk newest;
  private final Thread thread;
  private long wanted;
  private long begun;
  private long done;
  private boolean closed;
  private volatile @Nullable Throwable failure;

  GroupSync(DataSource source) throws SQLException {
    this.connection = source.getConnection();
    this.store = WholeSaves.store(connection);
    this.newest = new NewestChunk(store);
    this.thread = new Thread(this::run, "halfgram-sync");
    thread.setDaemon(true);
    thread.start();
  }

  @Override
  public void await() {
    lock.lock();
    try {
      long mine = begun + 1;
      wanted = Math.max(wanted, mine);
      asked.signal();
      while (done < mine) {
        if (failure != null || closed) {
          throw new IllegalStateException("the database could not be forced to disk", failure);
        }
        synced.awaitUninterruptibly();
      }
    } finally {
      lock.unlock();
    }
  }

  @Override
  public boolean hasFailed() {
    return failure != null;
  }

  private void run() {
    try {
      while (next()) {
        store.commit();
        store.executeFilestoreOperation(newest::name);
        store.sync();
        finish();
      }
    } catch (RuntimeException | Error e) {
      // Whatever it was, nobody may go on waiting for a disk that nobody forces any more.
      fail(e);
    }
  }

  /** Begins a round when somebody waits for one; false once closed. */
  private boolean next() {
    lock.lock();
    try {
      while (wanted <= begun && !closed) {
        asked.awaitUninterruptibly();
      }
      if (wanted <= begun) {
        return false;
      }
      begun++;
      return true;
    } finally {
      lock.unlock();
    }
  }

  private void finish() {
    lock.lock();
    try {
      done = begun;
      synced.signalAll();
    } finally {
      lock.unlock();
    }
  }

  private void fail(Throwable e) {
    lock.lock();
    try {
      failure = e;
      synced.signalAll();
    } finally {
      lock.unlock();
    }
  }

  @Override
  public void close() {
    lock.lock();
    try {
      closed = true;
      asked.signal();
    } finally {
      lock.unlock();
    }
    try {
      thread.join();
      connection.close();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (SQLException e) {
      // The database is closing: there is nothing left to lose on this connection.
      fail(e);
    }
  }
}
