package halfgram.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.Media;
import com.microsoft.playwright.options.ViewportSize;
import halfgram.testkit.Browser;
import halfgram.testkit.Client;
import halfgram.testkit.Device;
import halfgram.testkit.Site;
import halfgram.testkit.Viewer;
import halfgram.testkit.Violation;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * Every page as Chromium shows it: no violation of WCAG 2.2 AA that the accessibility engine finds,
 * nothing on the console, nothing that is not there, nothing wider than the screen; pictures in
 * target/screens are made with the tag "long": every page at every size by day and by night.
 */
@Timeout(600)
class EveryPageIT {
  private static final Device PORTRAIT = Device.tablet().sized(800, 1280);
  private static final Device WIDE = Device.desk().sized(1440, 900);

  /** The same pages in another order or with nothing found. */
  private static final List<String> VARIANTS =
      List.of(
          "?by=start",
          "?by=service",
          "?again=yes",
          "lanes?by=machine",
          "lanes/what-if?look=yes&off=ines&covers-harvest-dinner=10",
          "lanes/what-if?date=2026-12-05&look=yes&draft-choir-supper=yes",
          "lanes/what-if?date=2026-12-06",
          "events/choir-supper",
          "events/choir-supper/edit?confirm=yes",
          "wall/all",
          "wall/pass",
          "service/bar.2026-12-05",
          "deliveries?past=yes",
          "crew?date=2026-12-06",
          "log?what=stock",
          "formulas?find=zzz",
          "events?past=yes",
          "stock?by=component");

  private static Site site;

  @BeforeAll
  static void open() {
    site = Site.demo();
    Client client = site.client();
    client.get("/k/TARN/wall/cold");
    client.post("/k/TARN/wall/cook", "station", "cold", "person", "ines");
    client.post(
        "/k/TARN/tick",
        "station",
        "cold",
        "task",
        task("yoghurt-base/harvest-dinner/1/shear"),
        "kind",
        "PROBLEM",
        "note",
        "the whisk is gone",
        "sequence",
        String.valueOf(Site.sequence()));
    site.script()
        .post(
            "deliveries",
            """
            {"code": "dairy", "supplier": "Hill dairy", "date": "2026-12-05", "expected": "13:40",
             "lines": [{"ingredient": "sheep-yoghurt", "amount": "12 kg"}]}\
            """);
    crew();
    site.script()
        .post("stock/t-1204-trout-1/waste", "{'amount': '120 g', 'reason': 'fell on the floor'}");
  }

  private static void crew() {
    site.script().post("crew", said(1, "'kind': 'out', 'person': 'lorcan', 'note': 'a cold'"));
    site.script().post("crew", said(2, "'kind': 'broken', 'machine': 'blender', 'until': '15:00'"));
  }

  private static String said(int sequence, String entry) {
    String device = "00000000-0000-4000-8000-00000000000a";
    return "{" + entry + ", 'device': '" + device + "', 'sequence': " + sequence + "}";
  }

  @AfterAll
  static void close() {
    site.close();
  }

  @Test
  void noPageHasAViolationByDayOrIsWiderThanItsScreen() {
    List<String> pages = new ArrayList<>(pages());
    pages.removeAll(VARIANTS);
    assertThat(look(Device.desk(), pages)).isEmpty();
  }

  @Test
  @Tag("long")
  void norHaveTheirVariants() {
    assertThat(look(Device.desk(), VARIANTS)).isEmpty();
  }

  @Test
  @Tag("long")
  void norHasAnyByNightAndOnAPhone() {
    Map<String, List<String>> found = new TreeMap<>(look(Device.tablet().dark(), pages()));
    found.putAll(look(Device.phone(), pages()));
    assertThat(found).isEmpty();
  }

  @Test
  void theMostUsedHaveNoneByNightAndOnAPhone() {
    List<String> dark = List.of("wall/cold", "stock", "formulas/yoghurt-base/edit");
    List<String> small = List.of("", "wall/cold", "events/harvest-dinner", "pars", "count/cold");
    Map<String, List<String>> found = new TreeMap<>(look(Device.tablet().dark(), dark));
    found.putAll(look(Device.phone(), small));
    assertThat(found).isEmpty();
  }

  @Test
  void onAPhoneThePageBeginsInTheFirstQuarterAndEveryPageIsReached() {
    try (Viewer viewer = Browser.open(Device.phone())) {
      Page page = viewer.open(address("crew"));
      Object top = page.evaluate("document.querySelector('main').getBoundingClientRect().top");
      assertThat(((Number) top).doubleValue()).isLessThan(844 / 4.0);
      page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Audit")).click();
      page.waitForURL("**/audit");
    }
  }

  @Test
  void whatIsFoldedOfALongStationIsReachedByItsAddressAndPrinted() {
    try (Viewer viewer = Browser.open(Device.desk())) {
      Page page = viewer.open(address(""));
      String id = page.locator("#at-hot-later tr[id]").last().getAttribute("id");
      assertThat(page.locator("#" + id).isVisible()).isFalse();
      page.navigate(address("#" + id));
      page.reload();
      page.locator("#" + id).waitFor();
      viewer.open(address(""));
      page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
      assertThat(page.locator("#" + id).boundingBox().height).isPositive();
    }
  }

  @Test
  void whatACookPressesIsEightyPixelsHighAndSixteenApart() {
    try (Viewer viewer = Browser.open(Device.tablet())) {
      Page page = viewer.open(address("wall/cold?task=" + encoded(task("pea-base"))));
      assertThat(page.locator(".hand .acts button:visible").count()).isPositive();
      Object low =
          page.evaluate(
              """
              [...document.querySelectorAll('.hand button, .hand summary, .task, .changed button')]
                .filter(one => one.checkVisibility() && one.getBoundingClientRect().height < 80)
                .map(one => one.textContent.trim())
              """);
      assertThat(low).isEqualTo(List.of());
      Object gap =
          page.evaluate(
              """
              Math.min(...[...document.querySelectorAll('.hand .acts > *')]
                .map(one => one.getBoundingClientRect())
                .flatMap((one, i, all) => all.slice(i + 1).map(other =>
                  Math.max(other.left - one.right, other.top - one.bottom))))
              """);
      assertThat(((Number) gap).doubleValue()).isGreaterThanOrEqualTo(16);
    }
  }

  @Test
  void refusalsAndWhatIsLookedAtFirstHaveNoViolationEither() {
    Map<String, List<String>> found = new TreeMap<>();
    try (Viewer viewer = Browser.open(Device.desk())) {
      for (String page :
          List.of(
              "formulas/nix",
              "q/hello",
              "formulas/dill-oil?amount=3%20piece",
              "techniques/gel?agent=agar&amount=5&mix=nix")) {
        viewer.open(address(page));
        note(found, viewer, "refused-" + page);
      }
      pressed(found, viewer, "formulas/new", "Save the formula");
      pressed(found, viewer, "events/new", "Save");
      pressed(found, viewer, "book/dishes/new", "Save");
      pressed(found, viewer, "book/kitchen/TARN", "Look first");
      pressed(found, viewer, "book/dishes/trout-plate", "Look first");
      pressed(found, viewer, "events/harvest-dinner/edit", "Look first");
      viewer.open(address("pars"));
      viewer.page().getByLabel("Dill oil, Saturday").first().fill("3 kg");
      press(viewer.page(), "Look first");
      note(found, viewer, "pars looked at");
    }
    assertThat(found).isEmpty();
  }

  @Test
  @Tag("long")
  void thereArePicturesOfEveryPage() {
    for (Device size : List.of(Device.desk(), PORTRAIT, Device.phone(), WIDE)) {
      for (Device device : List.of(size, size.dark())) {
        try (Viewer viewer = Browser.open(device)) {
          for (String page : pages()) {
            viewer.open(address(page));
            assertThat(viewer.wholeScreenshot("all/" + name(device, page))).isNotEmptyFile();
          }
        }
      }
    }
  }

  /** What is wrong, by page. */
  private static Map<String, List<String>> look(Device device, List<String> pages) {
    Map<String, List<String>> wrong = new TreeMap<>();
    try (Viewer viewer = Browser.open(device)) {
      for (String page : pages) {
        viewer.open(address(page));
        note(wrong, viewer, device + " " + page);
        List<String> wide = wider(viewer.page());
        if (!wide.isEmpty()) {
          wrong.put(device + " " + page + " is too wide", wide);
        }
      }
      if (!viewer.troubles().isEmpty()) {
        wrong.put(device + " console", viewer.troubles());
      }
    }
    return wrong;
  }

  /** The sizes of screen at which the page that is open would have to be moved sideways. */
  private static List<String> wider(Page page) {
    ViewportSize before = page.viewportSize();
    List<String> wide = new ArrayList<>();
    for (Device device : List.of(Device.phone(), PORTRAIT, WIDE)) {
      page.setViewportSize(device.width(), device.height());
      Object over =
          page.evaluate(
              "document.documentElement.scrollWidth - document.documentElement.clientWidth");
      if (((Number) over).intValue() > 0) {
        wide.add(device + " by " + over);
      }
    }
    page.setViewportSize(before.width, before.height);
    return wide;
  }

  private static void pressed(
      Map<String, List<String>> found, Viewer viewer, String page, String button) {
    press(viewer.open(address(page)), button);
    note(found, viewer, page + " " + button);
  }

  private static void press(Page page, String button) {
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(button).setExact(true))
        .last()
        .click();
    page.locator(".effect, .fault, .notice").first().waitFor();
  }

  private static void note(Map<String, List<String>> found, Viewer viewer, String what) {
    // At its end, where the bar that stays in reach covers no field.
    viewer.page().evaluate("window.scrollTo(0, document.documentElement.scrollHeight)");
    List<String> violations = viewer.axe().stream().map(Violation::toString).toList();
    if (!violations.isEmpty()) {
      found.put(what, violations);
    }
  }

  private static List<String> pages() {
    String tub = site.wiring().stock().list(site.house()).get(0).lot().code();
    return List.of(
        "",
        "?by=start",
        "?by=service",
        "?date=2026-12-06",
        "?date=2026-12-01",
        "?again=yes",
        "task?date=2026-12-05&id=" + encoded(task("yoghurt-base")),
        "lanes",
        "lanes?by=machine",
        "lanes/task?id=" + encoded(task("yoghurt-base")),
        "lanes/what-if",
        "lanes/what-if?look=yes&off=ines&covers-harvest-dinner=10",
        "why?plan=2026-12-05/1&path=covers/harvest-dinner/prepared",
        "wall",
        "wall/cold",
        "wall/cold?task=" + encoded(task("yoghurt-spheres/harvest-dinner/1/drop")),
        "wall/all",
        "wall/hot?task=" + encoded(task("butter-sauce/harvest-dinner/1/warm")),
        "wall/pass",
        "service",
        "service/bar.2026-12-05",
        "service/harvest-dinner",
        "service/harvest-dinner/swap",
        "service/harvest-dinner/who",
        "wall/cold/who",
        "tonight",
        "slip/harvest-dinner",
        "slip/harvest-dinner?minutes=30&covers=97",
        "deliveries",
        "deliveries?past=yes",
        "book",
        "book/kitchen/TARN",
        "book/ingredients/butter",
        "book/dishes/trout-plate",
        "book/services/new",
        "book/people/ines",
        "deliveries/new",
        "deliveries/dairy",
        "deliveries/dairy/edit",
        "deliveries/dairy/cancel",
        "kit",
        "crew",
        "crew?date=2026-12-06",
        "label?tub=" + tub,
        "paper?station=cold",
        "paper/entry?station=cold",
        "formulas",
        "formulas?find=zzz",
        "formulas/yoghurt-base",
        "formulas/yoghurt-base?amount=2%20kg",
        "formulas/yoghurt-base/versions",
        "formulas/yoghurt-base/versions?from=1&to=2",
        "formulas/yoghurt-base/edit",
        "formulas/new",
        "techniques",
        "techniques/sphere-bath?formula=yoghurt-spheres",
        "reference/agents",
        "reference/densities",
        "reference/agents/agar",
        "events",
        "events?past=yes",
        "events/harvest-dinner",
        "events/harvest-dinner/edit",
        "events/new",
        "pars",
        "stock",
        "stock?by=component",
        "stock/" + tub,
        "stock/new",
        "count/cold",
        "baths",
        "baths/A",
        "log",
        "log?what=stock",
        "people",
        "roles",
        "me",
        "tablets",
        "settings",
        "audit",
        "/sign-in",
        "/invitation",
        "/pair");
  }

  private static String address(String page) {
    return site.address() + (page.startsWith("/") ? page : "/k/TARN/" + page);
  }

  /** The first task whose id begins so. */
  private static String task(String beginning) {
    return site.wiring().plans().open(site.house(), Site.DAY, "t").sheet().tasks().stream()
        .map(halfgram.prep.Task::id)
        .filter(id -> id.startsWith(beginning))
        .findFirst()
        .orElseThrow();
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  private static String name(Device device, String page) {
    String tone = device.tone() == Device.Tone.DARK ? "night" : "day";
    String size = device.width() + "x" + device.height();
    return String.join("-", size, tone, page.isEmpty() ? "today" : page)
        .replaceAll("[^a-zA-Z0-9-]+", "-");
  }
}
