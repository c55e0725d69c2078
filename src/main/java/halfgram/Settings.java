package halfgram;

import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;

/**
 * Every setting that comes from the environment, with its default; nothing else reads it. A flag of
 * a command goes before it.
 *
 * @param databaseUrl HALFGRAM_DB_URL, a JDBC address of H2 or PostgreSQL; empty: H2 in the data
 *     folder
 * @param databaseUser HALFGRAM_DB_USER
 * @param databasePassword HALFGRAM_DB_PASSWORD
 * @param listen HALFGRAM_LISTEN, the address to listen on; empty: loopback
 * @param port HALFGRAM_PORT, as typed
 * @param tls HALFGRAM_TLS, a PKCS 12 key store
 * @param tlsPassword HALFGRAM_TLS_PASSWORD, of that key store
 * @param publicUrl HALFGRAM_URL, where people find the server when it stands behind a proxy
 * @param data HALFGRAM_DATA, the data folder; a folder of the user's home by default
 */
public record Settings(
    Optional<String> databaseUrl,
    Optional<String> databaseUser,
    Optional<String> databasePassword,
    Optional<String> listen,
    Optional<String> port,
    Optional<String> tls,
    Optional<String> tlsPassword,
    Optional<String> publicUrl,
    Path data) {
  private static final String EMBEDDED = "halfgram";

  public static Settings fromEnvironment() {
    return of(System.getenv());
  }

  static Settings of(Map<String, String> environment) {
    return new Settings(
        find(environment, "HALFGRAM_DB_URL"),
        find(environment, "HALFGRAM_DB_USER"),
        find(environment, "HALFGRAM_DB_PASSWORD"),
        find(environment, "HALFGRAM_LISTEN"),
        find(environment, "HALFGRAM_PORT"),
        find(environment, "HALFGRAM_TLS"),
        find(environment, "HALFGRAM_TLS_PASSWORD"),
        find(environment, "HALFGRAM_URL"),
        find(environment, "HALFGRAM_DATA")
            .map(Path::of)
            .orElse(Path.of(System.getProperty("user.home", "."), ".halfgram")));
  }

  private static Optional<String> find(Map<String, String> environment, String name) {
    return Optional.ofNullable(environment.get(name)).filter(value -> !value.isBlank());
  }

  /**
   * Where the database is. H2 in the data folder is closed by us and nobody else, so that the last
   * commit is written.
   */
  String address() {
    // A tick alone has more statements than the eight that H2 keeps parsed by default.
    return databaseUrl.orElse(
        "jdbc:h2:file:"
            + data.toAbsolutePath().resolve(EMBEDDED)
            + ";DB_CLOSE_ON_EXIT=FALSE;QUERY_CACHE_SIZE=64");
  }

  /** The file of H2 in the data folder. */
  public Path databaseFile() {
    return data.resolve(EMBEDDED + ".mv.db");
  }

  /** These settings with another data folder. */
  public Settings withData(Path other) {
    return new Settings(
        databaseUrl,
        databaseUser,
        databasePassword,
        listen,
        port,
        tls,
        tlsPassword,
        publicUrl,
        other);
  }
}
