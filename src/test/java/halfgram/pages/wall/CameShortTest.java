package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.desk.InForce;
import halfgram.prep.Task;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A batch of which less comes than is to be taken of it: who goes without is told at once. */
class CameShortTest {
  private static final String WALL = "/k/TARN/wall/cold";
  private static final String SAID = "Sheep-yoghurt base: 2000 g came of ";

  private Site site;
  private Client client;

  @BeforeEach
  void open() {
    site = Site.demo();
    client = site.client();
    client.get(WALL);
    client.post("/k/TARN/wall/cook", "station", "cold", "person", "ines");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void whoeverPressesDoneIsToldAndSoAreTheOfficeAndWhoTakesOfIt() {
    Task base = base();
    Answer done = press(base, "DONE", "amount", "2 kg");
    assertThat(client.get(done.header("location")).text())
        .contains("Done: ", SAID, "lacking for Yoghurt spheres");
    assertThat(client.get("/k/TARN/").text()).contains(SAID);
    assertThat(hand(base)).contains(SAID);
    assertThat(hand(taker(base))).contains(SAID);
    JsonNode one = site.script().get("today").body().path("short").path(0);
    assertThat(one.path("task").asText()).isEqualTo(base.id());
    assertThat(one.path("came").path("value").asInt()).isEqualTo(2000);
    assertThat(one.path("without").toString()).contains(taker(base).make().id());
  }

  @Test
  void asMuchAsIsTakenOfItIsNotShortThoughLessThanWasPlannedCame() {
    press(base(), "DONE", "amount", "6.09 kg");
    assertNothingIsShort();
  }

  @Test
  void whatIsTakenBackIsNoLongerShort() {
    Task base = base();
    press(base, "DONE", "amount", "2 kg");
    String tick =
        client
            .get(WALL + "?task=" + Client.encoded(base.id()))
            .all("name=\"undoes\" value=\"([0-9a-f-]{36})\"")
            .get(0);
    press(base, "UNDO", "undoes", tick);
    assertNothingIsShort();
  }

  @Test
  void aPlanThatMakesWhatIsLackingEndsIt() {
    press(base(), "DONE", "amount", "2 kg");
    site.wiring().plans().accept(site.house(), Site.DAY, site.house().stand().facts(), "chef");
    assertNothingIsShort();
  }

  @Test
  void ofOneThatFailedAllIsLackingUntilItIsPlannedAgain() {
    Task base = base();
    press(base, "FAILED", "note", "split");
    assertThat(client.get("/k/TARN/").text()).contains("Sheep-yoghurt base failed: ");
  }

  @Test
  void nobodyMissesWhatWasToBeUsedBefore() {
    press(base(), "DONE", "amount", "2 kg");
    site.setClock(Site.at("23:50"));
    assertNothingIsShort();
  }

  private void assertNothingIsShort() {
    assertThat(site.script().get("today").body().path("short").size()).isZero();
    assertThat(client.get("/k/TARN/").text()).doesNotContain(" lacking for ");
  }

  private String hand(Task task) {
    return client.get(WALL + "?task=" + Client.encoded(task.id())).text();
  }

  private InForce inForce() {
    return site.wiring().plans().open(site.house(), Site.DAY, "test");
  }

  /** The one task of the yoghurt base that puts it away. */
  private Task base() {
    return inForce().sheet().tasks().stream()
        .filter(task -> task.version().formula().equals("yoghurt-base"))
        .filter(task -> !task.stored().isEmpty())
        .findFirst()
        .orElseThrow();
  }

  /** Who weighs it in. */
  private Task taker(Task base) {
    return inForce().sheet().tasks().stream()
        .filter(task -> base.make().served().get(0).user().equals(task.make().id()))
        .filter(task -> !task.weigh().isEmpty())
        .findFirst()
        .orElseThrow();
  }

  private Answer press(Task task, String kind, String field, String value) {
    return client.post(
        "/k/TARN/tick",
        "station",
        task.station(),
        "task",
        task.id(),
        "kind",
        kind,
        field,
        value,
        "sequence",
        String.valueOf(Site.sequence()));
  }
}
