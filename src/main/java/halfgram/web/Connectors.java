package halfgram.web;

import io.javalin.config.JavalinConfig;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.SecureRequestCustomizer;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.util.ssl.SslContextFactory;

/**
 * Where a server listens when it has a certificate: for people by TLS, for this machine plainly.
 */
final class Connectors {
  private final Server.Options options;
  private final List<ServerConnector> all = new ArrayList<>();

  Connectors(Server.Options options) {
    this.options = options;
  }

  /** The port that people use; empty without TLS. */
  Optional<Integer> port() {
    return all.isEmpty() ? Optional.empty() : Optional.of(all.get(0).getLocalPort());
  }

  /** The port of this machine that takes plain requests; empty without TLS. */
  Optional<Integer> localPort() {
    return all.isEmpty() ? Optional.empty() : Optional.of(all.get(1).getLocalPort());
  }

  void add(JavalinConfig config, Path store) {
    config.jetty.addConnector(
        (server, http) -> {
          SslContextFactory.Server factory = new SslContextFactory.Server();
          factory.setKeyStorePath(store.toUri().toString());
          factory.setKeyStoreType("PKCS12");
          factory.setKeyStorePassword(options.tlsPassword().orElse(""));
          http.addCustomizer(new SecureRequestCustomizer(false));
          ServerConnector connector =
              new ServerConnector(server, factory, new HttpConnectionFactory(http));
          connector.setHost(options.host());
          connector.setPort(options.port());
          all.add(connector);
          return connector;
        });
    // Commands of this machine get through without having to trust the certificate.
    config.jetty.addConnector(
        (server, http) -> {
          ServerConnector connector = new ServerConnector(server);
          connector.setHost("127.0.0.1");
          all.add(connector);
          return connector;
        });
  }
}
