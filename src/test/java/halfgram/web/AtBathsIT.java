package halfgram.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import halfgram.testkit.Browser;
import halfgram.testkit.Client;
import halfgram.testkit.Device;
import halfgram.testkit.Site;
import halfgram.testkit.Viewer;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Dropping and lifting on a tablet of 1280 x 800. */
@Timeout(120)
class AtBathsIT {
  private static final String TASK = "yoghurt-spheres/harvest-dinner/1/drop";

  @Test
  void aTapDropsCountsDownAndLifts() {
    try (Site site = Site.demo();
        Viewer viewer = Browser.open(Device.tablet())) {
      Page page = atBaths(site, viewer);
      page.locator(".tray .drop button[data-by='-1']").first().click();
      assertThat(page.locator("#drop-A")).hasValue("14");
      page.locator(".tray .drop button").last().click();
      assertThat(page.locator(".at-baths .lift p span")).containsText("14 pieces");
      assertThat(page.locator(".ticks").first()).hasText(Pattern.compile("2:[0-3]\\d"));
      page.locator("#other-bath summary").click();
      page.locator("#other-bath form button").click();
      assertThat(page.locator(".tray")).hasCount(2);
      assertThat(viewer.axe()).isEmpty();
      viewer.wholeScreenshot("at-baths");
      assertThat(low(page)).isEqualTo(List.of());
      Object over =
          page.evaluate(
              "document.documentElement.scrollWidth - document.documentElement.clientWidth");
      assertThat(((Number) over).intValue()).isZero();
      Locator lift = page.locator(".lift button");
      page.evaluate("window.scrollTo(0, 250)");
      lift.first().click();
      assertThat(lift).hasCount(1);
      assertThat(page.locator(".after b")).containsText("Drop 1 lifted");
      Locator undo = page.locator(".after button");
      assertThat(undo).isInViewport();
      viewer.screenshot("at-baths-scrolled");
      undo.click();
      assertThat(lift).hasCount(2);
      assertThat(viewer.troubles()).isEmpty();
    }
  }

  @Test
  void theChefIsCalledAndAProblemToldThereToo() {
    try (Site site = Site.demo();
        Viewer viewer = Browser.open(Device.tablet())) {
      Page page = atBaths(site, viewer);
      page.locator("#more summary").click();
      List<String> keys = List.of(".aloud > button", "#trouble summary", "#more summary");
      assertThat(page.evaluate(InSight.HIDDEN, keys)).isEqualTo(List.of());
    }
  }

  @Test
  void aPressCountsThoughTheAnswerToTheLastOneArrivesUnderIt() {
    try (Site site = Site.demo();
        Viewer viewer = Browser.open(Device.tablet())) {
      Page page = atBaths(site, viewer);
      drop(site, "A");
      drop(site, "A");
      Locator lift = page.locator(".lift button");
      assertThat(lift).hasCount(2);
      Held held = new Held(page, "**/bath", "POST");
      lift.first().click();
      held.wait(page);
      press(page, lift.last());
      held.letGo(page);
      page.mouse().up();
      assertThat(lift).hasCount(0);
      assertThat(page.locator(".count small")).containsText("2 lifted, 0 in");
      assertThat(viewer.troubles()).isEmpty();
    }
  }

  @Test
  void aPressCountsThoughAnotherDevicesNewsArriveUnderIt() {
    try (Site site = Site.demo();
        Viewer viewer = Browser.open(Device.tablet())) {
      Page page = atBaths(site, viewer);
      drop(site, "A");
      Locator lift = page.locator(".lift button");
      assertThat(lift).hasCount(1);
      Held held = new Held(page, "**/wall/cold?task=*", "GET");
      drop(site, "A");
      held.wait(page);
      press(page, lift);
      held.letGo(page);
      page.mouse().up();
      assertThat(page.locator(".count small")).containsText("1 lifted, 1 in");
      assertThat(viewer.troubles()).isEmpty();
    }
  }

  @Test
  void aPressThatWaitedBehindARefusedOneHidesNoRefusal() {
    try (Site site = Site.demo();
        Viewer viewer = Browser.open(Device.tablet())) {
      Page page = atBaths(site, viewer);
      drop(site, "A");
      assertThat(page.locator(".lift button")).hasCount(1);
      Held held = new Held(page, "**/bath", "POST");
      page.locator("#drop-A").fill("many");
      page.locator(".tray .drop button").last().click();
      held.wait(page);
      page.locator(".lift button").click();
      held.letGo(page);
      assertThat(page.locator(".lift button")).hasCount(0);
      assertThat(page.locator(".notice")).containsText("Give a number of pieces");
    }
  }

  @Test
  void aPressBehindOneThatAsksWhoItIsWaitsForTheName() {
    try (Site site = Site.demo();
        Viewer viewer = Browser.open(Device.tablet())) {
      String wall = site.address() + "/k/TARN/wall/cold";
      Page page = viewer.open(wall + "?task=" + Client.encoded(TASK));
      page.locator("#other-bath summary").click();
      Held held = new Held(page, "**/bath", "POST");
      page.locator(".tray .drop button").last().click();
      held.wait(page);
      page.locator("#other-bath form button").click();
      held.letGo(page);
      page.locator("[data-who] [value=ines]").first().click();
      assertThat(page.locator(".lift button")).hasCount(2);
      assertThat(viewer.troubles()).isEmpty();
    }
  }

  @Test
  void theNextDropAndEveryLiftAreInSightThoughAnAlarmRings() {
    for (Device screen : List.of(Device.tablet(), Device.tablet().sized(1024, 768))) {
      try (Site site = Site.demo();
          Viewer viewer = Browser.open(screen)) {
        site.setClock(Site.at("13:15"));
        site.client().get("/k/TARN/wall/cold");
        tick(site, "done", "yoghurt-base/harvest-dinner/1/shear");
        site.setClock(Site.at("16:05"));
        Page page = atBaths(site, viewer);
        assertThat(page.locator(".timer[data-up]")).hasCount(1);
        assertThat(page.evaluate(HIDDEN, ".tray .drop > button")).isEqualTo(List.of());
        drop(site, "A");
        drop(site, "B");
        assertThat(page.locator(".lift button")).hasCount(2);
        assertThat(page.evaluate(HIDDEN, ".lift button, .ticks")).isEqualTo(List.of());
      }
    }
  }

  /** What of it lies outside the screen, or under something else. */
  private static final String HIDDEN =
      """
      (selector) => [...document.querySelectorAll(selector)].filter((one) => {
        const {left, right, top, bottom} = one.getBoundingClientRect();
        return [top + 3, bottom - 3].some((y) =>
          !one.contains(document.elementFromPoint((left + right) / 2, y)));
      }).map((one) => one.textContent)
      """;

  @Test
  void afterADropIntoAnotherBathItsLiftIsInSight() {
    try (Site site = Site.demo();
        Viewer viewer = Browser.open(Device.tablet())) {
      Page page = atBaths(site, viewer);
      page.locator("#other-bath summary").tap();
      page.locator("#other-bath form button").tap();
      Locator lift = page.locator(".lift button");
      assertThat(lift).hasCount(1);
      assertThat(lift).isInViewport();
      assertThat(viewer.troubles()).isEmpty();
    }
  }

  private static void tick(Site site, String kind, String task) {
    String body =
        "{'task':'%s','kind':'%s','cook':'ines','device':'%s','sequence':1}"
            .formatted(task, kind, UUID.randomUUID());
    assertThat(site.script().post("ticks", body).status()).isEqualTo(201);
  }

  /** The cold station's wall with Ines at the baths of the yoghurt spheres. */
  private static Page atBaths(Site site, Viewer viewer) {
    String wall = site.address() + "/k/TARN/wall/cold";
    Page page = viewer.open(wall + "/who");
    page.getByText("Ines", new Page.GetByTextOptions().setExact(true)).first().click();
    page.waitForURL(Pattern.compile(".*/wall/cold$").asPredicate());
    return viewer.open(wall + "?task=" + Client.encoded(TASK));
  }

  /** A drop that another device enters. */
  private static void drop(Site site, String label) {
    String body =
        "{'kind':'drop','bath':'%s','run':'%s','pieces':15,'cook':'ines','device':'%s',"
            .concat("'sequence':1}")
            .formatted(label, TASK.replace("/drop", ""), UUID.randomUUID());
    assertThat(site.script().post("baths", body).status()).isEqualTo(201);
  }

  /** Puts the finger down and leaves it there. */
  private static void press(Page page, Locator button) {
    button.hover();
    page.mouse().down();
  }

  /** The next request of a kind, held on its way until it is let go. */
  private static final class Held {
    private final List<Route> routes = new ArrayList<>();

    private Held(Page page, String url, String method) {
      page.route(
          url,
          route -> {
            if (routes.isEmpty() && route.request().method().equals(method)) {
              routes.add(route);
            } else {
              route.resume();
            }
          });
    }

    private void wait(Page page) {
      page.waitForCondition(() -> !routes.isEmpty());
    }

    /** Lets it go, until the page's scripts have read the answer and done with it what they do. */
    private void letGo(Page page) {
      page.evaluate(
          """
          (() => {
            const parse = DOMParser.prototype.parseFromString;
            DOMParser.prototype.parseFromString = function (...all) {
              setTimeout(() => { window.answered = true; });
              return parse.apply(this, all);
            };
          })()
          """);
      routes.get(0).resume();
      page.waitForCondition(() -> Boolean.TRUE.equals(page.evaluate("window.answered === true")));
    }
  }

  /** What is pressed at the baths and is less than 80 pixels high. */
  private static Object low(Page page) {
    return page.evaluate(
        """
        [...document.querySelectorAll('.at-baths button, .at-baths summary, .at-baths input')]
          .filter(one => one.checkVisibility() && one.getBoundingClientRect().height < 80)
          .map(one => one.outerHTML)
        """);
  }
}
