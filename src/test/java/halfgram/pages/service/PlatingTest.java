package halfgram.pages.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.kitchen.Text;
import halfgram.menu.Plating;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Plating backwards from the fire, and ready and go between stations. */
class PlatingTest {
  private static final String DINNER = "/k/TARN/service/harvest-dinner";

  private Site site;
  private Client pass;
  private Client cold;

  @BeforeEach
  void open() {
    site = Site.demo();
    site.setClock(Site.at("18:20"));
    pass = at("ines");
    cold = at("lorcan");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void platesOverPeopleTimesPaceThenTheLastSteps() {
    Plating plating =
        new Plating(
            3,
            BigDecimal.valueOf(2),
            List.of(new Plating.LastStep(Text.of("oil"), 40)),
            Optional.empty(),
            OptionalInt.of(8),
            Optional.empty());
    assertThat(plating.length(94)).isEqualTo(Duration.ofMinutes(16).plusSeconds(20));
    assertThat(plating.trays(94)).hasValue(12);
    assertThat(plating.length(1)).as("10 s and 40 s").isEqualTo(Duration.ofSeconds(50));
  }

  @Test
  void platingStandsOnTheServiceTheWallOfItsStationAndTheSheetAndSaysWhy() {
    Script script = site.script();
    JsonNode line = script.get("services/harvest-dinner").body().at("/plating/0");
    // 80 and 5, 4, 7 plates made for: 96 at six a minute and 40 s before 18:45.
    assertThat(line.path("plates").asInt()).isEqualTo(96);
    assertThat(line.path("trays").asInt()).isEqualTo(12);
    assertThat(line.path("start").asText()).startsWith("2026-12-05T18:28");
    String said = "plate from 18:28: 96 plates, 3 at 2 a minute each; 12 trays; wide slate plate";
    assertThat(pass.get(DINNER).text()).contains(said, "spoon the oil last (40 s)");
    assertThat(pass.get("/k/TARN/wall/pass").text()).contains(said);
    assertThat(pass.get("/k/TARN/wall/cold").text()).doesNotContain(said);
    JsonNode planned = script.get("plan").body().path("services");
    String id = "";
    for (JsonNode service : planned) {
      id = service.at("/plating/0/start/id").asText(id);
    }
    assertThat(id).endsWith("/plating/harvest-dinner/first/trout-plate/start");
    String path = id.substring(id.indexOf("/plating/") + 1);
    JsonNode why = script.get("why?plan=2026-12-05/1&path=" + path).body();
    assertThat(why.toString()).contains("2026-12-05T18:28", "plates a minute of one", "96");
  }

  @Test
  void aStationThatIsReadyIsSeenAtThePassAndGoIsSeenAtTheStation() {
    long before = site.house().stand().change();
    Answer ready =
        cold.post(
            DINNER,
            "kind",
            "READY",
            "course",
            "first",
            "station",
            "cold",
            "back",
            "wall/cold",
            "sequence",
            number());
    assertThat(ready.header("location")).isEqualTo("/k/TARN/wall/cold");
    assertThat(site.house().stand().change()).as("it is signalled").isGreaterThan(before);
    assertThat(pass.get(DINNER).text()).contains("Cold ready 18:20");
    assertThat(cold.get("/k/TARN/wall/cold").text()).contains("ready 18:20");
    assertThat(cold.get("/k/TARN/wall/hot").body()).contains("value=\"READY\"");
    site.passTime(Duration.ofMinutes(3));
    pass.post(DINNER, "kind", "GO", "course", "first", "sequence", number());
    assertThat(cold.get("/k/TARN/wall/cold").text()).contains("GO 18:23");
    assertThat(pass.get(DINNER).text()).contains("GO 18:23");
  }

  @Test
  void readyAndGoAreSaidOnceAndTakenBack() {
    String[] ready = {"kind", "READY", "course", "first", "station", "cold", "sequence", "7"};
    assertThat(cold.post(DINNER, ready).status()).isEqualTo(303);
    assertThat(cold.post(DINNER, ready).status()).as("the same again").isEqualTo(303);
    ready[7] = "8";
    assertThat(cold.post(DINNER, ready).status()).isEqualTo(409);
    ready[5] = "nowhere";
    assertThat(cold.post(DINNER, ready).status()).isEqualTo(404);
    Answer go = pass.postAndFollow(DINNER, "kind", "GO", "course", "first", "sequence", number());
    String entry = go.all("name=\"undoes\" value=\"([^\"]+)\"").get(0);
    pass.post(DINNER, "kind", "UNDO", "undoes", entry, "sequence", number());
    assertThat(cold.get("/k/TARN/wall/cold").text()).doesNotContain("GO 18:20");
  }

  @Test
  void aWallShowsWhatIsFiredAboutNowAndNothingElse() {
    assertThat(cold.get("/k/TARN/wall/cold").text())
        .contains("Harvest dinner: First")
        .doesNotContain("Harvest dinner: Main");
    site.setClock(Site.at("09:00"));
    assertThat(cold.get("/k/TARN/wall/cold").body()).doesNotContain("value=\"READY\"");
  }

  // ---- below their callers ----

  private Client at(String person) {
    Client client = site.client();
    client.get("/k/TARN/service");
    client.post(DINNER + "/cook", "person", person);
    return client;
  }

  private static String number() {
    return String.valueOf(Site.sequence());
  }
}
