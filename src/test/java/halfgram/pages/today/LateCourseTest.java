package halfgram.pages.today;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.desk.InForce;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * A course that is past its time, with plates to go and nobody's call: what was to be made for it
 * is late, not gone, however often the day is planned again. The first of the demo's dinner is at
 * 18:45 and takes pea spheres.
 */
class LateCourseTest {
  private static final String SPHERES = "pea-spheres/harvest-dinner/1";
  private static final String BASE = "pea-base/harvest-dinner/1";
  private static final String ENTRY =
      "{'kind':'%s','course':'first','who':'ines',%s'device':'%s','sequence':%d}";
  private static final String DEVICE = "00000000-0000-4000-8000-00000000000a";

  private Site site;
  private Client client;
  private int entries;

  @BeforeEach
  void open() {
    site = Site.demo();
    client = site.client();
    client.get("/k/TARN/");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void itsWorkStandsLateWithWhatItTakes() {
    List<String> before = tasks(SPHERES);
    assertThat(before).isNotEmpty();
    planAgainAt("18:50");
    assertThat(tasks(SPHERES)).isEqualTo(before);
    assertThat(tasks(BASE)).isNotEmpty();
    planAgainAt("19:10");
    assertThat(tasks(SPHERES)).isEqualTo(before);
    String wall = client.get("/k/TARN/wall/cold?task=" + SPHERES + "/drop").text();
    assertThat(wall).contains("Pea spheres", "LATE since");
    site = site.restarted();
    assertThat(tasks(SPHERES)).as("computed again from the store").isEqualTo(before);
  }

  @Test
  void whatIsDoneOfItIsDoneAndNothingIsMadeTwice() {
    planAgainAt("18:50");
    tick(SPHERES + "/drop", "done");
    planAgainAt("18:55");
    assertThat(inForce().sheet().makes())
        .filteredOn(make -> make.version().formula().equals("pea-spheres"))
        .filteredOn(make -> make.service().equals("harvest-dinner"))
        .isEmpty();
  }

  @Test
  void onceItIsCalledItIsNeededNoMore() {
    planAgainAt("18:50");
    enter("fire", "");
    planAgainAt("18:52");
    assertThat(tasks(SPHERES)).isEmpty();
  }

  @Test
  void onceAllItsPlatesAreSentItIsNeededNoMore() {
    planAgainAt("18:50");
    JsonNode dinner = site.script().get("services/harvest-dinner").body();
    for (JsonNode line : dinner.path("dishes")) {
      if (line.path("course").asText().equals("first") && line.path("toGo").asInt() > 0) {
        String diets = line.path("diets").toString().replace('"', '\'');
        enter(
            "sent",
            "'dish':'%s','diets':%s,'number':%d,"
                .formatted(line.path("dish").asText(), diets, line.path("toGo").asInt()));
      }
    }
    planAgainAt("18:52");
    assertThat(tasks(SPHERES)).isEmpty();
  }

  @Test
  void whenTheServiceIsOverItIsGone() {
    planAgainAt("18:50");
    planAgainAt("21:31");
    assertThat(tasks(SPHERES)).isEmpty();
  }

  private void planAgainAt(String time) {
    site.setClock(Site.at(time));
    Answer page = client.get("/k/TARN/?again=yes");
    String facts = page.all("name=\"facts\" value=\"([^\"]*)\"").get(0);
    String number = page.all("name=\"number\" value=\"([^\"]*)\"").get(0);
    String day = Site.DAY.toString();
    Answer accepted = client.post("/k/TARN/plan", "day", day, "number", number, "facts", facts);
    assertThat(accepted.status()).isEqualTo(303);
    assertThat(inForce().plan().asOf()).isEqualTo(Site.at(time));
  }

  private void enter(String kind, String more) {
    String body = ENTRY.formatted(kind, more, DEVICE, ++entries);
    assertThat(site.script().post("services/harvest-dinner/entries", body).status()).isEqualTo(201);
  }

  private void tick(String task, String kind) {
    String body =
        "{'task':'%s','kind':'%s','cook':'ines','device':'%s','sequence':%d,'day':'%s','sure':true}"
            .formatted(task, kind, DEVICE, ++entries, Site.DAY);
    assertThat(site.script().post("ticks", body).status()).isEqualTo(201);
  }

  private List<String> tasks(String make) {
    return inForce().sheet().tasks().stream()
        .filter(task -> task.make().id().equals(make))
        .map(task -> task.id() + " " + task.start())
        .toList();
  }

  private InForce inForce() {
    return site.wiring().plans().find(site.house(), Site.DAY).orElseThrow();
  }
}
