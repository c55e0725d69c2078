package halfgram.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import halfgram.testkit.Browser;
import halfgram.testkit.Client;
import halfgram.testkit.Device;
import halfgram.testkit.Site;
import halfgram.testkit.Ticks;
import halfgram.testkit.Viewer;
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
 * The wall in all its states: nothing that the accessibility engine finds, large enough to read.
 */
@Timeout(300)
class WallStatesIT {
  /** Across the screen of a tablet on the wall. */
  private static final double INCHES = 10;

  private static final String COOK = "parsnip-puree/lunch.2026-12-05/1/cook";
  private static final String BLEND = "parsnip-puree/lunch.2026-12-05/1/blend";
  private static final String BASE = "yoghurt-base/harvest-dinner/1/shear";

  private static final String SPHERES = "yoghurt-spheres/harvest-dinner/1/drop";

  private static final String SAUCE = "butter-sauce/harvest-dinner/1/warm";

  private static Site site;

  @BeforeAll
  static void open() {
    site = Site.demo();
    Ticks ticks = new Ticks(site, "ines");
    site.client().get("/k/TARN/wall/cold");
    site.setClock(Site.at("10:00"));
    ticks.tick("start", COOK, "");
    ticks.tick("timed", COOK, "'minutes': 1, 'note': 'turn the tray'");
    ticks.tick("done", "char-portions/lunch.2026-12-05/1/brine", "'sure': true");
    site.setClock(Site.at("10:20"));
    String done = ticks.tick("done", "pea-stock/bar.2026-12-05/1/simmer", "'sure': true");
    STATES.put(
        "just done",
        List.of(
            "wall/hot?done="
                + Client.encoded("pea-stock/bar.2026-12-05/1/simmer")
                + "&tick="
                + done));
    ticks.tick("start", "pea-base/harvest-dinner/1/shear", "");
    ticks.tick("note", "pea-base/harvest-dinner/1/shear", "'note': 'the lid leaks'");
    ticks.tick("called", "pea-base/harvest-dinner/1/shear", "'note': 'is this thick enough?'");
    ticks.tick("failed", "skyr-cream/harvest-dinner/1/melt", "'note': 'curdled'");
    ticks.tick("problem", "mushroom-jus/harvest-dinner/1/simmer", "'note': 'no cream'");
    ticks.tick("part-done", "trout-slices/harvest-dinner/1/slice", "");
    site.setClock(Site.at("11:10"));
  }

  @AfterAll
  static void close() {
    site.close();
  }

  /** What can be seen at a wall, by name: the page, and what is pressed there. */
  private static final Map<String, List<String>> STATES = new TreeMap<>();

  static {
    STATES.put("to do, a tub to read", List.of(page("cold", BASE)));
    STATES.put("the wrong tub read", List.of(page("cold", BASE), ".which .names a:text('agar')"));
    STATES.put("at the baths", List.of(page("cold", SPHERES), "#other-bath summary"));
    STATES.put("a test piece", List.of(page("cold", SPHERES + "/test-piece")));
    STATES.put("a tasting", List.of(page("hot", SAUCE), "#adjust summary"));
    STATES.put("on it by another", List.of(page("cold", "pea-base/harvest-dinner/1/shear")));
    STATES.put("on it, more open", List.of(page("hot", COOK), "#more summary"));
    STATES.put("trouble open", List.of(page("hot", COOK), "#more summary", "#trouble summary"));
    STATES.put("waits", List.of(page("cold", BLEND)));
    STATES.put("problem", List.of(page("hot", "mushroom-jus/harvest-dinner/1/simmer")));
    STATES.put("failed", List.of(page("pastry", "skyr-cream/harvest-dinner/1/melt")));
    STATES.put("part done", List.of(page("cold", "trout-slices/harvest-dinner/1/slice")));
    STATES.put(
        "part typed", List.of(page("cold", BASE), "#part summary", "#so-far", ".keys .digit"));
    STATES.put("done", List.of(page("hot", "pea-stock/bar.2026-12-05/1/simmer")));
    STATES.put("locked for wiping", List.of("wall/cold", "[data-wipe]"));
    STATES.put("keys", List.of(page("cold", BASE), "#made"));
    STATES.put("who", List.of("wall/cold/who"));
    STATES.put("stations", List.of("wall?choose=yes"));
  }

  private static String page(String station, String task) {
    return "wall/" + station + "?task=" + Client.encoded(task);
  }

  @Test
  void theTimersOfEachKindAreThere() {
    String wall = site.client().get("/k/TARN/wall/hot").text();
    assertThat(wall).contains("turn the tray", "past its best", "not safe, bin it", "Got it");
  }

  @Test
  void onlyWhatCanBeDoneIsOfferedAsTheNextPress() {
    try (Viewer viewer = Browser.open(Device.tablet())) {
      Page page = viewer.open(address(page("cold", BASE)));
      String next = (String) page.evaluate(GROUND);
      assertThat(viewer.open(address(page("cold", BLEND))).evaluate(GROUND)).isNotEqualTo(next);
    }
  }

  @Test
  void everyNameThatATubCanHaveIsInSightWhenItIsAsked() {
    List<String> names =
        List.of(".which .amount", ".which .names a:first-child", ".which .names a:last-child");
    for (String language : List.of("en", "es", "fr")) {
      for (Device screen : List.of(Device.tablet(), Device.tablet().sized(1024, 768))) {
        try (Viewer viewer = Browser.open(screen.speaking(language))) {
          Page page = viewer.open(address(page("cold", BASE)));
          assertThat(page.evaluate(InSight.HIDDEN, names))
              .as(language + " " + screen.width())
              .isEqualTo(List.of());
        }
      }
    }
  }

  private static final String GROUND =
      "getComputedStyle(document.querySelector('.acts .main-act .go')).backgroundColor";

  @Test
  void whatIsOpenedMostHasNoViolationByDay() {
    assertThat(look(Device.tablet(), List.of("on it, more open", "to do, a tub to read", "keys")))
        .isEmpty();
  }

  @Test
  @Tag("long")
  void noStateHasAViolationByDay() {
    assertThat(look(Device.tablet())).isEmpty();
  }

  @Test
  @Tag("long")
  void norHasAnyByNightUprightOrOnAPhone() {
    Map<String, List<String>> found = new TreeMap<>(look(Device.tablet().dark()));
    found.putAll(look(Device.tablet().sized(800, 1280)));
    found.putAll(look(Device.tablet().sized(1024, 768).dark()));
    found.putAll(look(Device.phone()));
    found.putAll(look(Device.phone().dark()));
    assertThat(found).isEmpty();
  }

  @Test
  @Tag("long")
  void norHasAnyInFrenchWhoseWordsAreTheLongest() {
    Map<String, List<String>> found = new TreeMap<>(look(Device.tablet().speaking("fr")));
    found.putAll(look(Device.phone().speaking("fr")));
    assertThat(found).isEmpty();
  }

  @Test
  void digitsOfTheWeightInHandAreNineMillimetresHighOfTimesAndCountsFiveAndWordsThreeAndAHalf() {
    Map<String, List<String>> found = new TreeMap<>();
    for (Device screen :
        List.of(
            Device.tablet(), Device.tablet().sized(800, 1280), Device.tablet().sized(1024, 768))) {
      double millimetres = INCHES * 25.4 / Math.hypot(screen.width(), screen.height());
      found.putAll(each(screen, page -> small(page, millimetres)));
    }
    assertThat(found).isEmpty();
  }

  /** What a hand goes by: weights, times, what it must not touch. */
  private static final List<String> HARM_OR_HASTE =
      List.of(
          ".weigh .w, .weigh .f, .weigh .u, .weigh .total, .weigh .beside, .which .amount",
          ".gives, .ready li, .task em, .amounts, #made",
          ".clock, .to, .pace, .task, .state, .serves, .waits, .note, .method",
          ".timer b, .timer small, .timer a, .calls, .called, .tank ~ p, .baths p, .baths small",
          ".allergen, .caution, .heed, .diets, .problem, .missed");

  @Test
  void weightsTimesAndAllergensStandOutSevenToOneByDay() {
    assertThat(faint(Device.tablet())).isEmpty();
  }

  @Test
  void andByNight() {
    assertThat(faint(Device.tablet().dark())).isEmpty();
  }

  /** Of every state what is read by less than AAA asks: 7 to 1, large or large bold type 4.5. */
  @SuppressWarnings("unchecked")
  private static Map<String, List<String>> faint(Device device) {
    String all = String.join(", ", HARM_OR_HASTE);
    return each(device, page -> (List<String>) page.evaluate(CONTRAST, all));
  }

  /** What is found in a state, by the screen and the state. */
  private static Map<String, List<String>> each(
      Device device, Function<Page, List<String>> finder) {
    Map<String, List<String>> all = new TreeMap<>();
    try (Viewer viewer = Browser.open(device)) {
      STATES.forEach(
          (name, way) -> {
            Page page = viewer.open(address(way.get(0)));
            way.stream().skip(1).forEach(press -> page.locator(press).first().click());
            List<String> found = finder.apply(page);
            if (!found.isEmpty()) {
              all.put(device.width() + " " + name, found);
            }
          });
    }
    return all;
  }

  /** Contrast by WCAG 2.2 of what is really painted: see-through colours laid over each other. */
  private static final String CONTRAST =
      """
      (selector) => {
        const parts = (text) => {
          const all = text.match(/[\\d.]+/g).map(Number);
          return {rgb: all.slice(0, 3), a: all.length > 3 ? all[3] : 1};
        };
        const over = (top, under) => top.rgb.map((c, i) => c * top.a + under[i] * (1 - top.a));
        const light = (rgb) => {
          const [r, g, b] = rgb.map((c) => c / 255)
            .map((c) => c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
          return 0.2126 * r + 0.7152 * g + 0.0722 * b;
        };
        const ground = (element) => {
          const all = [];
          for (let one = element; one; one = one.parentElement) {
            all.push(parts(getComputedStyle(one).backgroundColor));
          }
          return all.reverse().reduce((under, top) => over(top, under), [255, 255, 255]);
        };
        const told = new Set();
        for (const root of document.querySelectorAll(selector)) {
          for (const one of [root, ...root.querySelectorAll('*')]) {
            const own = one.value || [...one.childNodes]
              .filter((node) => node.nodeType === 3).map((node) => node.data).join('').trim();
            if (!own || !one.checkVisibility({opacityProperty: true})) {
              continue;
            }
            const style = getComputedStyle(one);
            const under = ground(one);
            const [a, b] = [light(over(parts(style.color), under)), light(under)];
            const ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
            const size = parseFloat(style.fontSize);
            const large = size >= 24 || (size >= 56 / 3 && Number(style.fontWeight) >= 700);
            if (ratio < (large ? 4.5 : 7)) {
              told.add(`${ratio.toFixed(2)} ${one.className || one.tagName}: ${own.slice(0, 40)}`);
            }
          }
        }
        return [...told];
      }
      """;

  /** What nobody needs from two metres: who is on shift, who called and when, which tablet. */
  private static final List<String> NEAR =
      List.of(".top .who span", ".calls .wanted span", ".tablet");

  /**
   * Texts that are lower than that, by the height of their digits, else of their capitals: the
   * weight in hand; other weights, and what times or counts; every other word but those for who
   * stands near.
   */
  @SuppressWarnings("unchecked")
  private static List<String> small(Page page, double millimetres) {
    String near = String.join(", ", NEAR);
    return (List<String>)
        page.evaluate(
            """
            ([millimetres, near]) => {
              const weight = '.weigh .now :is(.w, .f), .which .amount b';
              const counts = '.weigh :is(.w, .f), .clock *, .to b, .pace b, .timer [data-count], '
                + '.tray .wear b, .tray time, .ticks, .baths b, .count b, .task > :is(time, b), '
                + '.ready b, .diets b, #made, #so-far';
              const found = new Set();
              const canvas = document.createElement('canvas').getContext('2d');
              const high = (one, letter) => {
                const {fontFamily, fontSize, fontWeight} = getComputedStyle(one);
                canvas.font = `${fontWeight} 1000px ${fontFamily}`;
                const part = canvas.measureText(letter).actualBoundingBoxAscent / 1000;
                return part * parseFloat(fontSize) * millimetres;
              };
              const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
              const read = [...document.querySelectorAll('input')]
                .map((one) => [one, one.value || one.placeholder]);
              while (texts.nextNode()) {
                read.push([texts.currentNode.parentElement, texts.currentNode.data]);
              }
              for (const [one, said] of read) {
                const text = said.trim();
                if (!text || !one.checkVisibility() || one.closest('.out-of-sight')) {
                  continue;
                }
                const is = (selector) => one.matches(selector);
                const least = is(weight) ? 9 : is(counts) ? 5 : one.closest(near) ? 2.9 : 3.5;
                const tall = high(one, /^[+]?[0-9]/.test(text) ? '1' : 'H');
                if (tall < least) {
                  found.add(`${tall.toFixed(2)} ${one.className || one.tagName}: ${text}`);
                }
              }
              return [...found];
            }
            """,
            List.of(millimetres, near));
  }

  private static String address(String page) {
    return site.address() + "/k/TARN/" + page;
  }

  private static Map<String, List<String>> look(Device device) {
    return look(device, List.copyOf(STATES.keySet()));
  }

  private static Map<String, List<String>> look(Device device, List<String> states) {
    Map<String, List<String>> wrong = new TreeMap<>();
    try (Viewer viewer = Browser.open(device)) {
      states.forEach(
          name -> {
            List<String> way = STATES.getOrDefault(name, List.of());
            Page page = viewer.open(address(way.get(0)));
            way.stream().skip(1).forEach(press -> page.locator(press).first().click());
            List<String> found = new ArrayList<>();
            // At its end, where the bars that stay in reach cover nothing.
            page.evaluate("window.scrollTo(0, document.documentElement.scrollHeight)");
            viewer.axe().forEach(one -> found.add(one.toString()));
            Object over =
                page.evaluate(
                    "document.documentElement.scrollWidth - document.documentElement.clientWidth");
            if (((Number) over).intValue() > 0) {
              found.add("wider than the screen by " + over);
            }
            found.addAll(viewer.troubles());
            if (!found.isEmpty()) {
              wrong.put(
                  device.width() + " " + device.tone() + " " + device.locale() + " " + name, found);
            }
          });
    }
    return wrong;
  }
}
