package halfgram.testkit;

import static java.nio.charset.StandardCharsets.UTF_8;
import static java.nio.file.StandardOpenOption.CREATE;
import static java.nio.file.StandardOpenOption.WRITE;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Where Chromium is and what drives it. Where there is none, root on a Debian gets the package
 * {@code chromium-headless-shell} installed, else {@code chromium}, once and by one process at a
 * time.
 */
final class Chromium {
  private static final String PROGRAM = "HALFGRAM_CHROMIUM";

  /** Chromium without a window to draw: a fifth quicker, and a Debian package of its own. */
  private static final String SHELL = "chromium-headless-shell";

  private static final List<String> NAMES =
      List.of(SHELL, "chromium", "chromium-browser", "google-chrome");
  private static final int NODE_AT_LEAST = 20;
  private static final Pattern NODE_VERSION = Pattern.compile("v(\\d+)\\..*", Pattern.DOTALL);
  private static final String BUNDLE =
      "META-INF/maven/com.microsoft.playwright/driver-bundle/pom.properties";
  private static final Path LOG = Path.of("target", "chromium-install.log");

  private Chromium() {}

  /** The program; {@code HALFGRAM_CHROMIUM} overrides what is on the path. */
  static Path find() {
    String named = System.getenv(PROGRAM);
    if (named != null && !named.isEmpty()) {
      if (!Files.isExecutable(Path.of(named))) {
        throw new IllegalStateException(PROGRAM + "=" + named + " is no program");
      }
      return Path.of(named);
    }
    return installed().orElseGet(Chromium::install);
  }

  /** The environment of Playwright's driver: a Node.js of the machine, else the bundled one. */
  static Map<String, String> driver() {
    String noDownload = "PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD";
    Optional<Path> node = onPath("node").filter(n -> major(n) >= NODE_AT_LEAST);
    if (node.isPresent()) {
      return Map.of(noDownload, "1", "PLAYWRIGHT_NODEJS_PATH", node.get().toString());
    }
    if (Chromium.class.getClassLoader().getResource(BUNDLE) == null) {
      throw new IllegalStateException(
          "The browser tests need Node.js "
              + NODE_AT_LEAST
              + " or newer on the path, or the one that comes with mvn -Pbrowser-driver verify");
    }
    return Map.of(noDownload, "1");
  }

  private static Optional<Path> installed() {
    return NAMES.stream().flatMap(name -> onPath(name).stream()).findFirst();
  }

  private static Optional<Path> onPath(String name) {
    return Arrays.stream(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))
        .filter(folder -> !folder.isEmpty())
        .map(folder -> Path.of(folder, name))
        .filter(file -> Files.isRegularFile(file) && Files.isExecutable(file))
        .findFirst();
  }

  private static int major(Path node) {
    try {
      Process asked = new ProcessBuilder(node.toString(), "--version").start();
      String said = new String(asked.getInputStream().readAllBytes(), UTF_8);
      Matcher version = NODE_VERSION.matcher(said);
      return version.matches() ? Integer.parseInt(version.group(1)) : 0;
    } catch (IOException e) {
      return 0;
    }
  }

  private static synchronized Path install() {
    String wanted =
        "The browser tests need Chromium on the path (Debian: apt-get install chromium) or its"
            + " program named by "
            + PROGRAM;
    if (!isRoot() || onPath("apt-get").isEmpty()) {
      throw new IllegalStateException(wanted);
    }
    Path lock = Path.of(System.getProperty("java.io.tmpdir"), "halfgram-chromium.lock");
    try (FileChannel channel = FileChannel.open(lock, CREATE, WRITE);
        FileLock held = channel.lock()) {
      if (held.isValid() && installed().isEmpty()) {
        System.out.println("Browser for tests: none here, installing Chromium, see " + LOG);
        Files.createDirectories(LOG.getParent());
        run("apt-get", "update", "-q");
        String offered = succeeds("apt-cache", "show", SHELL) ? SHELL : "chromium";
        run("apt-get", "install", "-q", "-y", "--no-install-recommends", offered);
      }
      return installed().orElseThrow(() -> new IllegalStateException(wanted));
    } catch (IOException e) {
      throw new UncheckedIOException(wanted, e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(wanted, e);
    }
  }

  private static boolean isRoot() {
    try {
      return Integer.valueOf(0).equals(Files.getAttribute(Path.of("/proc/self"), "unix:uid"));
    } catch (IOException | UnsupportedOperationException e) {
      return false;
    }
  }

  private static boolean succeeds(String... command) throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    return process.waitFor() == 0;
  }

  private static void run(String... command) throws IOException, InterruptedException {
    ProcessBuilder builder =
        new ProcessBuilder(
                Stream.concat(Stream.of(command), Stream.of("-o", "DPkg::Lock::Timeout=300"))
                    .toList())
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.appendTo(LOG.toFile()));
    builder.environment().put("DEBIAN_FRONTEND", "noninteractive");
    Process process = builder.start();
    process.getOutputStream().close();
    if (!process.waitFor(15, TimeUnit.MINUTES)) {
      process.destroyForcibly();
      throw new IllegalStateException(String.join(" ", command) + " takes too long, see " + LOG);
    }
    if (process.exitValue() != 0) {
      throw new IllegalStateException(String.join(" ", command) + " failed, see " + LOG);
    }
  }
}
