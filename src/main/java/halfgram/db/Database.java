package halfgram.db;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Optional;
import java.util.concurrent.locks.Lock;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.jooq.ConnectionProvider;
import org.jooq.DSLContext;
import org.jooq.SQLDialect;
import org.jooq.conf.RenderQuotedNames;
import org.jooq.conf.Settings;
import org.jooq.exception.DataAccessException;
import org.jooq.impl.DSL;
import org.jooq.impl.DataSourceConnectionProvider;
import org.jooq.impl.DefaultConfiguration;
import org.jooq.impl.DefaultTransactionProvider;
import org.jspecify.annotations.Nullable;

/**
 * The database of this process: a pool, migrated to this program's tables. {@link #write} answers
 * only when what was written is on disk.
 */
public final class Database implements AutoCloseable {
  private static final int CONNECTIONS = 12;

  private final HikariDataSource pool;
  private final DSLContext dsl;
  private final Sync sync;

  /** What a transaction that writes holds, so that H2 saves no part of it. */
  private final Optional<Lock> saving;

  private final Optional<Connection> last;

  private Database(
      HikariDataSource pool,
      SQLDialect dialect,
      Sync sync,
      Optional<Lock> saving,
      Optional<Connection> last) {
    Settings settings =
        new Settings()
            .withRenderSchema(false)
            // Nothing here listens for what a statement says beside its answer.
            .withExecuteLogging(false)
            .withFetchWarnings(false)
            .withAttachRecords(false)
            .withRenderQuotedNames(RenderQuotedNames.EXPLICIT_DEFAULT_UNQUOTED);
    this.pool = pool;
    // Transactions do not nest here, so none of them needs a savepoint at its start.
    ConnectionProvider connections = new DataSourceConnectionProvider(pool);
    this.dsl =
        DSL.using(
            new DefaultConfiguration()
                .set(connections)
                .set(dialect)
                .set(settings)
                .set(new DefaultTransactionProvider(connections, false)));
    this.sync = sync;
    this.saving = saving;
    this.last = last;
  }

  /**
   * Opens and migrates a database.
   *
   * @param url of H2 ({@code jdbc:h2:…}) or PostgreSQL ({@code jdbc:postgresql:…})
   * @throws Unavailable naming the address, when it cannot be reached, is held by another process
   *     or was written by a newer program
   */
  public static Database open(String url, Optional<String> user, Optional<String> password) {
    return open(url, user, password, UnaryOperator.identity());
  }

  /** As {@link #open(String, Optional, Optional)}, with something between commit and disk. */
  public static Database open(
      String url, Optional<String> user, Optional<String> password, UnaryOperator<Sync> around) {
    System.setProperty("org.jooq.no-logo", "true");
    System.setProperty("org.jooq.no-tips", "true");
    boolean h2 = url.startsWith("jdbc:h2:");
    HikariConfig config = new HikariConfig();
    config.setJdbcUrl(url);
    config.setUsername(user.orElse(h2 ? "sa" : ""));
    config.setPassword(password.orElse(""));
    config.setMaximumPoolSize(CONNECTIONS);
    config.setMinimumIdle(1);
    config.setPoolName("halfgram");
    config.setConnectionTimeout(10_000);
    HikariDataSource pool = null;
    Connection last = null;
    try {
      Optional<Lock> saving = Optional.empty();
      if (h2) {
        last = DriverManager.getConnection(url, config.getUsername(), config.getPassword());
        saving = Optional.of(WholeSaves.lock(last));
      }
      pool = new HikariDataSource(config);
      // A migration that this program does not know is refused, not passed over.
      Flyway migrations =
          Flyway.configure()
              .dataSource(pool)
              .locations("classpath:db/migration")
              .ignoreMigrationPatterns(new String[0])
              .load();
      within(saving, migrations::migrate);
      Sync sync = around.apply(h2 ? new GroupSync(pool) : Sync.AT_COMMIT);
      return new Database(
          pool, h2 ? SQLDialect.H2 : SQLDialect.POSTGRES, sync, saving, Optional.ofNullable(last));
    } catch (RuntimeException | SQLException e) {
      if (pool != null) {
        pool.close();
      }
      close(last);
      throw new Unavailable(url, e);
    }
  }

  /** Reads within one transaction. */
  public <T> T read(Function<Tx, T> work) {
    // The pool would open H2's file again, and write past what saves and forces the old one.
    if (hasGivenUp()) {
      throw new IllegalStateException("the database has closed itself");
    }
    return dsl.transactionResult(configuration -> work.apply(new Tx(configuration.dsl())));
  }

  /**
   * Does all of it or nothing, whatever becomes of the machine, and answers when it is on disk;
   * also when nothing was written, because what a repeat found there may be another's that is still
   * on its way.
   */
  public <T> T write(Function<Tx, T> work) {
    T answer = within(saving, () -> read(work));
    sync.await();
    return answer;
  }

  /**
   * As {@link #write(Function)}, one after the other with whatever else has the same turn: who
   * waits for it holds no connection.
   *
   * @param committed told of the answer as soon as others can see what was written, and before the
   *     next has its turn
   */
  public <T> T write(Lock turn, Function<Tx, T> work, Consumer<T> committed) {
    T answer;
    turn.lock();
    try {
      answer = within(saving, () -> read(work));
      committed.accept(answer);
    } finally {
      turn.unlock();
    }
    sync.await();
    return answer;
  }

  /** Does all of it or nothing, and does not wait for the disk: it may be lost. */
  public void note(Consumer<Tx> work) {
    within(
        saving,
        () ->
            read(
                tx -> {
                  work.accept(tx);
                  return true;
                }));
  }

  private static <T> T within(Optional<Lock> lock, Supplier<T> work) {
    lock.ifPresent(Lock::lock);
    try {
      return work.get();
    } finally {
      lock.ifPresent(Lock::unlock);
    }
  }

  /** Whether other processes may write to it too. */
  public boolean isShared() {
    return dsl.dialect() != SQLDialect.H2;
  }

  /**
   * Whether it keeps nothing any more until it is opened anew: H2 closes itself when its disk is
   * full or fails. PostgreSQL is found again by the pool.
   */
  public boolean hasGivenUp() {
    try {
      return sync.hasFailed() || (last.isPresent() && last.get().isClosed());
    } catch (SQLException e) {
      return true;
    }
  }

  /** Whether it answers and keeps what it is given. */
  public boolean isAlive() {
    if (hasGivenUp()) {
      return false;
    }
    try {
      dsl.selectOne().fetch();
      return true;
    } catch (DataAccessException e) {
      return false;
    }
  }

  @Override
  public void close() {
    sync.close();
    // The pool goes first: while it does, it must neither close H2 nor open it again.
    pool.close();
    close(last.orElse(null));
  }

  /** H2 writes what is left and closes its file with the last connection. */
  private static void close(@Nullable Connection connection) {
    if (connection != null) {
      try {
        connection.close();
      } catch (SQLException e) {
        throw new IllegalStateException("the database could not be closed", e);
      }
    }
  }

  /** The database cannot be opened. */
  public static final class Unavailable extends RuntimeException {
    private static final long serialVersionUID = 1;
    private final String url;

    Unavailable(String url, Exception cause) {
      super("cannot open " + url + ": " + innermost(cause).getMessage(), cause);
      this.url = url;
    }

    public String url() {
      return url;
    }

    /** What the database says. */
    public String reason() {
      String message = String.valueOf(innermost(this).getMessage());
      return message.lines().findFirst().orElse(message).strip();
    }

    /** Whether another process has it open. */
    public boolean isHeld() {
      return String.valueOf(innermost(this).getMessage()).contains("already in use")
          || String.valueOf(innermost(this).getMessage()).contains("locked");
    }

    /** Whether a newer program has written it. */
    public boolean isNewer() {
      return getCause() instanceof FlywayException
          && String.valueOf(getCause().getMessage()).contains("not resolved locally");
    }

    private static Throwable innermost(Throwable e) {
      Throwable inner = e;
      while (inner.getCause() != null) {
        inner = inner.getCause();
      }
      return inner;
    }
  }
}
