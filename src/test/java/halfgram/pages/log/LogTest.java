package halfgram.pages.log;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.measure.Amount;
import halfgram.prep.Task;
import halfgram.testkit.Client;
import halfgram.testkit.Site;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The log: everything that happened, newest first, in words. */
class LogTest {
  private Site site;
  private Client client;

  @BeforeEach
  void open() {
    site = Site.demo();
    client = site.client();
    client.get("/k/TARN/wall/cold");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void ticksAndChangesStandInTheOrderTheyHappened() {
    happen();
    List<String> said = client.get("/k/TARN/log").all("<b>([^<]+)</b>");
    assertThat(said)
        .containsExactly("Tub", "problem", "started", "Plan in force", "Book brought in");
    assertThat(client.get("/k/TARN/log").text())
        .contains("the whisk is gone", "Ines", "counted", "plan 1 of Sat 5 Dec");
  }

  @Test
  void itIsNarrowedByWhatAndByWho() {
    happen();
    assertThat(client.get("/k/TARN/log?kind=stock").all("<b>([^<]+)</b>")).containsExactly("Tub");
    assertThat(client.get("/k/TARN/log?who=ines&kind=tick").all("<b>([^<]+)</b>"))
        .containsExactly("problem", "started");
    assertThat(client.get("/k/TARN/log?who=lorcan").text()).contains("Nothing like that");
  }

  @Test
  void whatWasWeighedStandsAsFineAsItsScaleReads() {
    client.post("/k/TARN/wall/cook", "station", "cold", "person", "ines");
    String path = "weigh/yoghurt-base/harvest-dinner/1/shear/salt/mass";
    Client.Answer weighed =
        client.post(
            "/k/TARN/tick",
            "station",
            "cold",
            "task",
            "yoghurt-base/harvest-dinner/1/shear",
            "kind",
            "WEIGHED",
            "line",
            path,
            "sequence",
            String.valueOf(Site.sequence()));
    assertThat(weighed.status()).as(weighed.text()).isEqualTo(303);
    assertThat(client.get("/k/TARN/log?kind=tick").text())
        .containsPattern("fine salt, \\d+\\.\\d\\d g");
  }

  @Test
  void olderGoesOnWhereThePageEnds() {
    Task task = site.wiring().plans().open(site.house(), Site.DAY, "t").sheet().tasks().get(0);
    client.post("/k/TARN/wall/cook", "station", "cold", "person", "ines");
    for (int i = 0; i < 90; i++) {
      tick(task, "PROBLEM", "n" + i);
    }
    Client.Answer first = client.get("/k/TARN/log");
    assertThat(first.all("<b>(problem)</b>")).hasSize(80);
    String older = first.all("href=\"([^\"]*log\\?before=[^\"]*)\"").get(0);
    assertThat(client.get(older).all("<b>(problem)</b>")).hasSize(10);
  }

  @Test
  void theFirstPlanIsNobodysAndAServiceHasItsName() {
    client.post("/k/TARN/wall/cook", "station", "cold", "person", "ines");
    client.post(
        "/k/TARN/service/harvest-dinner",
        "kind",
        "READY",
        "course",
        "first",
        "station",
        "cold",
        "sequence",
        String.valueOf(Site.sequence()),
        "back",
        "wall/cold");
    assertThat(client.get("/k/TARN/log?kind=service").text())
        .contains("Service Harvest dinner", "Ines");
    assertThat(client.get("/k/TARN/log?kind=plan").text()).contains("the kitchen's clock");
    assertThat(client.get("/k/TARN/").text()).contains("made when the day was opened");
  }

  private void happen() {
    Task task = site.wiring().plans().open(site.house(), Site.DAY, "t").sheet().tasks().get(0);
    client.post("/k/TARN/wall/cook", "station", "cold", "person", "ines");
    tick(task, "START", "");
    tick(task, "PROBLEM", "the whisk is gone");
    String tub = site.wiring().stock().list(site.house()).get(0).lot().code();
    site.wiring().stock().count(site.house(), tub, Amount.grams(1), "sixten");
  }

  private void tick(Task task, String kind, String note) {
    Client.Answer answer =
        client.post(
            "/k/TARN/tick",
            "station",
            "all",
            "task",
            task.id(),
            "kind",
            kind,
            "note",
            note,
            "sequence",
            String.valueOf(Site.sequence()));
    assertThat(answer.status()).isEqualTo(303);
  }
}
