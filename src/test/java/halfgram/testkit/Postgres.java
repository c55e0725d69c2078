package halfgram.testkit;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.postgresql.PostgreSQLContainer;

/**
 * One PostgreSQL for all tests of a JVM, started when the first asks and stopped at exit: the one
 * that {@code TEST_PG_URL} names (with {@code TEST_PG_USER} and {@code TEST_PG_PASSWORD}), else one
 * in Docker, else one from the binaries that Maven fetches. {@code TEST_PG=url|docker|embedded}
 * asks for one of them and takes no other.
 */
public final class Postgres {
  /** How to reach one database. */
  public record Jdbc(String url, String user, String password) {
    public Connection connect() throws SQLException {
      return DriverManager.getConnection(url, user, password);
    }
  }

  /** Where a server comes from. */
  enum Source {
    URL,
    DOCKER,
    EMBEDDED
  }

  private record Server(Source source, Jdbc admin, AutoCloseable stop) {}

  private static final String CHOICE = "TEST_PG";
  private static final String URL = "TEST_PG_URL";
  private static final String USER = "TEST_PG_USER";
  private static final String PASSWORD = "TEST_PG_PASSWORD";
  private static final String DOCKER_HOST = "DOCKER_HOST";
  private static final Path DOCKER_SOCKET = Path.of("/var/run/docker.sock");
  private static final String IMAGE = "postgres:17";
  private static final Path LOG = Path.of("target", "postgres-of-tests.log");

  private static final Pattern PARTS =
      Pattern.compile("(jdbc:postgresql:(?://[^/?]*/)?)([^/?]*)(\\?.*)?");

  private static final ConcurrentLinkedQueue<String> CREATED = new ConcurrentLinkedQueue<>();

  /** Their progress is of no interest; the server itself writes to {@link #LOG}. */
  private static final List<Logger> QUIET =
      Stream.of("io.zonky.test", "org.testcontainers", "tc").map(Logger::getLogger).toList();

  private static @Nullable Server server;
  private static @Nullable String failure;

  private Postgres() {}

  /** A new database with nothing in it. */
  public static Jdbc create() {
    return create("template0 encoding 'UTF8'");
  }

  /** A new database with what another holds, to which nobody may be connected. */
  static Jdbc copyOf(Jdbc other) {
    Matcher parts = PARTS.matcher(other.url());
    if (!parts.matches()) {
      throw new IllegalArgumentException(other.url());
    }
    return create(parts.group(2));
  }

  private static Jdbc create(String template) {
    Server on = server();
    String name = "halfgram_" + UUID.randomUUID().toString().replace("-", "");
    execute(on.admin(), "create database " + name + " template " + template);
    CREATED.add(name);
    return new Jdbc(withDatabase(on.admin().url(), name), on.admin().user(), on.admin().password());
  }

  private static synchronized Server server() {
    if (failure != null) {
      throw new IllegalStateException("no PostgreSQL, as said before: " + failure);
    }
    if (server == null) {
      try {
        server = start(System.getenv());
      } catch (RuntimeException e) {
        failure = String.valueOf(e.getMessage());
        throw e;
      }
      Runtime.getRuntime().addShutdownHook(new Thread(Postgres::stop, "stop-postgres"));
    }
    return server;
  }

  private static Server start(Map<String, String> env) {
    QUIET.forEach(logger -> logger.setLevel(Level.WARNING));
    List<Source> sources = sources(env, Files.exists(DOCKER_SOCKET));
    for (Source source : sources.subList(0, sources.size() - 1)) {
      try {
        return start(source, env);
      } catch (RuntimeException e) {
        System.out.println("PostgreSQL for tests: not by " + source + ", " + e.getMessage());
      }
    }
    return start(sources.get(sources.size() - 1), env);
  }

  /** What to try, in order; a source that was asked for stands alone. */
  static List<Source> sources(Map<String, String> env, boolean dockerSocket) {
    String choice = env.getOrDefault(CHOICE, "");
    if (!choice.isEmpty()) {
      Source asked =
          switch (choice) {
            case "url" -> Source.URL;
            case "docker" -> Source.DOCKER;
            case "embedded" -> Source.EMBEDDED;
            default ->
                throw new IllegalArgumentException(
                    CHOICE + "=" + choice + ": say url, docker or embedded");
          };
      if (asked == Source.URL && env.getOrDefault(URL, "").isEmpty()) {
        throw new IllegalArgumentException(CHOICE + "=url needs " + URL);
      }
      return List.of(asked);
    }
    if (!env.getOrDefault(URL, "").isEmpty()) {
      return List.of(Source.URL);
    }
    boolean docker = dockerSocket || !env.getOrDefault(DOCKER_HOST, "").isEmpty();
    return docker ? List.of(Source.DOCKER, Source.EMBEDDED) : List.of(Source.EMBEDDED);
  }

  private static Server start(Source source, Map<String, String> env) {
    long begun = System.nanoTime();
    Server started =
        switch (source) {
          case URL -> named(env);
          case DOCKER -> inDocker();
          case EMBEDDED -> fromBinaries();
        };
    System.out.printf(
        Locale.ROOT,
        "PostgreSQL for tests: %s, version %s, after %.1f s%n",
        source == Source.URL ? started.admin().url() : source.toString(),
        versionOf(started.admin()),
        (System.nanoTime() - begun) / 1e9);
    return started;
  }

  private static Server named(Map<String, String> env) {
    Jdbc admin =
        new Jdbc(
            env.getOrDefault(URL, ""),
            env.getOrDefault(USER, "postgres"),
            env.getOrDefault(PASSWORD, ""));
    return new Server(Source.URL, admin, () -> CREATED.forEach(name -> drop(admin, name)));
  }

  private static void drop(Jdbc admin, String name) {
    execute(admin, "drop database if exists " + name + " with (force)");
  }

  private static Server inDocker() {
    if (!DockerClientFactory.instance().isDockerAvailable()) {
      throw new IllegalStateException("Docker does not answer");
    }
    PostgreSQLContainer container = new PostgreSQLContainer(IMAGE);
    container.start();
    Jdbc admin = new Jdbc(container.getJdbcUrl(), container.getUsername(), container.getPassword());
    return new Server(Source.DOCKER, admin, container::stop);
  }

  /** As root the library starts the server as somebody else, in a user namespace of its own. */
  private static Server fromBinaries() {
    try {
      Files.createDirectories(LOG.getParent());
      ProcessBuilder.Redirect log = ProcessBuilder.Redirect.appendTo(LOG.toFile());
      EmbeddedPostgres embedded =
          EmbeddedPostgres.builder()
              .setServerConfig("fsync", "off")
              .setServerConfig("full_page_writes", "off")
              .setRegisterShutdownHook(false)
              .setOutputRedirector(log)
              .setErrorRedirector(log)
              .start();
      String url = "jdbc:postgresql://localhost:" + embedded.getPort() + "/postgres";
      return new Server(Source.EMBEDDED, new Jdbc(url, "postgres", ""), embedded);
    } catch (IOException e) {
      throw new UncheckedIOException(
          "PostgreSQL's binaries do not start, see " + LOG + ": " + e.getMessage(), e);
    }
  }

  private static void stop() {
    try {
      server().stop().close();
    } catch (Exception e) {
      System.out.println("PostgreSQL for tests: not stopped cleanly, " + e);
    }
  }

  private static String withDatabase(String url, String name) {
    Matcher parts = PARTS.matcher(url);
    if (!parts.matches()) {
      throw new IllegalArgumentException(URL + " is no address of a PostgreSQL: " + url);
    }
    return parts.group(1) + name + (parts.group(3) == null ? "" : parts.group(3));
  }

  private static String versionOf(Jdbc database) {
    try (Connection connection = database.connect();
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("show server_version")) {
      row.next();
      return row.getString(1);
    } catch (SQLException e) {
      throw new IllegalStateException(database.url() + ": " + e.getMessage(), e);
    }
  }

  private static void execute(Jdbc database, String sql) {
    try (Connection connection = database.connect();
        Statement statement = connection.createStatement()) {
      statement.execute(sql);
    } catch (SQLException e) {
      throw new IllegalStateException(sql + ": " + e.getMessage(), e);
    }
  }
}
