package halfgram.testkit;

import com.deque.html.axecore.args.AxeRunOptions;
import com.deque.html.axecore.playwright.AxeBuilder;
import com.deque.html.axecore.results.AxeResults;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.ConsoleMessage;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Request;
import com.microsoft.playwright.WebError;
import com.microsoft.playwright.options.Cookie;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/**
 * One person at one device: cookies and storage of their own, and a note of whatever the browser
 * complains of on any of their pages.
 */
public final class Viewer implements AutoCloseable {
  private static final Path SCREENS = Path.of("target", "screens");

  private static final List<String> RULES = List.of("wcag2a", "wcag2aa", "wcag21aa", "wcag22aa");

  /** What a request that the page itself gave up is said to have died of. */
  private static final String GIVEN_UP = "net::ERR_ABORTED";

  /** Its letters are there, and what answered to that is drawn. */
  private static final String SETTLED =
      "() => document.fonts.ready.then(() => new Promise(requestAnimationFrame))";

  private final Device device;
  private final BrowserContext context;
  private final Page page;
  private final List<String> troubles = new CopyOnWriteArrayList<>();

  Viewer(Device device, BrowserContext context) {
    this.device = device;
    this.context = context;
    context.onConsoleMessage(this::note);
    context.onWebError(this::note);
    context.onRequestFailed(this::note);
    this.page = context.newPage();
  }

  /** The page that is open; others come from {@link #context}. */
  public Page page() {
    return page;
  }

  public BrowserContext context() {
    return context;
  }

  /** Goes there, signed in as the owner unless somebody is already, and gives the page, loaded. */
  public Page open(String url) {
    boolean known = context.cookies(url).stream().anyMatch(cookie -> cookie.name.equals("session"));
    if (!known) {
      Site.find(url).ifPresent(site -> signIn(url, site.session()));
    }
    page.navigate(url);
    if (device.javaScript()) {
      page.evaluate(SETTLED);
    }
    return page;
  }

  /** Shows a session's token from now on. */
  public void signIn(String url, String session) {
    context.addCookies(
        List.of(
            new Cookie("session", session)
                .setUrl(url.replaceFirst("^(https?://[^/]+).*", "$1"))
                .setHttpOnly(true)));
  }

  /**
   * Errors on the console, uncaught exceptions and requests that failed, until now and in their
   * order. A page that is left drops its open streams; those do not count.
   */
  public List<String> troubles() {
    // Events are handed over during calls: one call to each page fetches what is under way.
    context.pages().forEach(p -> p.evaluate("0"));
    return List.copyOf(troubles);
  }

  /** What the screen shows, as target/screens/NAME.png. */
  public Path screenshot(String name) {
    return screenshot(name, false);
  }

  /** The page from top to bottom, as target/screens/NAME.png. */
  public Path wholeScreenshot(String name) {
    return screenshot(name, true);
  }

  /** Where the page breaks the rules of {@link #axe(Page)}. */
  public List<Violation> axe() {
    return axe(page);
  }

  /**
   * Where a page of theirs breaks the rules of WCAG 2.0 A and AA, 2.1 AA and 2.2 AA that a machine
   * can see. The looking is done by a script in the page, past its content security policy.
   */
  public List<Violation> axe(Page looked) {
    return axe(looked, List.of());
  }

  /** As {@link #axe()}, but for the contrast of colours, which takes half of the time. */
  public List<Violation> axeWithoutContrast() {
    return axe(page, List.of("color-contrast"));
  }

  private List<Violation> axe(Page looked, List<String> without) {
    if (!device.javaScript()) {
      throw new IllegalStateException("axe is a script and needs a device with JavaScript");
    }
    // In one piece, as there are no frames: by parts takes more than twice as long.
    // What passes is neither named nor sent: that takes as long as the looking.
    AxeRunOptions violations = new AxeRunOptions();
    violations.setResultTypes(List.of("violations"));
    AxeBuilder engine =
        new AxeBuilder(looked).setLegacyMode(true).options(violations).withTags(RULES);
    AxeResults results = (without.isEmpty() ? engine : engine.disableRules(without)).analyze();
    if (results.isErrored()) {
      throw new IllegalStateException("axe could not look: " + results.getErrorMessage());
    }
    return results.getViolations().stream()
        .flatMap(rule -> rule.getNodes().stream().map(node -> Violation.of(rule, node)))
        .toList();
  }

  @Override
  public void close() {
    // A request that a test holds up must not come while everything closes.
    page.unrouteAll();
    context.close();
  }

  private Path screenshot(String name, boolean whole) {
    Path file = SCREENS.resolve(name + ".png");
    page.screenshot(new Page.ScreenshotOptions().setPath(file).setFullPage(whole));
    return file;
  }

  private void note(ConsoleMessage message) {
    if (message.type().equals("error")) {
      troubles.add("console: " + message.text() + " (" + message.location() + ")");
    }
  }

  private void note(WebError error) {
    troubles.add("uncaught: " + error.error());
  }

  private void note(Request request) {
    if (!GIVEN_UP.equals(request.failure())) {
      troubles.add("failed: " + request.method() + " " + request.url() + " " + request.failure());
    }
  }
}
