package halfgram;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.testkit.Packed;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The packed server as people run it: its first line, its end, and commands meanwhile. */
class ServeIT {
  private static final Duration AT_MOST = Duration.ofSeconds(90);
  private static final String READY = "Halfgram is ready: ";

  @TempDir Path dir;

  private Packed serve(String... more) {
    List<String> call =
        new java.util.ArrayList<>(List.of("serve", "--port", "0", "--data", data()));
    call.addAll(List.of(more));
    return Packed.with(call.toArray(String[]::new)).jvm("-Xmx256m").start();
  }

  private String data() {
    return dir.resolve("data").toString();
  }

  private static List<String> said(String... call) throws InterruptedException {
    try (Packed run = Packed.with(call).start()) {
      run.exit(AT_MOST);
      return run.output();
    }
  }

  @Test
  void commandsGoThroughTheServerAndSayTheSameOnceItIsKilled() throws Exception {
    // Days beyond the demo's own are planned all the same: this test may run over midnight.
    String today = LocalDate.now(ZoneId.of("Europe/Copenhagen")).toString();
    String[] plan = {"plan", "--date", today, "--json", "--data", data()};
    List<String> through;
    try (Packed server = serve("--demo")) {
      assertThat(server.awaitLine(READY, AT_MOST)).endsWith("/k/TARN/");
      assertThat(server.output().get(0)).contains("demo");
      through = said(plan);
      assertThat(said("export", "--data", data(), dir.resolve("book.json").toString())).hasSize(1);
      server.kill();
    }

    assertThat(Files.exists(dir.resolve("data/server.json"))).isTrue();
    assertThat(said(plan)).hasSizeGreaterThan(20).isEqualTo(through);
    assertThat(dir.resolve("book.json")).content().contains("\"harvest-dinner\"");
  }

  @Test
  void theDataFolderIsTheOwnersAndTheNoteGoesWithTheServer() throws Exception {
    try (Packed server = serve()) {
      server.awaitLine(READY, AT_MOST);
      assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(Path.of(data()))))
          .isEqualTo("rwx------");
      assertThat(server.stop(AT_MOST)).isEqualTo(143);
      assertThat(server.errors()).isEmpty();
    }
    assertThat(dir.resolve("data/server.json")).doesNotExist();
  }

  @Test
  void whoeverListensToOthersWithoutTlsIsTold() throws Exception {
    try (Packed server = serve("--listen", "0.0.0.0")) {
      server.awaitLine(READY, AT_MOST);
      server.kill();
      assertThat(server.errors())
          .anyMatch(line -> line.contains("without TLS"))
          .noneMatch(line -> line.contains("no sign-in"));
    }
  }

  @Test
  void aPortThatIsTakenIsSaidInOneLine() throws Exception {
    try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
        Packed server = serve("--port", "" + taken.getLocalPort())) {
      assertThat(server.exit(AT_MOST)).isEqualTo(2);
      assertThat(server.errors()).hasSize(1).first().asString().contains("is taken");
    }
  }

  @Test
  void withAKeyStoreItServesHttpsAndCommandsStillGetThrough() throws Exception {
    Path store = keyStore();
    Packed.Call call =
        Packed.with("serve", "--demo", "--port", "0", "--data", data(), "--tls", store.toString());
    try (Packed server = call.env("HALFGRAM_TLS_PASSWORD", "for-a-test").start()) {
      assertThat(server.awaitLine(READY, AT_MOST)).startsWith(READY + "https://127.0.0.1:");
      assertThat(said("export", "--table", "pars", "--data", data(), "-"))
          .first()
          .asString()
          .startsWith("service,component,output,mon");
    }
    try (Packed wrong = call.env("HALFGRAM_TLS_PASSWORD", "not-this").start()) {
      assertThat(wrong.exit(AT_MOST)).isEqualTo(2);
      assertThat(wrong.errors())
          .containsExactly(
              store + ": the password in HALFGRAM_TLS_PASSWORD does not open this key store");
    }
  }

  private Path keyStore() throws IOException, InterruptedException {
    Path store = dir.resolve("store.p12");
    Process keytool =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "keytool").toString(),
                "-genkeypair",
                "-storetype",
                "PKCS12",
                "-keystore",
                store.toString(),
                "-storepass",
                "for-a-test",
                "-alias",
                "halfgram",
                "-keyalg",
                "EC",
                "-dname",
                "CN=localhost")
            .redirectErrorStream(true)
            .redirectOutput(dir.resolve("keytool.txt").toFile())
            .start();
    assertThat(keytool.waitFor()).isZero();
    return store;
  }
}
