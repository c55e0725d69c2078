package halfgram.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.Media;
import halfgram.prep.Task;
import halfgram.prep.TaskCode;
import halfgram.testkit.Browser;
import halfgram.testkit.Client;
import halfgram.testkit.Device;
import halfgram.testkit.Dots;
import halfgram.testkit.Site;
import halfgram.testkit.Viewer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The prep sheet as Chromium prints it, on both papers. */
@Timeout(120)
class PrintedIT {
  /** Within the margins of the sheet, at 96 dots an inch. */
  private static final int A4_WIDE = 188 * 96 * 10 / 254;

  private static final int LETTER_WIDE = 194 * 96 * 10 / 254;

  private static final Pattern BOX = Pattern.compile("/MediaBox \\[0 0 ([\\d.]+) ([\\d.]+)]");

  private static Site site;
  private static List<Task> cold;

  @BeforeAll
  static void open() {
    site = Site.demo();
    cold =
        site.wiring().plans().open(site.house(), Site.DAY, "test").sheet().tasks().stream()
            .filter(task -> task.station().equals("cold"))
            .toList();
  }

  @AfterAll
  static void close() {
    site.close();
  }

  @Test
  void itFitsEitherPaperInAsFewPagesAsItsTasksNeed() {
    try (Viewer viewer = Browser.open(Device.desk())) {
      Page page = viewer.open(site.address() + "/k/TARN/paper?station=cold");
      int a4 = pages(page, "A4", 596);
      int letter = pages(page, "Letter", 612);
      int tasks = cold.size();
      assertThat(a4).isBetween(tasks / 6, tasks / 2);
      assertThat(letter).isBetween(a4, a4 + 4);
      assertThat(viewer.troubles()).isEmpty();
    }
  }

  /** How many pages there are, all so many points wide. */
  private static int pages(Page page, String format, long wide) {
    byte[] pdf = page.pdf(new Page.PdfOptions().setFormat(format));
    Matcher box = BOX.matcher(new String(pdf, StandardCharsets.ISO_8859_1));
    int count = 0;
    while (box.find()) {
      assertThat(Math.round(Double.parseDouble(box.group(1)))).isEqualTo(wide);
      count++;
    }
    return count;
  }

  @Test
  void aPaperThatWasChosenIsTheOneThatIsPrinted() {
    try (Viewer viewer = Browser.open(Device.desk())) {
      Page page = viewer.open(site.address() + "/k/TARN/paper?station=cold&size=letter");
      byte[] pdf = page.pdf(new Page.PdfOptions().setFormat("A4").setPreferCSSPageSize(true));
      assertThat(new String(pdf, StandardCharsets.ISO_8859_1)).contains("/MediaBox [0 0 612 792]");
    }
  }

  @Test
  void nothingIsCutOffAtTheSide() {
    try (Viewer viewer = Browser.open(Device.desk())) {
      Page page = viewer.page();
      page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
      for (int wide : List.of(A4_WIDE, LETTER_WIDE)) {
        page.setViewportSize(wide, 1000);
        viewer.open(site.address() + "/k/TARN/paper");
        Object over =
            page.evaluate(
                """
                [...document.querySelectorAll('main *')]
                  .filter(one => one.getBoundingClientRect().right > innerWidth + 0.5)
                  .map(one => one.className + ': ' + one.textContent.trim().slice(0, 60))
                """);
        assertThat(over).isEqualTo(List.of());
      }
    }
  }

  @Test
  void nothingStandsBelowTheLastTaskThatCouldAskForAPageOfItsOwn() {
    try (Viewer viewer = Browser.open(Device.desk().sized(A4_WIDE, 1000))) {
      Page page = viewer.page();
      page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
      viewer.open(site.address() + "/k/TARN/paper?station=cold");
      Object below =
          page.evaluate(
              """
              document.documentElement.getBoundingClientRect().bottom
                - [...document.querySelectorAll('.task')].pop().getBoundingClientRect().bottom
              """);
      assertThat(((Number) below).doubleValue()).isBetween(-1.0, 1.0);
      assertThat(page.locator(".defer").count()).isEqualTo(1);
    }
  }

  @Test
  void itIsBlackOnWhiteByNightToo() {
    try (Viewer viewer = Browser.open(Device.desk().dark())) {
      Page page = viewer.open(site.address() + "/k/TARN/paper?station=cold");
      assertThat(page.evaluate("getComputedStyle(document.body).color")).isEqualTo("rgb(0, 0, 0)");
      assertThat(page.evaluate("getComputedStyle(document.body).backgroundColor"))
          .isEqualTo("rgb(255, 255, 255)");
    }
  }

  @Test
  void weightsAreElevenPointsAtLeastAndTheirPointsStandInOneLine() {
    try (Viewer viewer = Browser.open(Device.desk())) {
      Page page = viewer.open(site.address() + "/k/TARN/paper?station=cold");
      Object small =
          page.evaluate(
              """
              [...document.querySelectorAll('.weigh .whole, .weigh .fraction')]
                .filter(one => parseFloat(getComputedStyle(one).fontSize) < 11 * 96 / 72).length
              """);
      assertThat(small).isEqualTo(0);
      Object lines =
          page.evaluate(
              """
              Math.max(...[...document.querySelectorAll('.weigh')].map(table =>
                new Set([...table.querySelectorAll('.fraction')]
                  .map(one => Math.round(one.getBoundingClientRect().left))).size))
              """);
      assertThat(lines).isEqualTo(1);
    }
  }

  @Test
  void theDotsOfATaskLeadToIt() {
    try (Viewer viewer = Browser.open(Device.desk())) {
      Page page = viewer.open(site.address() + "/k/TARN/paper?station=cold");
      Task task = cold.get(0);
      Locator dots = page.locator("#c" + TaskCode.of(Site.DAY, task.id()) + " .qr");
      String address = Dots.read(dots.screenshot());
      assertThat(address).startsWith(site.address() + "/q/TARN/");
      page.navigate(address);
      assertThat(page.url()).contains("/k/TARN/task?").contains(Client.encoded(task.id()));
      assertThat(page.locator("h1").textContent()).isNotBlank();
    }
  }

  @Test
  void theDotsOfALabelLeadToItsTub() {
    String tub = site.wiring().stock().list(site.house()).get(0).lot().code();
    try (Viewer viewer = Browser.open(Device.desk())) {
      Page page = viewer.open(site.address() + "/k/TARN/label?tub=" + tub);
      page.navigate(Dots.read(page.locator(".qr").screenshot()));
      assertThat(page.url()).endsWith("/k/TARN/stock/" + tub);
    }
  }

  @Test
  void eachLabelOfABatchIsPrintedOnAPieceOfItsOwn() {
    try (Site batch = Site.demo();
        Viewer viewer = Browser.open(Device.desk())) {
      String base = "yoghurt-base/harvest-dinner/1/shear";
      batch.client().get("/k/TARN/wall/cold");
      String tick =
          "{'task':'%s','kind':'done','cook':'ines','amount':'5.9 kg','sequence':1,'device':'%s'}";
      assertThat(batch.script().post("ticks", tick.formatted(base, UUID.randomUUID())).status())
          .isEqualTo(201);
      Page page = viewer.open(batch.address() + "/k/TARN/label?task=" + Client.encoded(base));
      int labels = page.locator(".label").count();
      assertThat(labels).isGreaterThan(4);
      byte[] pdf = page.pdf(new Page.PdfOptions().setPreferCSSPageSize(true));
      Matcher box = BOX.matcher(new String(pdf, StandardCharsets.ISO_8859_1));
      assertThat(box.results().count()).isEqualTo(labels);
    }
  }
}
