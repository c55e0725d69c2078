package halfgram.pages.tablets;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Tablets renamed and revoked, and what becomes of what they sent. */
class RevokedTest {
  private static final String PAGE = "/k/TARN/tablets";

  private Site site;
  private Paired paired;

  @BeforeEach
  void open() {
    site = start();
    paired = new Paired(site);
  }

  Site start() {
    return Site.demo();
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void aRenamedTabletIsTheSameTabletAtOtherStations() {
    Client tablet = paired.tablet("Cold left", "cold");
    String id = paired.id("Cold left");
    Answer nameless = paired.office().post(PAGE + "/" + id, "name", "", "station", "pass");
    assertThat(nameless.status()).isEqualTo(422);
    assertThat(nameless.text()).contains("a name of 1 to 80 characters");
    paired.office().post(PAGE + "/" + id, "name", "Pass right", "station", "pass");
    assertThat(tablet.get("/k/TARN/wall/pass").text()).contains("Tablet: Pass right");
    assertThat(tablet.get("/k/TARN/wall/cold").status()).isEqualTo(403);
  }

  @Test
  void whatARevokedTabletSendsIsEnteredWithItsOwnTimeAndCook() {
    Client tablet = working("Cold left");
    Task task = paired.task("cold", "yoghurt-base");
    paired.revoke("Cold left");
    site.setClock(Site.at("09:20"));
    Answer calm = tablet.get("/k/TARN/wall/cold");
    assertThat(calm.status()).isEqualTo(403);
    assertThat(calm.text()).contains("revoked by the office", "Pair this tablet");
    long sequence = Site.sequence();
    Answer kept = Paired.tick(tablet, "cold", task, "START", sequence);
    assertThat(kept.status()).isEqualTo(403);
    assertThat(kept.text()).contains("is kept there and nothing is lost");
    Paired.tick(tablet, "cold", task, "START", sequence);
    assertThat(state(task)).isEqualTo(TaskState.TO_DO);

    site.setClock(Site.at("10:00"));
    Answer inbox = paired.office().get(PAGE);
    assertThat(inbox.all("tablets/kept/([0-9a-f-]{36})\"")).hasSize(1);
    assertThat(inbox.text()).contains("Ines on Cold left", "09:20", "Sheep-yoghurt base");
    Answer entered = settle(inbox, "enter");
    assertThat(entered.status()).isEqualTo(303);
    assertThat(state(task)).isEqualTo(TaskState.ON_IT);
    var start = inForce(task).last().orElseThrow();
    assertThat(start.at()).isEqualTo(Site.at("09:20"));
    assertThat(start.cook()).isEqualTo("ines");
    assertThat(paired.office().get(PAGE).text()).contains("Nothing waits").contains("Revoked");
    assertThat(settle(inbox, "enter").status()).isEqualTo(409);
  }

  @Test
  void whatIsRefusedWaitsOnAndCanBePutAside() {
    Client tablet = working("Cold left");
    Task task = paired.task("cold", "yoghurt-base");
    paired.revoke("Cold left");
    Paired.tick(tablet, "cold", task, "SOLVED", Site.sequence());
    Answer inbox = paired.office().get(PAGE);
    Answer refused = settle(inbox, "enter");
    assertThat(refused.status()).isEqualTo(409);
    assertThat(refused.text()).contains("Not entered, and it waits on:");
    assertThat(settle(inbox, "aside").status()).isEqualTo(303);
    assertThat(paired.office().get(PAGE).text()).contains("Nothing waits");
    assertThat(state(task)).isEqualTo(TaskState.TO_DO);
  }

  @Test
  void ofWhatIsKeptNobodyReadsAPinAndWhatSaysNothingIsNotKept() {
    Client tablet = working("Cold left");
    Task task = paired.task("cold", "yoghurt-base");
    paired.revoke("Cold left");
    tablet.post("/k/TARN/language", "language", "es");
    tablet.post("/k/TARN/wall/cook", "person", "ines", "station", "cold", "pin", "4711");
    assertThat(waiting()).isZero();
    tablet.post(
        "/k/TARN/wall/cook",
        "person",
        "ines",
        "station",
        "cold",
        "pin",
        "4711",
        "task",
        task.id(),
        "kind",
        "START",
        "sequence",
        "7");
    assertThat(waiting()).isEqualTo(1);
    assertThat(site.script().get("tablets").body().toString())
        .contains("START")
        .doesNotContain("4711");
  }

  @Test
  void aRevokedTabletSaysSoInItsOwnLanguage() {
    Client tablet = paired.tablet("Cold left", "cold").withCookie("language", "es");
    paired.revoke("Cold left");
    assertThat(tablet.get("/k/TARN/wall/cold").text())
        .contains("La oficina retiró esta tableta", "Vincular esta tableta");
    tablet.withCookie("language", "fr");
    assertThat(tablet.get("/k/TARN/wall/cold").text()).contains("Le bureau a révoqué");
  }

  @Test
  void aCallOfATabletObeysItsStationsAndIsKeptWhenItIsRevoked() {
    Client tablet = working("Pass", "pass");
    Task task = paired.task("cold", "yoghurt-base");
    String body = call(task, Site.at("09:05"));
    Answer elsewhere = tablet.json("POST", "/k/TARN/api/v1/ticks", body);
    assertThat(elsewhere.status()).isEqualTo(403);
    assertThat(elsewhere.body()).contains("not paired for that station");
    assertThat(Paired.tick(tablet, "pass", task, "START", 1).status()).isEqualTo(403);
    assertThat(state(task)).isEqualTo(TaskState.TO_DO);

    paired.revoke("Pass");
    assertThat(tablet.json("POST", "/k/TARN/api/v1/ticks", body).status()).isEqualTo(403);
    assertThat(site.script().get("tablets").body().path("waiting").path(0).path("said").asText())
        .contains("Sheep-yoghurt base");
    assertThat(settle(paired.office().get(PAGE), "enter").status()).isEqualTo(303);
    assertThat(state(task)).isEqualTo(TaskState.ON_IT);
  }

  private static String call(Task task, Instant at) {
    return """
    {"task": "%s", "kind": "start", "cook": "ines", "sequence": 5, "deviceTime": "%s",
     "device": "0e0c0a08-0604-4200-8000-000000000001"}\
    """
        .formatted(task.id(), at);
  }

  @Test
  void aRevokedTabletIsGoneAtOnceForWhoeverAsksInTheBackground() {
    Client tablet = paired.tablet("Cold left", "cold");
    assertThat(tablet.get("/k/TARN/wall/cold").status()).isEqualTo(200);
    paired.revoke("Cold left");
    site.passTime(Duration.ofSeconds(1));
    Answer part = tablet.send(tablet.request("/k/TARN/wall/cold").header("X-Part", "main").GET());
    assertThat(part.status()).isEqualTo(403);
    assertThat(tablet.get("/k/TARN/live").status()).isEqualTo(403);
    assertThat(paired.office().post(PAGE + "/" + paired.id("Cold left") + "/revoke").text())
        .contains("was revoked meanwhile");
  }

  private Client working(String name) {
    return working(name, "cold");
  }

  private Client working(String name, String station) {
    Client tablet = paired.tablet(name, station);
    tablet.get("/k/TARN/wall/" + station);
    assertThat(Paired.choose(tablet, station, "ines", "").status()).isEqualTo(303);
    return tablet;
  }

  private Answer settle(Answer inbox, String what) {
    String entry = inbox.all("tablets/kept/([0-9a-f-]{36})\"").get(0);
    return paired.office().post(PAGE + "/kept/" + entry, "what", what);
  }

  private int waiting() {
    return paired.office().get(PAGE).all("tablets/kept/([0-9a-f-]{36})\"").size();
  }

  private TaskState state(Task task) {
    return inForce(task).state();
  }

  private halfgram.prep.TaskProgress inForce(Task task) {
    return site.wiring().plans().open(site.house(), Site.DAY, "test").progress(task);
  }
}
