package halfgram.pages.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The plating of a dish is begun, counted, done and taken back, at the pass and on its wall. */
class PlatingTicksTest {
  private static final String DINNER = "/k/TARN/service/harvest-dinner";
  private static final String DEVICE = "00000000-0000-4000-8000-000000000001";

  private Site site;
  private Client pass;
  private Script script;

  Site open() {
    return Site.demo();
  }

  @BeforeEach
  void atThePass() {
    site = open();
    site.setClock(Site.at("18:28"));
    pass = site.client();
    script = site.script();
    pass.get("/k/TARN/service");
    pass.post(DINNER + "/cook", "person", "ines");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void itIsBegunCountedInTraysAndDoneAndSeenOnTheWallOfItsStation() {
    String page = pass.get(DINNER).body();
    assertThat(page).contains("value=\"PLATING\"", "value=\"8\"");
    press("PLATING");
    assertThat(press("PLATED", "number", "8").status()).isEqualTo(303);
    press("PLATED", "number", "10");
    Client wall = site.client();
    assertThat(wall.get("/k/TARN/wall/pass").text())
        .contains("plates since 18:28 · 18 of 96 plated · 18 stand at the pass");
    assertThat(wall.get("/k/TARN/wall/cold").text()).doesNotContain("18 of 96");
    site.setClock(Site.at("18:44"));
    press("DONE");
    assertThat(wall.get("/k/TARN/wall/pass").text())
        .contains("all plated 18:44", "96 of 96 plated");
    assertThat(line().path("done").path("who").asText()).isEqualTo("ines");
    assertThat(pass.get("/k/TARN/log").text()).contains("plating begun", "Plated 8", "all plated");
  }

  @Test
  void whatIsPlatedIsNotSentAndTakesNothingAndWhatIsSentCountsOnce() {
    JsonNode before = dish();
    press("PLATED", "number", "40");
    assertThat(dish()).as("to go, ready, left").isEqualTo(before);
    press("SENT", "number", "10", "diets", "");
    assertThat(line().path("plated").asInt()).isEqualTo(40);
    assertThat(line().path("standing").asInt()).isEqualTo(30);
    press("SENT", "number", "35", "diets", "");
    assertThat(line().path("plated").asInt()).as("sent, so plated").isEqualTo(45);
    assertThat(line().path("standing").asInt()).isZero();
  }

  @Test
  void itIsBehindByThePlansStartAndPace() {
    assertThat(behind()).isZero();
    site.setClock(Site.at("18:32"));
    assertThat(behind()).as("nobody has begun").isEqualTo(4);
    press("PLATING");
    press("PLATED", "number", "24");
    assertThat(behind()).as("24 by 18:32 at six a minute").isZero();
    site.setClock(Site.at("18:40"));
    press("PLATED", "number", "30");
    assertThat(behind()).as("54 were planned by 18:37").isEqualTo(3);
    assertThat(pass.get(DINNER).text()).contains("3 min behind");
    press("DONE");
    assertThat(behind()).as("done before the plan").isZero();
  }

  @Test
  void beginningAndDoneAreSaidOnceAndEveryWordIsTakenBack() {
    press("PLATING");
    assertThat(press("PLATING").status()).isEqualTo(409);
    press("PLATED", "number", "8");
    press("DONE");
    assertThat(press("DONE").status()).isEqualTo(409);
    undoLast();
    assertThat(line().has("done")).isFalse();
    assertThat(line().path("plated").asInt()).isEqualTo(8);
    undoLast();
    assertThat(line().path("plated").asInt()).isZero();
    undoLast();
    assertThat(line().has("started")).isFalse();
    assertThat(pass.get(DINNER).body()).contains("value=\"PLATING\"");
  }

  @Test
  void aDeviceThatSendsItTwiceHasSaidItOnceAndADishThatIsNotPlatedIsRefused() {
    String eight = entry("plated", "trout-plate", 3, "'number':8");
    assertThat(post(eight)).isEqualTo(201);
    assertThat(post(eight)).isEqualTo(200);
    assertThat(line().path("plated").asInt()).isEqualTo(8);
    assertThat(post(entry("plated", "nothing", 4, "'number':8"))).isEqualTo(404);
    assertThat(post(entry("plated", "trout-plate", 5, "'number':5000"))).isEqualTo(422);
  }

  @Test
  void fromTheWallItGoesBackToTheWall() {
    Answer answer = press("PLATED", "number", "8", "back", "wall/pass");
    assertThat(answer.header("location")).isEqualTo("/k/TARN/wall/pass");
  }

  // ---- below their callers ----

  private Answer press(String kind, String... more) {
    List<String> fields = new ArrayList<>();
    fields.addAll(List.of("kind", kind, "course", "first", "dish", "trout-plate"));
    fields.addAll(List.of("sequence", String.valueOf(Site.sequence())));
    fields.addAll(Arrays.asList(more));
    return pass.post(DINNER, fields.toArray(String[]::new));
  }

  private void undoLast() {
    String form = pass.get(DINNER).body();
    int at = form.indexOf("id=\"plating-first-trout-plate\"");
    String undoes = form.substring(form.indexOf("name=\"undoes\" value=\"", at) + 21);
    press("UNDO", "undoes", undoes.substring(0, 36));
  }

  private JsonNode line() {
    for (JsonNode one : script.get("services/harvest-dinner").body().path("plating")) {
      if (one.path("dish").asText().equals("trout-plate")) {
        return one;
      }
    }
    throw new AssertionError("no plating");
  }

  private JsonNode dish() {
    return script.get("services/harvest-dinner").body().at("/dishes/0");
  }

  private int behind() {
    return line().path("behindMinutes").asInt();
  }

  private int post(String entry) {
    return script.post("services/harvest-dinner/entries", entry).status();
  }

  private static String entry(String kind, String dish, int sequence, String more) {
    return "{'kind':'"
        + kind
        + "','course':'first','dish':'"
        + dish
        + "','who':'ines','device':'"
        + DEVICE
        + "','sequence':"
        + sequence
        + ","
        + more
        + "}";
  }
}
