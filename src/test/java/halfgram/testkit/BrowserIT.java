package halfgram.testkit;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.microsoft.playwright.Page;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The browser on pages that allow nothing but what comes from their own server. */
@Timeout(120)
class BrowserIT {
  private static final String PAGE =
      """
      <!doctype html><html lang="en"><head><title>Pass</title>
      <meta name="viewport" content="width=device-width">
      <link rel="icon" href="data:,"><link rel="stylesheet" href="/tone.css">
      <script src="/say.js" defer></script></head>
      <body><main><h1>Pass</h1><p id="said">plain</p>%s</main></body></html>
      """;
  private static final Map<String, String> FILES =
      Map.of(
          "/", PAGE.formatted(""),
          "/planted.html", PAGE.formatted("<img src=\"/dot.svg\">"),
          "/broken.html",
              PAGE.formatted(
                  """
                  <script src="/throws.js"></script><img alt="" src="/none.png">
                  <script>document.title = "inline"</script>
                  """),
          "/say.js", "document.getElementById('said').textContent = navigator.language",
          "/throws.js", "console.error('burnt'); throw new Error('boiled over')",
          "/tone.css",
              """
              body { background: #fff; color: #000; }
              @media (prefers-color-scheme: dark) { body { background: #000; color: #fff; } }
              """,
          "/dot.svg", "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"9\" height=\"9\"></svg>");
  private static final Map<String, String> TYPES =
      Map.of("js", "text/javascript", "css", "text/css", "svg", "image/svg+xml");

  private final HttpServer server = serve();

  private static HttpServer serve() {
    try {
      return HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  @BeforeEach
  void start() {
    server.createContext(
        "/",
        exchange -> {
          String path = exchange.getRequestURI().getPath();
          String type = TYPES.getOrDefault(path.replaceFirst(".*\\.", ""), "text/html");
          exchange.getResponseHeaders().set("Content-Type", type + "; charset=utf-8");
          exchange
              .getResponseHeaders()
              .set("Content-Security-Policy", "default-src 'self'; img-src 'self' data:");
          byte[] body = FILES.getOrDefault(path, "none").getBytes(UTF_8);
          exchange.sendResponseHeaders(FILES.containsKey(path) ? 200 : 404, body.length);
          exchange.getResponseBody().write(body);
          exchange.close();
        });
    server.start();
  }

  @AfterEach
  void stop() {
    server.stop(0);
  }

  @Test
  void aPageOpensAndNothingIsWrongWithIt() throws IOException {
    try (Viewer viewer = Browser.open(Device.desk().speaking("ca"))) {
      Page page = viewer.open(url("/"));

      assertThat(page.title()).isEqualTo("Pass");
      assertThat(page.textContent("#said")).isEqualTo("ca");
      assertThat(viewer.troubles()).isEmpty();
      assertThat(viewer.axe()).isEmpty();
      assertThat(viewer.troubles()).as("axe leaves no trace").isEmpty();
      Path screen = viewer.screenshot("testkit-browser");
      assertThat(screen).isEqualTo(Path.of("target/screens/testkit-browser.png"));
      assertThat(Files.size(screen)).isGreaterThan(1000);
    }
  }

  @Test
  void axeFindsThePictureWithoutWords() {
    try (Viewer viewer = Browser.open(Device.tablet())) {
      viewer.open(url("/planted.html"));

      assertThat(viewer.axe())
          .singleElement()
          .satisfies(
              violation -> {
                assertThat(violation.rule()).isEqualTo("image-alt");
                assertThat(violation.impact()).isEqualTo("critical");
                assertThat(violation.target()).contains("img");
                assertThat(violation.html()).isEqualTo("<img src=\"/dot.svg\">");
                assertThat(violation).asString().startsWith("image-alt (critical) at img: <img");
              });
    }
  }

  @Test
  void whatTheBrowserComplainsOfIsNoted() {
    try (Viewer viewer = Browser.open(Device.desk())) {
      viewer.open(url("/broken.html"));
      server.stop(0);
      viewer.page().evaluate("fetch('/gone').catch(() => 0)");

      List<String> troubles = viewer.troubles();
      assertThat(troubles).anyMatch(t -> t.startsWith("console: burnt"));
      assertThat(troubles).anyMatch(t -> t.startsWith("uncaught: ") && t.contains("boiled over"));
      assertThat(troubles).anyMatch(t -> t.contains("404") && t.contains("/none.png"));
      assertThat(troubles).anyMatch(t -> t.contains("Content Security Policy"));
      assertThat(troubles).anyMatch(t -> t.startsWith("failed: GET " + url("/gone")));
    }
  }

  @Test
  void withoutJavaScriptNoneRuns() {
    try (Viewer viewer = Browser.open(Device.phone().withoutJavaScript())) {
      Page page = viewer.open(url("/"));

      assertThat(page.textContent("#said")).isEqualTo("plain");
      assertThat(viewer.troubles()).isEmpty();
      assertThatThrownBy(viewer::axe).hasMessageContaining("needs a device with JavaScript");
    }
  }

  @Test
  void theDeviceIsAsDarkAndAsSmallAsItIsSaidToBe() {
    String background = "getComputedStyle(document.body).backgroundColor";
    try (Viewer dark = Browser.open(Device.phone().dark());
        Viewer light = Browser.open(Device.desk())) {
      Page small = dark.open(url("/"));
      Page large = light.open(url("/"));

      assertThat(small.evaluate(background)).isEqualTo("rgb(0, 0, 0)");
      assertThat(large.evaluate(background)).isEqualTo("rgb(255, 255, 255)");
      assertThat(small.evaluate("innerWidth")).isEqualTo(390);
      assertThat(large.evaluate("innerWidth")).isEqualTo(1280);
      assertThat(small.evaluate("navigator.maxTouchPoints > 0")).isEqualTo(true);
      assertThat(large.evaluate("navigator.maxTouchPoints > 0")).isEqualTo(false);
    }
  }

  private String url(String path) {
    return "http://localhost:" + server.getAddress().getPort() + path;
  }
}
