package halfgram.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Request;
import com.microsoft.playwright.Route;
import halfgram.testkit.Browser;
import halfgram.testkit.Cable;
import halfgram.testkit.Client;
import halfgram.testkit.Device;
import halfgram.testkit.Site;
import halfgram.testkit.Viewer;
import java.time.Duration;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A tablet on a slow network, one that slept, one out of reach. */
@Timeout(180)
class BadNetworkIT {
  private static final String BASE = "yoghurt-base/harvest-dinner/1/shear";
  private static final String COOK = "parsnip-puree/lunch.2026-12-05/1/cook";
  private static final UUID DEVICE = UUID.randomUUID();

  private Site site;
  private Viewer tablet;
  private Page wall;
  private CDPSession tools;

  @BeforeEach
  void open() {
    site = Site.demo();
    site.setClock(Site.at("11:40"));
    site.client().get("/k/TARN/wall/cold");
    tablet = Browser.open(Device.tablet());
    wall = tablet.page();
    tools = tablet.context().newCDPSession(wall);
  }

  @AfterEach
  void close() {
    tablet.close();
    site.close();
  }

  @Test
  void onASlowNetworkAPressShowsAtOnceThatItIsOnItsWayAndIsSentOnce() {
    tools.send("Network.enable");
    JsonObject slow = new JsonObject();
    slow.addProperty("offline", false);
    slow.addProperty("latency", 400);
    slow.addProperty("downloadThroughput", 400_000 / 8);
    slow.addProperty("uploadThroughput", 400_000 / 8);
    tools.send("Network.emulateNetworkConditions", slow);

    long begun = System.nanoTime();
    tablet.open(site.address() + wallOf("cold", BASE));
    choose("Ines");
    wall.navigate(site.address() + wallOf("cold", BASE));
    Locator start = wall.getByText("Start", exactly());
    assertThat(start).isVisible();
    System.out.printf("First pages on 3G: %.1f s%n", (System.nanoTime() - begun) / 1e9);

    List<String> sent = sent();
    wall.evaluate(
        """
        () => {
          new MutationObserver((all) => all.forEach((one) => {
            if (one.target.getAttribute('aria-busy')) {
              window.shown ??= performance.now() - window.pressed;
            }
          })).observe(document.body, {subtree: true, attributeFilter: ['aria-busy']});
          addEventListener('pointerup', () => { window.pressed ??= performance.now(); }, true);
        }
        """);
    start.tap();
    assertThat(wall.locator("button[aria-busy]")).hasText("Start");
    start.tap();
    assertThat(wall.locator(".head .state")).containsText("ON IT · Ines");
    assertThat(((Number) wall.evaluate("window.shown")).doubleValue()).isLessThan(100);
    assertThat(sent).hasSize(1);

    // The next press, while the first is not answered yet, is sent after it.
    wall.locator(".which .names").getByText("xanthan", exactlyIn()).tap();
    Locator line = wall.locator(".weigh .now button");
    line.tap();
    assertThat(line).hasAttribute("aria-busy", "true");
    assertThat(wall.locator(".weigh .done")).hasCount(1);
    assertThat(sent).hasSize(2);
    assertThat(tablet.troubles()).isEmpty();
  }

  @Test
  void aTabletThatSleptForAnHourCatchesUpByItself() {
    try (Cable cable = Cable.to(site)) {
      tablet.signIn(cable.address(), site.session());
      wall.clock().install();
      wall.navigate(cable.address() + wallOf("hot", COOK));
      choose("Marit");
      wall.navigate(cable.address() + wallOf("hot", COOK));
      wall.getByText("Start", exactly()).tap();
      assertThat(wall.locator(".timer.runs")).containsText("Parsnip purée, cook");
      wall.evaluate("window.neverLoadedAgain = true");

      // It hears nothing and its clock stands, while another works and lunch begins.
      cable.die();
      tick("done", "fish-brine/lunch.2026-12-05/1/stir");
      site.setClock(Site.at("12:40"));
      cable.mend();
      wall.clock().fastForward(Duration.ofHours(1).toMillis());

      assertThat(wall.locator(".timer.rings")).containsText("time is up");
      assertThat(wall.locator(".pace b")).hasText("1");
      assertThat(wall.locator(".clock time")).hasText("12:40");
      assertThat(wall.locator(".to a")).not().containsText("Lunch, 40");
      // Its stream lives again: what changes now is seen.
      tick("note", COOK);
      assertThat(wall.locator(".noted")).containsText("seen");
      assertThat(wall.locator(".net")).hasText("saved");
      assertThat(wall.evaluate("window.neverLoadedAgain")).isEqualTo(true);
    }
  }

  @Test
  void aPageThatWasPutAwayIsAskedForAgainWhenItIsSeen() {
    wall.clock().install();
    wall.addInitScript(
        "Object.defineProperty("
            + "document, 'visibilityState', {get: () => window.seen ?? 'visible'})");
    tablet.open(site.address() + wallOf("hot", COOK));
    see("hidden");
    site.setClock(Site.at("12:40"));
    wall.clock().fastForward(Duration.ofHours(1).toMillis());
    see("visible");
    assertThat(wall.locator(".to a")).not().containsText("Lunch, 40");
    assertThat(tablet.troubles()).isEmpty();
  }

  private void see(String state) {
    wall.evaluate(
        "state => { window.seen = state; document.dispatchEvent(new Event('visibilitychange')); }",
        state);
  }

  @Test
  void aStreamThatDiedWithoutAWordIsOpenedAnew() {
    try (Cable cable = Cable.to(site)) {
      tablet.signIn(cable.address(), site.session());
      wall.clock().install();
      wall.navigate(cable.address() + wallOf("hot", COOK));
      assertThat(wall.locator(".net")).hasText("saved");
      cable.die();
      cable.mend();
      tick("note", COOK);
      wall.clock().runFor(Duration.ofSeconds(45).toMillis());
      assertThat(wall.locator(".noted")).containsText("seen");
    }
  }

  @Test
  void aStreamThatAProxyTurnsAwayIsOpenedAnew() {
    AtomicInteger asked = new AtomicInteger();
    wall.route(
        "**/live",
        route -> {
          if (asked.incrementAndGet() == 1) {
            route.fulfill(new Route.FulfillOptions().setStatus(502));
          } else {
            route.resume();
          }
        });
    wall.clock().install();
    tablet.open(site.address() + wallOf("hot", COOK));
    wall.waitForCondition(() -> asked.get() == 1);
    tick("note", COOK);
    wall.clock().runFor(Duration.ofSeconds(5).toMillis());
    assertThat(wall.locator(".noted")).containsText("seen");
    assertThat(wall.locator(".net")).hasText("saved");
    tick("done", "fish-brine/lunch.2026-12-05/1/stir");
    assertThat(wall.locator(".pace b")).hasText("1");
  }

  @Test
  void aPressThatNobodyAnswersSaysSoAndCountsOnceWhenItIsPressedAgain() {
    tablet.open(site.address() + wallOf("cold", BASE));
    choose("Ines");
    wall.navigate(site.address() + wallOf("cold", BASE));
    wall.locator("#made").fill("5.4 kg");
    tablet.context().setOffline(true);
    wall.getByText("Done", exactly()).tap();
    assertThat(wall.locator(".notice")).containsText("Press again as soon as it is there");
    assertThat(wall.locator(".net")).hasText("no network");
    assertThat(wall.locator("#made")).hasValue("5.4 kg");
    tablet.screenshot("no-network");
    tablet.context().setOffline(false);
    wall.getByText("Done", exactly()).tap();
    assertThat(wall.locator(".after .tub")).hasText(Pattern.compile("all \\d+ labels"));
    assertThat(wall.locator(".notice")).hasCount(0);
  }

  @Test
  void whatIsTypedStaysWhenAnotherTabletChangesThePage() {
    tablet.open(site.address() + wallOf("cold", BASE));
    choose("Ines");
    wall.navigate(site.address() + wallOf("cold", BASE));
    wall.locator("#made").fill("5.4 kg");
    wall.locator("#more summary").tap();
    wall.locator("#word-note").fill("the lid leaks");
    wall.locator("#hand").tap();
    tick("note", BASE);
    assertThat(wall.locator(".noted")).containsText("seen");
    assertThat(wall.locator("#made")).hasValue("5.4 kg");
    assertThat(wall.locator("#word-note")).hasValue("the lid leaks");
    assertThat(wall.locator("#word-note")).isVisible();
    assertThat(wall.locator("#note")).hasValue("");
    wall.getByText("Note it", exactly()).tap();
    assertThat(wall.locator(".noted")).hasCount(2);
    assertThat(wall.locator("#word-note")).hasValue("");
    assertThat(wall.locator("#made")).hasValue("5.4 kg");
    assertThat(tablet.troubles()).isEmpty();
  }

  private List<String> sent() {
    List<String> sent = new CopyOnWriteArrayList<>();
    wall.onRequest(
        (Request request) -> {
          if (request.method().equals("POST")) {
            sent.add(request.url());
          }
        });
    return sent;
  }

  private void choose(String name) {
    wall.locator(".cook .button").tap();
    wall.locator(".people").getByText(name, exactlyIn()).tap();
    assertThat(wall.locator(".cook .button")).hasText(name);
  }

  private void tick(String kind, String task) {
    assertThat(
            site.script()
                .post(
                    "ticks",
                    ("{'task':'%s','kind':'%s','cook':'lorcan','device':'%s','sequence':%d,"
                            + "'note':'seen'}")
                        .formatted(task, kind, DEVICE, Site.sequence()))
                .status())
        .isEqualTo(201);
  }

  private static String wallOf(String station, String task) {
    return "/k/TARN/wall/" + station + "?task=" + Client.encoded(task);
  }

  private static Page.GetByTextOptions exactly() {
    return new Page.GetByTextOptions().setExact(true);
  }

  private static Locator.GetByTextOptions exactlyIn() {
    return new Locator.GetByTextOptions().setExact(true);
  }
}
