package halfgram.cli;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.Settings;
import halfgram.Wiring;
import halfgram.book.DemoBook;
import halfgram.pages.door.Opening;
import halfgram.testkit.KnownRotas;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A server whose database closes itself, as H2 does on a full disk. */
class ServingTest {
  private static final HttpClient HTTP = HttpClient.newHttpClient();

  private final ByteArrayOutputStream said = new ByteArrayOutputStream();

  @TempDir Path data;

  @Test
  void onceThereIsRoomItGoesOnByItselfWhereItWasWithAllThatWasKept() throws Exception {
    Cli cli = new Cli(System.out, new PrintStream(said)).with(KnownRotas::shortly);
    Settings settings = Settings.fromEnvironment().withData(data);
    Arguments none = new Arguments(List.of("--port", "0"), Set.of("--port"), Set.of());
    Listening listening = Listening.of(none, settings);
    Wiring wiring = Wiring.open(settings, Clock.systemUTC(), cli.placing());
    wiring.importBook().importBook(Files.readAllBytes(DemoBook.FILE), "test");
    Opening opening = new Opening(true, "first");
    try (Serving serving = new Serving(cli, wiring, listening, "secret", opening)) {
      int port = serving.start();
      assertThat(status(port, "/sign-in")).isEqualTo(200);

      serving.look();
      assertThat(said()).isEmpty();
      giveUp();
      for (int i = 0; i < 3; i++) {
        assertThat(status(port, "/sign-in")).as("until it is opened anew").isEqualTo(500);
      }
      serving.look();

      assertThat(said()).contains("the database has closed itself", "open again");
      assertThat(status(port, "/sign-in")).isEqualTo(200);
      assertThat(Running.find(data)).isPresent();
      assertThat(CliTest.run("export", "--data", data.toString(), "-").out())
          .contains("\"harvest-dinner\"");
    }
    assertThat(Running.find(data)).isEmpty();
  }

  private String said() {
    return said.toString(StandardCharsets.UTF_8);
  }

  private static int status(int port, String path) throws IOException, InterruptedException {
    URI address = URI.create("http://127.0.0.1:" + port + path);
    return HTTP.send(HttpRequest.newBuilder(address).build(), BodyHandlers.discarding())
        .statusCode();
  }

  /** What H2 does itself when it cannot write: it closes at once and writes nothing more. */
  private void giveUp() throws SQLException {
    String url =
        "jdbc:h2:file:" + data.toAbsolutePath().resolve("halfgram") + ";DB_CLOSE_ON_EXIT=FALSE";
    try (Connection connection = DriverManager.getConnection(url, "sa", "");
        Statement statement = connection.createStatement()) {
      statement.execute("SHUTDOWN IMMEDIATELY");
    }
  }
}
