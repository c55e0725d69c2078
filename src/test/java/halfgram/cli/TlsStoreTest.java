package halfgram.cli;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.measure.Message;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyStore;
import java.util.Optional;
import javax.crypto.spec.SecretKeySpec;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is wrong with a key store for TLS is said before the server starts. */
class TlsStoreTest {
  private static final char[] PASSWORD = "for-a-test".toCharArray();

  @TempDir private Path dir;
  private Path file;

  @BeforeEach
  void write() throws Exception {
    file = dir.resolve("store.p12");
    KeyStore store = KeyStore.getInstance("PKCS12");
    store.load(null, null);
    store.setEntry(
        "one",
        new KeyStore.SecretKeyEntry(new SecretKeySpec(new byte[16], "AES")),
        new KeyStore.PasswordProtection(PASSWORD));
    try (OutputStream out = Files.newOutputStream(file)) {
      store.store(out, PASSWORD);
    }
  }

  private String problem(Path of, String... password) {
    return TlsStore.findProblem(of, Optional.of(password).filter(p -> p.length > 0).map(p -> p[0]))
        .map(Message::key)
        .orElse("");
  }

  @Test
  void aPasswordThatIsNotSetIsToldFromOneThatIsWrong() throws Exception {
    assertThat(problem(file)).isEqualTo("serve.tls-unset");
    assertThat(problem(file, "not-this")).isEqualTo("serve.tls-password");
    assertThat(problem(file, "for-a-test")).isEmpty();
    assertThat(problem(dir.resolve("none.p12"), "for-a-test")).isEqualTo("serve.tls-no-file");
    Path other = Files.writeString(dir.resolve("book.json"), "{}");
    assertThat(problem(other, "for-a-test")).isEqualTo("serve.tls-unreadable");
  }
}
