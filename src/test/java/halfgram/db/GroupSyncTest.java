package halfgram.db;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.testkit.SlowDisk;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import org.h2.engine.SessionLocal;
import org.h2.jdbc.JdbcConnection;
import org.h2.jdbcx.JdbcDataSource;
import org.h2.mvstore.MVStore;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What H2's own writer has taken up counts as on disk only when it is. */
class GroupSyncTest {
  @TempDir Path folder;

  @AfterEach
  void quickDisk() {
    SlowDisk.setSlow(false);
  }

  @Test
  void aRoundWaitsForWhatTheWriterInTheBackgroundHasInHand() throws SQLException {
    SlowDisk.setSlow(false);
    JdbcDataSource source = new JdbcDataSource();
    source.setUrl(
        "jdbc:h2:slow:" + folder.resolve("book") + ";DB_CLOSE_ON_EXIT=FALSE;WRITE_DELAY=10");
    try (Connection connection = source.getConnection();
        Statement statement = connection.createStatement();
        GroupSync sync = new GroupSync(source)) {
      statement.execute("create table tick (number int primary key)");
      sync.await();
      for (int number = 1; number <= 5; number++) {
        SlowDisk.setSlow(true);
        statement.execute("insert into tick values (" + number + ")");
        awaitTaken(store(connection));
        sync.await();
        assertThat(SlowDisk.isWriting()).as("the disk writes after tick " + number).isFalse();
        SlowDisk.setSlow(false);
      }
    }
  }

  @Test
  void whatWasCommittedIsReadAgain() throws SQLException {
    String url = "jdbc:h2:file:" + folder.resolve("book") + ";DB_CLOSE_ON_EXIT=FALSE";
    JdbcDataSource source = new JdbcDataSource();
    source.setUrl(url);
    try (Connection connection = source.getConnection();
        Statement statement = connection.createStatement();
        GroupSync sync = new GroupSync(source)) {
      statement.execute("create table tick (number int primary key)");
      statement.execute("insert into tick values (1)");
      sync.await();
      store(connection).closeImmediately();
    }
    try (Connection again = DriverManager.getConnection(url);
        var rows = again.createStatement().executeQuery("select count(*) from tick")) {
      assertThat(rows.next()).isTrue();
      assertThat(rows.getInt(1)).isEqualTo(1);
    }
  }

  @Test
  void afterARoundTheHeaderOfTheFileNamesTheNewestChunk() throws Exception {
    JdbcDataSource source = new JdbcDataSource();
    source.setUrl(
        "jdbc:h2:file:"
            + folder.resolve("book")
            + ";DB_CLOSE_ON_EXIT=FALSE;WRITE_DELAY=0;AUTO_COMPACT_FILL_RATE=0");
    try (Connection connection = source.getConnection();
        Statement statement = connection.createStatement();
        GroupSync sync = new GroupSync(source)) {
      statement.execute("create table tick (number int primary key)");
      for (int number = 1; number <= 5; number++) {
        statement.execute("insert into tick values (" + number + ")");
        sync.await();
        assertThat(header(folder.resolve("book.mv.db")))
            .as("after tick " + number)
            .contains(",version:" + Long.toHexString(store(connection).getCurrentVersion()) + ",");
      }
    }
  }

  /** The first line of a file of H2. */
  private static String header(Path file) throws IOException {
    byte[] start = new byte[512];
    try (InputStream in = Files.newInputStream(file)) {
      int read = in.readNBytes(start, 0, start.length);
      return new String(start, 0, read, StandardCharsets.ISO_8859_1).lines().findFirst().get();
    }
  }

  /** Until the writer in the background has made everything its own. */
  private static void awaitTaken(MVStore store) {
    while (store.hasUnsavedChanges()) {
      Thread.onSpinWait();
    }
  }

  private static MVStore store(Connection connection) throws SQLException {
    return ((SessionLocal) connection.unwrap(JdbcConnection.class).getSession())
        .getDatabase()
        .getStore()
        .getMvStore();
  }
}
