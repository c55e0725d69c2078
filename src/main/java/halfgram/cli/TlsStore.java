package halfgram.cli;

import halfgram.measure.Message;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.UnrecoverableKeyException;
import java.util.Collections;
import java.util.Optional;

/**
 * The key store for TLS, tried before the server starts so that a message can say what is wrong.
 */
final class TlsStore {
  private TlsStore() {}

  static Optional<Message> findProblem(Path file, Optional<String> password) {
    if (!Files.isRegularFile(file) || !Files.isReadable(file)) {
      return Optional.of(Message.of("serve.tls-no-file", file));
    }
    char[] secret = password.orElse("").toCharArray();
    try (InputStream stream = Files.newInputStream(file)) {
      KeyStore store = KeyStore.getInstance("PKCS12");
      store.load(stream, secret);
      for (String alias : Collections.list(store.aliases())) {
        if (store.isKeyEntry(alias)) {
          store.getKey(alias, secret);
          return Optional.empty();
        }
      }
      return Optional.of(Message.of("serve.tls-no-key", file));
    } catch (IOException | GeneralSecurityException e) {
      boolean locked =
          e instanceof UnrecoverableKeyException
              || e.getCause() instanceof UnrecoverableKeyException
              || String.valueOf(e.getMessage()).contains("password");
      String why = password.isEmpty() ? "serve.tls-unset" : "serve.tls-password";
      return Optional.of(Message.of(locked ? why : "serve.tls-unreadable", file));
    }
  }
}
