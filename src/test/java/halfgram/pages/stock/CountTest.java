package halfgram.pages.stock;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.desk.Tablets;
import halfgram.lot.Tub;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The count where a tablet shows several stations, or the whole kitchen. */
class CountTest {
  private Site site;

  @BeforeEach
  void open() {
    site = Site.demo();
    site.client().get("/k/TARN/");
    site.passTime(Duration.ofHours(20));
    site.client().get("/k/TARN/");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void aWallOfSeveralStationsLeadsToTheirCountOneAfterAnother() {
    Client tablet = tablet("cold", "pastry");
    assertThat(tablet.get("/k/TARN/wall/cold.pastry").body())
        .contains("href=\"/k/TARN/count/cold.pastry\"");
    Answer count = tablet.get("/k/TARN/count/cold.pastry");
    assertThat(count.text()).startsWith("Count Cold, Pastry");
    List<String> heads = count.all("<h2 id=\"at-([a-z]+)\"");
    assertThat(heads).containsExactly("cold", "pastry");
    assertThat(count.all("id=\"count-([^\"]+)\"")).containsExactlyElementsOf(tubs(heads));
    assertThat(tablet.get("/k/TARN/count/cold.hot").status()).isEqualTo(403);
    assertThat(tablet.get("/k/TARN/count/all").status()).isEqualTo(403);
  }

  @Test
  void aTabletOfTheWholeKitchenCountsAllOfIt() {
    Client tablet = tablet();
    assertThat(tablet.get("/k/TARN/wall/all").body()).contains("href=\"/k/TARN/count/all\"");
    Answer count = tablet.get("/k/TARN/count/all");
    assertThat(count.text()).startsWith("Count all stations");
    assertThat(count.all("id=\"count-([^\"]+)\""))
        .containsExactlyElementsOf(tubs(List.copyOf(site.house().book().stations().keySet())));
  }

  @Test
  void whatIsCountedLeadsBackToAllOfThemAndAFaultStandsAtItsTub() {
    Client tablet = tablet("cold", "pastry");
    Tub tub = all("pastry").get(0);
    String code = tub.lot().code();
    String post = "/k/TARN/stock/" + code + "/count";
    tablet.get("/k/TARN/count/cold.pastry");
    Answer wrong = tablet.post(post, "amount", "some", "back", "count/cold.pastry");
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.body())
        .contains("id=\"fault-" + code + "\"", "value=\"some\"", "id=\"at-cold\"");
    Answer right = tablet.post(post, "amount", "1", "back", "count/cold.pastry");
    assertThat(right.header("location")).endsWith("/k/TARN/count/cold.pastry");
    Answer astray = tablet.post(post, "amount", "1", "back", "count/cold.nowhere");
    assertThat(astray.header("location")).doesNotContain("nowhere");
    assertThat(site.client().get("/k/TARN/count/cold.nowhere").status()).isEqualTo(404);
  }

  @Test
  void aCountOfMoreThanWasEverInATubIsAskedAboutAtItsTub() {
    Client tablet = tablet("cold", "pastry");
    String code = all("pastry").get(0).lot().code();
    String post = "/k/TARN/stock/" + code + "/count";
    tablet.get("/k/TARN/count/cold.pastry");
    Answer asked = tablet.post(post, "amount", "4000", "back", "count/cold.pastry");
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.body())
        .contains("id=\"fault-" + code + "\"", "value=\"4000\"", "id=\"sure-" + code + "\"");
    assertThat(asked.all("(name=\"sure\")")).hasSize(1);
    Answer sure = tablet.post(post, "amount", "4000", "back", "count/cold.pastry", "sure", "yes");
    assertThat(sure.header("location")).endsWith("/k/TARN/count/cold.pastry");
  }

  /** Codes of tubs, those to count first, station by station. */
  private List<String> tubs(List<String> stations) {
    return stations.stream()
        .flatMap(station -> all(station).stream())
        .map(tub -> tub.lot().code())
        .toList();
  }

  private List<Tub> all(String station) {
    List<Tub> there =
        site.wiring().stock().listToCount(site.house()).stream()
            .filter(tub -> CountView.station(site.house(), tub).equals(station))
            .toList();
    return java.util.stream.Stream.concat(
            there.stream().filter(Tub::assumed), there.stream().filter(tub -> !tub.assumed()))
        .toList();
  }

  private Client tablet(String... stations) {
    Tablets tablets = new Tablets(site.wiring().desk(), site.wiring().signing());
    String code = tablets.offer(site.house(), "Wall 1", List.of(stations), "test");
    String token = tablets.pair(code, "here").orElseThrow().token();
    return site.stranger().withCookie("tablet", token);
  }
}
