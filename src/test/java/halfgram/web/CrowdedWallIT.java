package halfgram.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.microsoft.playwright.Page;
import halfgram.book.BookStore;
import halfgram.desk.Demo;
import halfgram.testkit.Browser;
import halfgram.testkit.Client;
import halfgram.testkit.Device;
import halfgram.testkit.Site;
import halfgram.testkit.Ticks;
import halfgram.testkit.Viewer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A station with all the work of a day, named in the longest words, with many timers up. */
@Timeout(300)
class CrowdedWallIT {
  private static final List<String> LONG =
      List.of(
          "Anticonstitutionnellement",
          "Rafraîchissement-cryoconcentré",
          "Hypercaramélisation prolongée");
  private static final int SHORT_TEXT = 40;
  private static final int ONE_ROW = 120;

  private static final List<Device> SCREENS =
      List.of(
          Device.tablet(),
          Device.tablet().sized(1024, 768),
          Device.tablet().sized(800, 1280),
          Device.phone());

  private static final String STOCK = "pea-stock/bar.2026-12-05/1/simmer";

  /** What is made of something with allergens, and has cautions; of one the tub is read first. */
  private static final List<String> WEIGHED =
      List.of(
          "yoghurt-base/harvest-dinner/1/shear",
          "croquette-mix/terrace/1/mix",
          "mushroom-cream/bar.2026-12-05/1/blend");

  private static Site site;
  private static Ticks ticks;
  private static int words;
  private static String done;

  @BeforeAll
  static void open() {
    site = Site.empty();
    site.importBook(book().toString().getBytes(StandardCharsets.UTF_8));
    site.setClock(Site.at("10:00"));
    site.client().get("/k/TARN/wall/cold");
    ticks = new Ticks(site, "ines");
    ticks.tick("start", "parsnip-puree/lunch.2026-12-05/1/cook", "");
    ticks.tick(
        "timed",
        "parsnip-puree/lunch.2026-12-05/1/cook",
        "'minutes': 1, 'note': 'tourner la plaque'");
    ticks.tick("done", "char-portions/lunch.2026-12-05/1/brine", "'sure': true");
    done = ticks.tick("done", STOCK, "'sure': true");
    ticks.tick("called", "pea-base/harvest-dinner/1/shear", "'note': 'assez épais ?'");
    site.setClock(Site.at("11:10"));
  }

  @AfterAll
  static void close() {
    site.close();
  }

  /** The demo's book with every step at one station and every French name made longer. */
  private static ObjectNode book() {
    ObjectNode book =
        (ObjectNode) BookStore.parse(new String(Demo.book(Site.DAY), StandardCharsets.UTF_8));
    book.path("formulas")
        .forEach(
            formula -> {
              lengthen(formula.path("name"));
              for (JsonNode version : formula.path("versions")) {
                for (JsonNode step : version.path("steps")) {
                  ((ObjectNode) step).put("station", "cold");
                  lengthen(step.path("name"));
                }
              }
            });
    book.path("ingredients").forEach(ingredient -> lengthen(ingredient.path("name")));
    book.path("stations").forEach(station -> lengthen(station.path("name")));
    book.path("people").forEach(one -> ((ObjectNode) one).putArray("stations").add("cold"));
    return book;
  }

  private static void lengthen(JsonNode name) {
    String french = name.path("fr").asText();
    if (!french.isEmpty() && french.length() < SHORT_TEXT) {
      ((ObjectNode) name).put("fr", LONG.get(words++ % LONG.size()) + " de " + french);
    }
  }

  @Test
  void farTasksAndMostOfTheTimersThatAreUpWaitBehindAPress() {
    String wall = site.client().withCookie("language", "fr").get("/k/TARN/wall/cold").text();
    assertThat(wall)
        .contains("sur 79 faites", "autres minuteurs\u00a0: 4")
        .containsPattern("échus\u00a0: [^.]+, ")
        .containsPattern("Plus tard\u00a0: [0-9]{2}")
        .containsPattern("Ce soir, pour demain\u00a0: [0-9]");
  }

  @Test
  void nothingIsCutWideOrLaidOverAnotherByDay() {
    assertThat(look(SCREENS)).isEmpty();
  }

  @Test
  void theBarOfATaskCountedInPiecesIsOneRowWithItsNumberWhole() {
    String task = "?task=" + Client.encoded("trout-slices/harvest-dinner/1/slice");
    Map<String, String> pieces = Map.of("en", "piece", "fr", "pc", "es", "pz");
    for (Device screen : SCREENS.subList(0, 3)) {
      pieces.forEach(
          (language, word) -> {
            try (Viewer viewer = Browser.open(screen.speaking(language))) {
              Page page = viewer.open(site.address() + "/k/TARN/wall/cold" + task);
              assertThat(page.locator("#made").inputValue()).contains(word);
              assertThat((List<?>) page.evaluate(LOOK, screen.width())).isEmpty();
              assertThat(page.locator(".acts").boundingBox().height).isLessThan(ONE_ROW);
              assertThat((List<?>) page.evaluate(NEAR)).isEmpty();
            }
          });
    }
  }

  @Test
  void norOfTheTimersThatWaitBehindAPress() {
    for (Device screen : SCREENS) {
      try (Viewer viewer = Browser.open(screen.speaking("fr"))) {
        Page page = viewer.open(site.address() + "/k/TARN/wall/cold");
        page.locator("#far summary").tap();
        assertThat((List<?>) page.evaluate(LOOK, screen.width())).as("on " + screen).isEmpty();
      }
    }
  }

  @Test
  void norByNight() {
    assertThat(look(SCREENS.stream().map(Device::dark).toList())).isEmpty();
  }

  @Test
  void theWayBackTheTaskAndItsWarningsAreInSightThoughAlarmsRingAndTheChefIsWanted() {
    for (Device screen : SCREENS) {
      try (Viewer viewer = Browser.open(screen)) {
        Page page = viewer.open(wall(WEIGHED.get(0)));
        assertThat(page.evaluate(InSight.HIDDEN, TOLD)).as("on " + screen).isEqualTo(List.of());
        assertThat(viewer.troubles()).isEmpty();
      }
    }
  }

  @Test
  void theChefIsCalledInSightOfTheWeightThoughAlarmsRing() {
    List<String> told =
        List.of(
            ".calls .wanted button",
            ".hand h1",
            ".hand .allergen",
            ".weigh .now b",
            ".timer .does button");
    for (Device screen : SCREENS.subList(0, 3)) {
      for (String language : List.of("en", "fr")) {
        try (Viewer viewer = Browser.open(screen.speaking(language))) {
          for (String task : WEIGHED) {
            String asked = "/k/TARN/wall/cold?task=" + Client.encoded(task);
            Page page = viewer.open(site.address() + asked);
            assertThat(page.evaluate(InSight.HIDDEN, told))
                .as(language + " " + screen.width() + " " + task)
                .isEqualTo(List.of());
          }
        }
      }
    }
  }

  @Test
  void whatIsOpenedInTheBarIsClosedThereAndTheChefCalledThoughTheTaskIsNamedAboveIt() {
    for (Device screen : SCREENS) {
      try (Viewer viewer = Browser.open(screen.speaking("fr"))) {
        Page page = viewer.open(site.address() + "/k/TARN/wall/cold");
        page.locator("#more summary").tap();
        assertThat(
                page.evaluate(
                    InSight.HIDDEN, List.of(".hand h1", "#more summary", ".aloud > button")))
            .as("on " + screen)
            .isEqualTo(List.of());
      }
    }
  }

  @Test
  void theKeysOfTheHeadStandBesideOneAnotherThoughNobodyIsNamedYet() {
    for (Device screen : SCREENS.subList(0, 3)) {
      try (Viewer viewer = Browser.open(screen.speaking("fr"))) {
        Page page = viewer.open(site.address() + "/k/TARN/wall/cold");
        page.locator(".cook .wipe").waitFor();
        double who = page.locator(".cook .button").boundingBox().y;
        assertThat(page.locator(".cook .wipe").boundingBox().y).as("on " + screen).isEqualTo(who);
      }
    }
  }

  /** Just after the stock was done. */
  private static String wall(String task) {
    String asked = "?task=" + Client.encoded(task) + "&done=" + Client.encoded(STOCK);
    return site.address() + "/k/TARN/wall/cold" + asked + "&tick=" + done;
  }

  private static final List<String> TOLD =
      List.of(
          ".after button", ".hand h1", ".hand .state", ".hand .allergen", ".timer .does button");

  @Test
  void theNumberThatTheHandNeedsNextIsInSightTooInTheLongestWords() {
    seeNumber(List.of("fr"));
  }

  @Test
  @Tag("long")
  void andInTheOtherLanguages() {
    seeNumber(List.of("en", "es"));
  }

  private static void seeNumber(List<String> languages) {
    List<String> told = new ArrayList<>(TOLD);
    told.addAll(List.of(".hand .caution", ".weigh .now b"));
    for (String language : languages) {
      for (Device screen : SCREENS.subList(0, 3)) {
        try (Viewer viewer = Browser.open(screen.speaking(language))) {
          for (String task : WEIGHED) {
            Page page = viewer.open(wall(task));
            assertThat(page.locator(".calls .wanted").count()).isPositive();
            String where = language + " " + screen.width() + " " + task;
            assertThat(page.evaluate(InSight.HIDDEN, told)).as(where).isEqualTo(List.of());
          }
        }
      }
    }
  }

  @Test
  void soItIsWhenABarGrowsBeforeThePageIsToldThatItWentThere() {
    try (Viewer viewer = Browser.open(Device.tablet())) {
      Page page = viewer.open(wall(WEIGHED.get(1)));
      assertThat(page.evaluate(GROWN)).as("room lost").isEqualTo(true);
      assertThat(page.evaluate(InSight.HIDDEN, List.of(".weigh .now button"))).isEqualTo(List.of());
    }
  }

  /** A bar is made taller, as by letters that come late, and the page told of a scroll at once. */
  private static final String GROWN =
      """
      () => new Promise((done) => {
        const bar = document.querySelector('.acts');
        const before = bar.offsetHeight;
        bar.style.minHeight = `${before + 40}px`;
        dispatchEvent(new Event('scroll'));
        setTimeout(() => requestAnimationFrame(() => requestAnimationFrame(
          () => done(bar.offsetHeight > before))));
      })
      """;

  @Test
  void soIsEveryOneAfterItUntilSomebodyScrollsAway() {
    String mix = "rye-crisp/terrace/1/mix";
    try (Viewer viewer = Browser.open(Device.tablet().sized(1024, 768))) {
      Page page = viewer.open(site.address() + "/k/TARN/wall/cold/who");
      page.locator("[value=ines]").first().click();
      page.waitForURL(Pattern.compile(".*/wall/cold$").asPredicate());
      page.navigate(wall(mix));
      for (int weighed = 1; weighed < 4; weighed++) {
        page.locator(".weigh .now button").click();
        assertThat(page.locator(".weigh .done")).hasCount(weighed);
        assertThat(page.evaluate(InSight.HIDDEN, List.of(".weigh .now b"))).isEqualTo(List.of());
      }
      page.evaluate("() => new Promise((done) => { onscroll = done; scrollTo(0, 0); })");
      ticks.tick("note", mix, "'note': 'lu'");
      assertThat(page.locator(".noted")).hasCount(1);
      assertThat(page.evaluate("scrollY")).isEqualTo(0);
      assertThat(page.evaluate(InSight.HIDDEN, List.of(".weigh .now b"))).isNotEqualTo(List.of());
    }
  }

  @SuppressWarnings("unchecked")
  private static Map<String, List<String>> look(List<Device> screens) {
    Map<String, List<String>> wrong = new TreeMap<>();
    for (Device screen : screens) {
      try (Viewer viewer = Browser.open(screen.speaking("fr"))) {
        Page page = viewer.open(site.address() + "/k/TARN/wall/cold");
        List<String> found = new ArrayList<>((List<String>) page.evaluate(LOOK, screen.width()));
        found.addAll(viewer.troubles());
        if (!found.isEmpty()) {
          wrong.put(screen.width() + " " + screen.tone(), found);
        }
      }
    }
    return wrong;
  }

  /** What is pressed in the bar with less than 16 px to the next. */
  static final String NEAR =
      """
      () => {
        const keys = [...document.querySelectorAll(
          '.acts :is(button, summary, input:not([type=hidden]))')]
          .filter((one) => one.checkVisibility()).map((one) => [one, one.getBoundingClientRect()]);
        return keys.flatMap(([a, to], i) => keys.slice(i + 1)
          .filter(([, of]) => Math.max(to.left - of.right, of.left - to.right,
            to.top - of.bottom, of.top - to.bottom) < 15.9)
          .map(([b]) => `${a.id || a.textContent} to ${b.id || b.textContent}`));
      }
      """;

  private static final String LOOK =
      """
      (width) => {
        const found = [];
        const all = (selector, root = document) => [...root.querySelectorAll(selector)]
          .filter((one) => one.checkVisibility());
        const text = (one) => one.textContent.trim().slice(0, 30);
        const said = (one) => `${one.className || one.tagName}: ${text(one)}`;
        const box = (one) => one.getBoundingClientRect();
        const wide = document.documentElement.scrollWidth;
        if (wide > width) {
          found.push(`wider than the screen by ${wide - width}`);
        }
        all('.wall *').filter((one) => box(one).right > width + 1)
          .forEach((one) => found.push(`over the edge: ${said(one)}`));
        const [timers] = all('.timers');
        if (box(timers).height > innerHeight / 2 + 1) {
          found.push(`the timers hide ${box(timers).height} of ${innerHeight}`);
        }
        // What stands beside each other: the parts of the head, acts, timers, rows of lists.
        const over = (a, b) => a.left < b.right - 1 && b.left < a.right - 1
          && a.top < b.bottom - 1 && b.top < a.bottom - 1;
        const rows = '.top, .cook, .acts, .timers, .timer, .does, .calls li, .task';
        all(`${rows}, .diets p:has(b)`).forEach((root) => {
          const parts = all(':scope > *', root).filter((one) => one.tagName !== 'PROGRESS');
          parts.forEach((a, i) => parts.slice(i + 1).filter((b) => over(box(a), box(b)))
            .forEach((b) => found.push(`${said(a)} over ${said(b)}`)));
        });
        // Numbers and what is pressed are whole.
        const pressed = '.acts button, .acts summary, .timer button';
        const numbers = '.clock time, .to b, .pace b, .timer b, .weigh b, .task :is(time, em, b), '
          + '.ready b, .diets b';
        all(`${numbers}, ${pressed}, .cook .button, #made`)
          .filter((one) => one.scrollWidth > one.clientWidth + 1 && one.clientWidth > 0)
          .forEach((one) => found.push(`cut: ${said(one)}`));
        all('.to b, .clock time').forEach((one) => {
          if (box(one).right > box(one.parentElement).right + 1) {
            found.push(`cut by what it stands in: ${said(one)}`);
          }
        });
        all('.diets strong').filter((one) => box(one).right > box(one.closest('.diets')).right + 1)
          .forEach((one) => found.push(`out of its list: ${said(one)}`));
        const type = (one) => parseFloat(getComputedStyle(one).fontSize);
        all('.clock time').filter((one) => box(one).height > 1.5 * type(one))
          .forEach((one) => found.push(`in two lines: ${said(one)}`));
        all('.timer').forEach((one) => all('button, .what', one)
          .filter((part) => box(part).bottom > box(one).bottom + 1)
          .forEach((part) => found.push(`out of its timer: ${said(part)}`)));
        all('.timer .what').filter((one) => box(one).width < 120)
          .forEach((one) => found.push(`too narrow to read: ${said(one)}`));
        const least = width > 640 ? 80 : 48;
        all(`${pressed}, .task`).filter((one) => box(one).height < least - 1)
          .forEach((one) => found.push(`too small to press: ${said(one)} ${box(one).height}`));
        return found;
      }
      """;
}
