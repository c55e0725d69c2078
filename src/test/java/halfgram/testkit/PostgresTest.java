package halfgram.testkit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import halfgram.testkit.Postgres.Jdbc;
import halfgram.testkit.Postgres.Source;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import org.junit.jupiter.api.Test;

class PostgresTest {
  @Test
  void twoDatabasesDoNotSeeEachOther() throws SQLException {
    Jdbc one = Postgres.create();
    Jdbc other = Postgres.create();

    try (Connection ones = one.connect();
        Connection others = other.connect()) {
      execute(ones, "create table pan (name text)");
      execute(ones, "insert into pan values ('sautoir')");

      assertThat(text(ones, "select name from pan")).isEqualTo("sautoir");
      assertThat(text(others, "select to_regclass('pan')::text")).isNull();
    }
  }

  @Test
  void itIsAPostgresThatSpeaksUtf8() throws SQLException {
    try (Connection connection = Postgres.create().connect()) {
      assertThat(text(connection, "select version()")).startsWith("PostgreSQL ");
      assertThat(connection.getMetaData().getDatabaseMajorVersion()).isGreaterThanOrEqualTo(15);
      assertThat(text(connection, "show server_encoding")).isEqualTo("UTF8");
      assertThat(text(connection, "select upper('crème brûlée 30 °C')")).contains("°C");
    }
  }

  @Test
  void anAddressComesFirstThenDockerThenTheBinaries() {
    Map<String, String> address = Map.of("TEST_PG_URL", "jdbc:postgresql://db.example/test");

    assertThat(Postgres.sources(address, true)).containsExactly(Source.URL);
    assertThat(Postgres.sources(Map.of(), true)).containsExactly(Source.DOCKER, Source.EMBEDDED);
    assertThat(Postgres.sources(Map.of("DOCKER_HOST", "tcp://docker.example:2375"), false))
        .containsExactly(Source.DOCKER, Source.EMBEDDED);
    assertThat(Postgres.sources(Map.of(), false)).containsExactly(Source.EMBEDDED);
  }

  @Test
  void whatIsAskedForStandsAlone() {
    assertThat(Postgres.sources(Map.of("TEST_PG", "docker"), false)).containsExactly(Source.DOCKER);
    assertThat(Postgres.sources(Map.of("TEST_PG", "embedded"), true))
        .containsExactly(Source.EMBEDDED);
    assertThatThrownBy(() -> Postgres.sources(Map.of("TEST_PG", "url"), true))
        .hasMessageContaining("TEST_PG_URL");
    assertThatThrownBy(() -> Postgres.sources(Map.of("TEST_PG", "sqlite"), true))
        .hasMessageContaining("TEST_PG=sqlite");
  }

  private static void execute(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  private static String text(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(sql)) {
      row.next();
      return row.getString(1);
    }
  }
}
