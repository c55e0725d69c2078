package halfgram.cli;

import halfgram.Settings;
import halfgram.measure.Message;
import halfgram.web.Server;
import java.net.InetAddress;
import java.net.InterfaceAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.net.URI;
import java.net.UnknownHostException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;

/**
 * Where the server listens and under which names people find it.
 *
 * @param host as given
 * @param at the address it stands for
 * @param port 0 for any that is free
 * @param publicUrl where people find it, when it stands behind something
 */
record Listening(
    String host, InetAddress at, int port, Optional<Path> tls, Optional<URI> publicUrl) {
  private static final int PORT = 8088;
  private static final String LOOPBACK = "127.0.0.1";

  /** A flag goes before the environment; what is wrong with either is told by its name. */
  static Listening of(Arguments arguments, Settings settings) {
    Optional<Integer> flag = arguments.find("--port", Listening::port, "accept.port");
    Optional<Integer> port = flag;
    if (!arguments.has("--port")) {
      port = environment(arguments, "HALFGRAM_PORT", settings.port(), "accept.port");
    }
    String host = arguments.find("--listen").or(settings::listen).orElse(LOOPBACK);
    Optional<InetAddress> at = resolved(host);
    if (at.isEmpty()) {
      if (arguments.has("--listen")) {
        arguments.problem("usage.bad", "--listen", host, Message.of("accept.listen"));
      } else {
        arguments.problem("usage.setting", "HALFGRAM_LISTEN", host, Message.of("accept.listen"));
      }
    }
    Optional<URI> url = settings.publicUrl().flatMap(Listening::url);
    if (settings.publicUrl().isPresent() && url.isEmpty()) {
      arguments.problem(
          "usage.setting", "HALFGRAM_URL", settings.publicUrl().get(), Message.of("accept.url"));
    }
    Optional<Path> tls = arguments.find("--tls").or(settings::tls).map(Path::of);
    return new Listening(
        host, at.orElse(InetAddress.getLoopbackAddress()), port.orElse(PORT), tls, url);
  }

  private static Optional<Integer> environment(
      Arguments arguments, String name, Optional<String> value, String accepted) {
    Optional<Integer> port = value.flatMap(Listening::port);
    if (value.isPresent() && port.isEmpty()) {
      arguments.problem("usage.setting", name, value.get(), Message.of(accepted));
    }
    return port;
  }

  static Optional<Integer> port(String text) {
    return text.matches("\\d{1,5}") && Integer.parseInt(text) <= 65_535
        ? Optional.of(Integer.parseInt(text))
        : Optional.empty();
  }

  private static Optional<InetAddress> resolved(String host) {
    try {
      return Optional.of(InetAddress.getByName(host));
    } catch (UnknownHostException e) {
      return Optional.empty();
    }
  }

  /** An address without path, because pages link from the root. */
  private static Optional<URI> url(String text) {
    try {
      URI url = new URI(text.endsWith("/") ? text.substring(0, text.length() - 1) : text);
      boolean isWeb = "https".equals(url.getScheme()) || "http".equals(url.getScheme());
      return isWeb && url.getHost() != null && url.getRawPath().isEmpty() && url.getQuery() == null
          ? Optional.of(url)
          : Optional.empty();
    } catch (java.net.URISyntaxException e) {
      return Optional.empty();
    }
  }

  boolean isLoopback() {
    return at.isLoopbackAddress();
  }

  /** Whether people reach it by https, its own or that of what it stands behind. */
  boolean isSecure() {
    return tls.isPresent() || publicUrl.filter(url -> url.getScheme().equals("https")).isPresent();
  }

  /**
   * How the server listens.
   *
   * @param bound the port that it had before, where it begins anew
   */
  Server.Options options(Optional<String> password, OptionalInt bound) {
    return new Server.Options(
        at.getHostAddress(),
        bound.orElse(port),
        tls,
        password,
        isSecure(),
        publicUrl.isPresent() && tls.isEmpty(),
        Optional.of(names()));
  }

  /** Where people find it. */
  String address(int bound) {
    if (publicUrl.isPresent()) {
      return publicUrl.get().toString();
    }
    String scheme = tls.isPresent() ? "https" : "http";
    String named = at.isAnyLocalAddress() ? reachable() : bracketed(host);
    return scheme + "://" + named + ":" + bound;
  }

  /** Where a command of this machine finds it. */
  String own(int localPort) {
    boolean here = at.isAnyLocalAddress() || tls.isPresent();
    return "http://" + (here ? LOOPBACK : bracketed(at.getHostAddress())) + ":" + localPort;
  }

  /** The names it answers to, so that no other site's name can be made to point here. */
  private Set<String> names() {
    Set<String> names = new TreeSet<>(Set.of("localhost", LOOPBACK, "[::1]"));
    names.add(bracketed(host).toLowerCase(Locale.ROOT));
    names.add(bracketed(at.getHostAddress()));
    publicUrl.ifPresent(url -> names.add(url.getHost().toLowerCase(Locale.ROOT)));
    if (!isLoopback()) {
      addresses().forEach(address -> names.add(bracketed(address.getHostAddress())));
      try {
        String name = InetAddress.getLocalHost().getHostName().toLowerCase(Locale.ROOT);
        names.add(name);
        names.add(name.replaceAll("\\..*", "") + ".local");
      } catch (UnknownHostException e) {
        // A machine without a name is found by its addresses.
        return names;
      }
    }
    return names;
  }

  private static String reachable() {
    return addresses().stream()
        .filter(address -> address instanceof java.net.Inet4Address && !address.isLoopbackAddress())
        .findFirst()
        .map(InetAddress::getHostAddress)
        .orElse("localhost");
  }

  private static List<InetAddress> addresses() {
    List<InetAddress> all = new ArrayList<>();
    try {
      for (NetworkInterface one : NetworkInterface.networkInterfaces().toList()) {
        one.getInterfaceAddresses().stream().map(InterfaceAddress::getAddress).forEach(all::add);
      }
    } catch (SocketException e) {
      return all;
    }
    return all;
  }

  /** An IPv6 address as it stands in a URL, without the name of the interface. */
  private static String bracketed(String host) {
    String bare = host.replaceAll("%.*", "");
    return bare.contains(":") && !bare.startsWith("[") ? "[" + bare + "]" : bare;
  }
}
