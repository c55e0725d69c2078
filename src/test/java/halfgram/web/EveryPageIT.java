package halfgram.web;

import static org.assertj.core.api.Assertions.assertThat;

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
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * Every page as Chromium shows it: no violation of WCAG 2.2 AA that the accessibility engine finds,
 * nothing on the console, nothing that is not there; pictures of each in target/screens.
 */
@Timeout(300)
class EveryPageIT {
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
        task(),
        "kind",
        "PROBLEM",
        "note",
        "the whisk is gone",
        "sequence",
        String.valueOf(Site.sequence()));
  }

  @AfterAll
  static void close() {
    site.close();
  }

  @Test
  void noPageHasAViolationByDay() {
    assertThat(look(Device.desk(), pages())).isEmpty();
  }

  @Test
  void todayAndTheWallHaveNoneByNightAndOnAPhone() {
    List<String> most = List.of("", "wall/cold", "events/harvest-dinner", "stock", "pars");
    Map<String, List<String>> found = new TreeMap<>(look(Device.tablet().dark(), most));
    found.putAll(look(Device.phone(), most));
    assertThat(found).isEmpty();
  }

  /** What is wrong, by page. */
  private static Map<String, List<String>> look(Device device, List<String> pages) {
    Map<String, List<String>> wrong = new TreeMap<>();
    try (Viewer viewer = Browser.open(device)) {
      for (String page : pages) {
        viewer.open(site.address() + "/k/TARN/" + page);
        viewer.wholeScreenshot(name(device, page));
        List<String> found = new ArrayList<>();
        for (Violation violation : viewer.axe()) {
          found.add(violation.toString());
        }
        if (!found.isEmpty()) {
          wrong.put(device + " " + page, found);
        }
      }
      if (!viewer.troubles().isEmpty()) {
        wrong.put(device + " console", viewer.troubles());
      }
    }
    return wrong;
  }

  private static List<String> pages() {
    String task = URLEncoder.encode(task(), StandardCharsets.UTF_8);
    String tub = site.wiring().stock().list(site.house()).get(0).lot().code();
    return List.of(
        "",
        "?by=start",
        "?by=service",
        "?date=2026-12-06",
        "?again=yes",
        "task?id=" + task,
        "why?plan=2026-12-05/1&path=covers/harvest-dinner/prepared",
        "wall",
        "wall/cold",
        "wall/all",
        "wall/cold/who",
        "label?tub=" + tub,
        "formulas",
        "formulas/yoghurt-base",
        "formulas/yoghurt-base/versions",
        "formulas/yoghurt-base/edit",
        "formulas/new",
        "events",
        "events/harvest-dinner",
        "events/harvest-dinner/edit",
        "events/new",
        "pars",
        "stock",
        "stock?by=component",
        "stock/" + tub,
        "stock/new",
        "log");
  }

  private static String task() {
    return site.wiring().plans().open(site.house(), Site.DAY, "t").sheet().tasks().stream()
        .filter(task -> task.version().formula().equals("yoghurt-base"))
        .findFirst()
        .orElseThrow()
        .id();
  }

  private static String name(Device device, String page) {
    return (device + "-" + (page.isEmpty() ? "today" : page)).replaceAll("[^a-z0-9-]+", "-");
  }
}
