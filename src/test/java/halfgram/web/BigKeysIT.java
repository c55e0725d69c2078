package halfgram.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import halfgram.testkit.Browser;
import halfgram.testkit.Client;
import halfgram.testkit.Device;
import halfgram.testkit.Site;
import halfgram.testkit.Ticks;
import halfgram.testkit.Viewer;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The big keys of the wall while an alarm rings and a chef is wanted. */
@Timeout(120)
class BigKeysIT {
  private static final String COOK = "parsnip-puree/lunch.2026-12-05/1/cook";

  /** One that gives grams, one that gives pieces. */
  private static final List<String> TASKS =
      List.of("yoghurt-base/harvest-dinner/1/shear", "trout-slices/harvest-dinner/1/slice");

  private static final List<Device> SCREENS =
      List.of(Device.tablet(), Device.tablet().sized(1024, 768), Device.tablet().sized(800, 1280));

  private static Site site;

  @BeforeAll
  static void open() {
    site = Site.demo();
    Ticks ticks = new Ticks(site, "ines");
    site.client().get("/k/TARN/wall/cold");
    site.setClock(Site.at("10:00"));
    ticks.tick("start", COOK, "");
    ticks.tick("timed", COOK, "'minutes': 1, 'note': 'turn the tray'");
    ticks.tick("called", "pea-base/harvest-dinner/1/shear", "'note': 'is this thick enough?'");
    site.setClock(Site.at("10:20"));
  }

  @AfterAll
  static void close() {
    site.close();
  }

  @Test
  void areInSightWithTheNumberAndWhatIsDoneWithIt() {
    for (String language : List.of("en", "es", "fr")) {
      for (Device screen : SCREENS) {
        try (Viewer viewer = Browser.open(screen.speaking(language))) {
          for (String task : TASKS) {
            Page page =
                viewer.open(site.address() + "/k/TARN/wall/cold?task=" + Client.encoded(task));
            String where = language + " " + screen.width() + " " + task;
            page.locator("#made").tap();
            assertThat(page.evaluate(InSight.HIDDEN, TYPED)).as(where).isEqualTo(List.of());
            assertThat(page.evaluate(ROWS)).as(where).isEqualTo(List.of("789", "456", "123"));
            assertThat(page.evaluate(CrowdedWallIT.NEAR)).as(where).isEqualTo(List.of());
            page.locator("#part summary").tap();
            page.locator("#so-far").tap();
            assertThat(page.evaluate(InSight.HIDDEN, TYPED_SO_FAR)).as(where).isEqualTo(List.of());
            assertThat(page.evaluate(CrowdedWallIT.NEAR)).as(where).isEqualTo(List.of());
            assertThat(page.evaluate(ROWS)).as(where).isEqualTo(List.of("789", "456", "123"));
          }
        }
      }
    }
  }

  @Test
  void stayWhereTheyAreTappedOnAPhone() {
    try (Viewer viewer = Browser.open(Device.phone())) {
      for (String task : TASKS) {
        Page page = viewer.open(site.address() + "/k/TARN/wall/cold?task=" + Client.encoded(task));
        page.locator("#made").tap();
        List<String> told = List.of("#made", ".keys .digit:first-child");
        assertThat(page.evaluate(InSight.HIDDEN, told)).as(task).isEqualTo(List.of());
      }
    }
  }

  @Test
  void thoseBehindMoreAreOfOneSizeOnAPhoneAndTheFieldAsLowAsThey() {
    try (Viewer viewer = Browser.open(Device.phone())) {
      Page page =
          viewer.open(site.address() + "/k/TARN/wall/cold?task=" + Client.encoded(TASKS.get(0)));
      double go = page.locator(".main-act .go").boundingBox().height;
      assertThat(page.locator("#made").boundingBox().height).isLessThan(go * 1.2);
      page.locator("#more summary").tap();
      assertThat(page.evaluate(SIZE, "#trouble summary"))
          .isEqualTo(page.evaluate(SIZE, "#more summary"));
      var minutes = page.locator(".minutes button");
      assertThat(minutes.nth(2).boundingBox().y).isEqualTo(minutes.first().boundingBox().y);
    }
  }

  private static final String SIZE =
      "(one) => getComputedStyle(document.querySelector(one)).fontSize";

  /** The digits but nought as they stand in rows, from the left. */
  private static final String ROWS =
      """
      () => {
        const rows = {};
        [...document.querySelectorAll('.keys .digit')].slice(0, 9).forEach((one) => {
          const {left, bottom} = one.getBoundingClientRect();
          (rows[Math.round(bottom)] ??= []).push([left, one.textContent]);
        });
        return Object.keys(rows).sort((a, b) => a - b)
          .map((row) => rows[row].sort((a, b) => a[0] - b[0]).map((one) => one[1]).join(''));
      }
      """;

  private static final List<String> TYPED_SO_FAR =
      List.of(
          "#so-far",
          ".keys .digit:first-child",
          ".keys .digit:last-child, .keys .unit",
          "#part form > button",
          ".hand h1",
          ".hand .allergen");

  private static final List<String> TYPED =
      List.of(
          "#made",
          ".keys .digit:first-child",
          ".keys .digit:last-child, .keys .unit",
          ".main-act .go",
          ".hand h1",
          ".hand .allergen",
          ".hand .caution");
}
