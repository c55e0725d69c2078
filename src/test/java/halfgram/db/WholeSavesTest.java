package halfgram.db;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.UnaryOperator;
import org.h2.mvstore.MVStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What H2 has saved at any moment holds every transaction whole, or nothing of it. */
class WholeSavesTest {
  private static final int WRITERS = 4;

  @TempDir Path folder;

  @Test
  void nothingIsSavedWhileATransactionIsUnderWay() throws Exception {
    try (Database database = open(UnaryOperator.identity());
        Connection connection = connect("book")) {
      MVStore store = WholeSaves.store(connection);
      long saved =
          database.write(
              tx -> {
                tx.sql().execute("update one set n = n + 1");
                long version = CompletableFuture.supplyAsync(store::tryCommit).join();
                tx.sql().execute("update other set n = n + 1");
                return version;
              });
      assertThat(saved).as("the version that was saved, or none").isEqualTo(-1);
      assertThat(store.hasUnsavedChanges()).as("after it, all is").isFalse();
    }
  }

  @Test
  void whateverAKillLeavesHoldsWholeTransactions() throws Exception {
    assertThat(torn(40)).isEmpty();
  }

  /** What is wrong in the files of so many moments, while writers change two tables alike. */
  private List<String> torn(int moments) throws Exception {
    List<String> wrong = new ArrayList<>();
    try (Database database = open(WholeSavesTest::hurrying);
        Connection connection = connect("book")) {
      MVStore store = WholeSaves.store(connection);
      AtomicBoolean enough = new AtomicBoolean();
      ExecutorService writers = Executors.newFixedThreadPool(WRITERS);
      List<Future<?>> writing = new ArrayList<>();
      for (int i = 0; i < WRITERS; i++) {
        int row = i;
        writing.add(
            writers.submit(
                () -> {
                  while (!enough.get()) {
                    database.write(
                        tx ->
                            tx.sql().execute("update one set n = n + 1 where id = ?", row)
                                + tx.sql().execute("update other set n = n + 1 where id = ?", row));
                  }
                }));
      }
      for (int moment = 0; moment < moments; moment++) {
        store.commit();
        store.executeFilestoreOperation(this::copy);
        int differ =
            count(
                "copy",
                "select "
                    + WRITERS
                    + " - count(*) from one join other on one.id = other.id and one.n = other.n");
        if (differ > 0) {
          wrong.add(differ + " rows at moment " + moment);
        }
      }
      enough.set(true);
      writers.shutdown();
      for (Future<?> one : writing) {
        one.get();
      }
    }
    return wrong;
  }

  private Database open(UnaryOperator<Sync> around) {
    Database database = Database.open(url("book"), Optional.empty(), Optional.empty(), around);
    database.write(
        tx -> {
          for (String table : List.of("one", "other")) {
            tx.sql().execute("create table " + table + " (id int primary key, n bigint)");
            tx.sql().execute("create index ix_" + table + " on " + table + " (n)");
            for (int row = 0; row < WRITERS; row++) {
              tx.sql().execute("insert into " + table + " values (?, 0)", row);
            }
          }
          return true;
        });
    return database;
  }

  /** Writers wait for no disk, so that many are under way. */
  private static Sync hurrying(Sync sync) {
    return new Sync() {
      @Override
      public void await() {}

      @Override
      public void close() {
        sync.close();
      }
    };
  }

  private String url(String name) {
    return "jdbc:h2:file:" + folder.resolve(name) + ";DB_CLOSE_ON_EXIT=FALSE";
  }

  private Connection connect(String name) throws SQLException {
    return DriverManager.getConnection(url(name), "sa", "");
  }

  private void copy() {
    try {
      Files.copy(
          folder.resolve("book.mv.db"),
          folder.resolve("copy.mv.db"),
          StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private int count(String name, String query) {
    try (Connection connection = connect(name);
        ResultSet rows = connection.createStatement().executeQuery(query)) {
      assertThat(rows.next()).isTrue();
      return rows.getInt(1);
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
  }
}
