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
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * Every page as Chromium shows it: no violation of WCAG 2.2 AA that the accessibility engine finds,
 * nothing on the console, nothing that is not there, nothing wider than the screen. With the tag
 * "long" colours are looked at on every page too, by day and by night, at every size; and pictures
 * are made in target/screens.
 */
@Timeout(600)
class EveryPageIT {
  private static final Device PORTRAIT = Device.tablet().sized(800, 1280);
  private static final Device WIDE = Device.desk().sized(1440, 900);

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
        EveryPage.task(site, "yoghurt-base/harvest-dinner/1/shear"),
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
    List<String> pages = new ArrayList<>(EveryPage.list(site));
    pages.removeAll(EveryPage.VARIANTS);
    Look quick = new Look(Viewer::axeWithoutContrast, List.of(Device.phone()));
    assertThat(look(Device.desk(), pages, quick)).isEmpty();
  }

  @Test
  @Tag("long")
  void norHasAnyInItsColoursNorHaveItsVariants() {
    assertThat(look(Device.desk(), EveryPage.list(site))).isEmpty();
  }

  @Test
  @Tag("long")
  void norHasAnyByNightAndOnAPhone() {
    Map<String, List<String>> found =
        new TreeMap<>(look(Device.tablet().dark(), EveryPage.list(site)));
    found.putAll(look(Device.phone(), EveryPage.list(site)));
    assertThat(found).isEmpty();
  }

  @Test
  void theMostUsedHaveNoneByNightAndOnAPhone() {
    List<String> dark = List.of("wall/cold", "stock", "formulas/yoghurt-base/edit");
    List<String> small = List.of("", "wall/cold", "events/harvest-dinner", "pars", "count/cold");
    Look narrow = new Look(Viewer::axe, List.of(Device.phone()));
    Map<String, List<String>> found = new TreeMap<>(look(Device.tablet().dark(), dark, narrow));
    found.putAll(look(Device.phone(), small, narrow));
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
      Page page =
          viewer.open(
              address("wall/cold?task=" + EveryPage.encoded(EveryPage.task(site, "pea-base"))));
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
                .filter(one => one.checkVisibility())
                .map(one => one.getBoundingClientRect())
                .flatMap((one, i, all) => all.slice(i + 1).map(other =>
                  Math.max(other.left - one.right, other.top - one.bottom))))
              """);
      assertThat(((Number) gap).doubleValue()).isGreaterThanOrEqualTo(16);
    }
  }

  @Test
  void refusalsAndWhatIsLookedAtFirstHaveNoViolationEither() {
    assertThat(refused(Viewer::axeWithoutContrast)).isEmpty();
  }

  @Test
  @Tag("long")
  void norHaveTheyAnyInTheirColours() {
    assertThat(refused(Viewer::axe)).isEmpty();
  }

  private static Map<String, List<String>> refused(Function<Viewer, List<Violation>> engine) {
    Map<String, List<String>> found = new TreeMap<>();
    try (Viewer viewer = Browser.open(Device.desk())) {
      for (String page :
          List.of(
              "formulas/nix",
              "q/hello",
              "formulas/dill-oil?amount=3%20piece",
              "techniques/gel?agent=agar&amount=5&mix=nix")) {
        viewer.open(address(page));
        note(found, viewer, "refused-" + page, engine);
      }
      pressed(found, viewer, engine, "formulas/new", "Save the formula");
      pressed(found, viewer, engine, "events/new", "Save");
      pressed(found, viewer, engine, "book/dishes/new", "Save");
      pressed(found, viewer, engine, "book/kitchen/TARN", "Look first");
      pressed(found, viewer, engine, "book/dishes/trout-plate", "Look first");
      pressed(found, viewer, engine, "events/harvest-dinner/edit", "Look first");
      viewer.open(address("pars"));
      viewer.page().getByLabel("Dill oil, Saturday").first().fill("3 kg");
      press(viewer.page(), "Look first");
      note(found, viewer, "pars looked at", engine);
    }
    return found;
  }

  @Test
  @Tag("long")
  void thereArePicturesOfEveryPage() {
    for (Device size : List.of(Device.desk(), PORTRAIT, Device.phone(), WIDE)) {
      for (Device device : List.of(size, size.dark())) {
        try (Viewer viewer = Browser.open(device)) {
          for (String page : EveryPage.list(site)) {
            viewer.open(address(page));
            assertThat(viewer.wholeScreenshot("all/" + name(device, page))).isNotEmptyFile();
          }
        }
      }
    }
  }

  /** By what it is looked for violations, and on which screens besides its own it has to fit. */
  private record Look(Function<Viewer, List<Violation>> engine, List<Device> screens) {}

  private static Map<String, List<String>> look(Device device, List<String> pages) {
    return look(device, pages, new Look(Viewer::axe, List.of(Device.phone(), PORTRAIT, WIDE)));
  }

  /** What is wrong, by page. */
  private static Map<String, List<String>> look(Device device, List<String> pages, Look look) {
    Map<String, List<String>> wrong = new TreeMap<>();
    try (Viewer viewer = Browser.open(device)) {
      for (String page : pages) {
        viewer.open(address(page));
        note(wrong, viewer, device + " " + page, look.engine());
        List<String> wide = wider(viewer.page(), look.screens());
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
  private static List<String> wider(Page page, List<Device> screens) {
    ViewportSize before = page.viewportSize();
    List<String> wide = new ArrayList<>();
    for (Device device : screens) {
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
      Map<String, List<String>> found,
      Viewer viewer,
      Function<Viewer, List<Violation>> engine,
      String page,
      String button) {
    press(viewer.open(address(page)), button);
    note(found, viewer, page + " " + button, engine);
  }

  private static void press(Page page, String button) {
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(button).setExact(true))
        .last()
        .click();
    page.locator(".effect, .fault, .notice").first().waitFor();
  }

  private static void note(
      Map<String, List<String>> found,
      Viewer viewer,
      String what,
      Function<Viewer, List<Violation>> engine) {
    // At its end, where the bar that stays in reach covers no field.
    viewer.page().evaluate("window.scrollTo(0, document.documentElement.scrollHeight)");
    List<String> violations = engine.apply(viewer).stream().map(Violation::toString).toList();
    if (!violations.isEmpty()) {
      found.put(what, violations);
    }
  }

  private static String address(String page) {
    return site.address() + (page.startsWith("/") ? page : "/k/TARN/" + page);
  }

  private static String name(Device device, String page) {
    String tone = device.tone() == Device.Tone.DARK ? "night" : "day";
    String size = device.width() + "x" + device.height();
    return String.join("-", size, tone, page.isEmpty() ? "today" : page)
        .replaceAll("[^a-zA-Z0-9-]+", "-");
  }
}
