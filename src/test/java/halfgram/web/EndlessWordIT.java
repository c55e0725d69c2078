package halfgram.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import halfgram.desk.Demo;
import halfgram.testkit.Browser;
import halfgram.testkit.Device;
import halfgram.testkit.Site;
import halfgram.testkit.Viewer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A word without a gap, as a slip of the hand or another language makes it, widens no page. */
@Timeout(120)
class EndlessWordIT {
  private static final String WORD = "Wurzelgemüsekraftbrühenreduktionsansatzverarbeitungsstation";

  /** Within the margins of a sheet, at 96 dots an inch. */
  private static final int A4_WIDE = 188 * 96 * 10 / 254;

  /** Where names stand in rows, beside other things or in tables. */
  private static final List<String> PAGES =
      List.of(
          "",
          "lanes",
          "crew",
          "wall",
          "wall/cold",
          "formulas/dill-oil",
          "log",
          "baths",
          "paper?station=cold",
          "paper/entry?station=cold",
          "count/cold");

  /** The task that is open on the wall has a problem, said in one word, on paper too. */
  private static void troubled(Site site) {
    String task =
        site.client().get("/k/TARN/wall/cold").all("name=\"task\" value=\"([^\"]*)\"").get(0);
    String tick =
        "{'task':'%s','kind':'problem','cook':'ines','note':'%s','sequence':1,'device':'%s'}"
            .formatted(task, WORD.repeat(6), UUID.randomUUID());
    assertThat(site.script().post("ticks", tick).status()).isEqualTo(201);
  }

  @Test
  void whereverItStands() {
    String book = new String(Demo.book(Site.DAY), StandardCharsets.UTF_8);
    for (String name :
        List.of("Harvest dinner", "Cold", "Dill oil", "Sheep-yoghurt base", "Ines")) {
      book = book.replace("\"" + name + "\"", "\"" + WORD + name.length() + "\"");
    }
    List<String> wide = new ArrayList<>();
    try (Site site = Site.empty();
        Viewer phone = Browser.open(Device.phone());
        Viewer tablet = Browser.open(Device.tablet())) {
      site.importBook(book.getBytes(StandardCharsets.UTF_8));
      site.setClock(Site.at("16:00"));
      troubled(site);
      for (Viewer viewer : List.of(phone, tablet)) {
        for (String path : PAGES) {
          Page page = viewer.open(site.address() + "/k/TARN/" + path);
          Object over =
              page.evaluate(
                  "document.documentElement.scrollWidth - document.documentElement.clientWidth");
          if (((Number) over).intValue() > 0) {
            wide.add(path + " by " + over);
          }
        }
      }
      assertThat(phone.page().content()).contains(WORD);
    }
    assertThat(wide).isEmpty();
  }

  /** Every code of a tub that stands on two lines, and how much too wide the page is. */
  private static final String BROKEN =
      """
      () => {
        const broken = [];
        const texts = document.createTreeWalker(document.querySelector("main"), 4);
        while (texts.nextNode()) {
          const text = texts.currentNode;
          for (const found of text.data.matchAll(/t-\\u2060?[0-9]{4}-[a-z0-9\\u2060-]+/g)) {
            const range = document.createRange();
            range.setStart(text, found.index);
            range.setEnd(text, found.index + found[0].length);
            if (new Set([...range.getClientRects()].map(at => at.top)).size > 1) {
              broken.push(found[0]);
            }
          }
        }
        const root = document.documentElement;
        return broken.join(" ") + "/" + (root.scrollWidth - root.clientWidth);
      }
      """;

  @Test
  void aTubsCodeStandsInOneLineOnPaperUnlessItIsLongerThanALine() {
    try (Site site = Site.demo();
        Viewer phone = Browser.open(Device.phone());
        Viewer sheet = Browser.open(Device.desk().sized(A4_WIDE, 1000));
        Viewer tablet = Browser.open(Device.tablet())) {
      String paper = site.address() + "/k/TARN/paper";
      assertThat(site.client().get("/k/TARN/paper").text()).contains("from tub t-1203-stock-1");
      for (Viewer viewer : List.of(phone, sheet, tablet)) {
        assertThat(viewer.open(paper).evaluate(BROKEN)).isEqualTo("/0");
      }
    }
  }

  @Test
  void anEndlessCodeWidensNoPaper() {
    String code = "t-1203-" + "stock".repeat(6);
    String book =
        new String(Demo.book(Site.DAY), StandardCharsets.UTF_8)
            .replace("\"t-1203-stock-1\"", "\"" + code + "\"");
    try (Site site = Site.empty();
        Viewer phone = Browser.open(Device.phone())) {
      site.importBook(book.getBytes(StandardCharsets.UTF_8));
      Page page = phone.open(site.address() + "/k/TARN/paper");
      assertThat(page.content()).contains(code);
      assertThat((String) page.evaluate(BROKEN)).endsWith("/0");
    }
  }
}
