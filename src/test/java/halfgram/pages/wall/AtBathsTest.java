package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import java.io.IOException;
import java.io.InputStream;
import java.time.Duration;
import java.util.List;
import java.util.Properties;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The baths on the wall through HTTP, without scripts. */
class AtBathsTest {
  private static final String RUN = "yoghurt-spheres/harvest-dinner/1";
  private static final String TASK = RUN + "/drop";
  private static final String WALL =
      "/k/TARN/wall/cold?task=" + Client.encoded(TASK).replace("+", "%20");

  private Site site;
  private Client client;

  @BeforeEach
  void open() {
    site = Site.demo();
    client = site.client();
    client.get(WALL);
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void aChangeOfBathThatWasPlannedForATimeThatIsOverIsToldWithoutIt() {
    assertThat(client.get("/k/TARN/wall/cold").text()).containsPattern("then bath [A-Z] at \\d");
    site.setClock(Site.at("18:00"));
    assertThat(client.get("/k/TARN/wall/cold").text())
        .containsPattern("after these bath [A-Z] is expected: ")
        .doesNotContainPattern("then bath [A-Z] at 1[67]:");
  }

  @Test
  void whoeverPressesWithoutANameIsAskedAndThePressGoesOn() {
    Answer asked = drop("A", "15");
    assertThat(asked.text()).contains("Who is this?");
    assertThat(client.get(WALL).text()).contains("0 good of 273");
    List<String> fields = asked.all("<input type=\"hidden\" name=\"([a-z]+)\"");
    assertThat(fields).contains("entry", "run", "label", "pieces", "sequence");
    Answer on =
        client.postAndFollow(
            "/k/TARN/wall/cook",
            "person",
            "ines",
            "station",
            "cold",
            "task",
            TASK,
            "entry",
            "DROP",
            "run",
            RUN,
            "label",
            "A",
            "pieces",
            "15",
            "sequence",
            "7");
    assertThat(on.text()).contains("0 good of 273", "0 lifted, 1 in", "ON IT · Ines");
    assertThat(on.body()).as("what is still in is not offered as done").contains("\"0 pieces\"");
  }

  @Test
  void aDropSaysWhenToLiftItToTheSecondAndCanBeUndone() {
    work();
    site.setClock(Site.at("16:03").plusSeconds(10));
    Answer dropped = drop("A", "15");
    // 150 s from the last piece in.
    assertThat(dropped.text()).contains("lift at 16:05:40", "Lift 1", "Drop 1: 15 pieces");
    assertThat(dropped.text()).contains("282 pieces to drop (19 drops)");
    assertThat(dropped.text()).contains("6 more drops, as forecast");
    String entry = dropped.all("name=\"undoes\" value=\"([0-9a-f-]{36})\"").get(0);
    Answer undone = send("UNDO", "undoes", entry);
    assertThat(undone.text()).contains("0 good of 273").doesNotContain("Lift 1");
  }

  @Test
  void theForecastEndsWithTheLastDropOfTheRun() {
    work();
    Answer all = drop("A", "297");
    assertThat(all.text()).contains("nothing more to drop").doesNotContain("more drop,");
  }

  @Test
  void aLiftIsATimerOnEveryWallOfItsStationUntilItIsLifted() {
    work();
    site.setClock(Site.at("16:03").plusSeconds(10));
    Answer dropped = drop("A", "15");
    String id = dropped.all("name=\"drop\" value=\"([0-9a-f-]{36})\"").get(0);
    String lift = "drop 1: lift at 16:05:40";
    assertThat(timers("cold", TASK)).as("in hand its bath counts it down").doesNotContain(lift);
    String other = "pea-base/harvest-dinner/1/shear";
    assertThat(timers("cold", other)).contains(lift, "Yoghurt spheres, drop").doesNotContain("NOW");
    assertThat(timers("hot", "")).doesNotContain(lift);
    site.passTime(Duration.ofMinutes(4));
    assertThat(timers("cold", other))
        .contains("NOW", lift)
        .as("only lifting ends it, and the run has no other time")
        .doesNotContain("Got it", "until ");
    send("LIFT", "drop", id, "label", "A");
    assertThat(timers("cold", other)).doesNotContain(lift);
  }

  private String timers(String station, String task) {
    Answer page = client.get("/k/TARN/wall/" + station + "?task=" + Client.encoded(task));
    return String.join("", page.all("(?s)<section class=\"timers\"(.*?)</section>"))
        .replaceAll("<[^>]*>", " ");
  }

  @Test
  void liftingTellsWhetherItWasRight() {
    work();
    Answer dropped = drop("A", "15");
    String id = dropped.all("name=\"drop\" value=\"([0-9a-f-]{36})\"").get(0);
    site.passTime(Duration.ofSeconds(90));
    Answer lifted = send("LIFT", "drop", id, "label", "A");
    assertThat(lifted.text())
        .contains("Drop 1 lifted after 1 min 30 s, too short; skin about 0.39 mm, an estimate")
        .contains("15 good of 273", "1 lifted, 0 in");
    assertThat(client.get(WALL).text())
        .contains("drop 1 lifted after 1 min 30 s in place of 2 min 30 s: too short");
    assertThat(lifted.body()).contains("value=\"15 pieces\"");
  }

  @Test
  void theRestOfABathIsToldAsPlannedUntilItsFirstPiece() {
    work();
    assertThat(client.get("/k/TARN/baths/A").text())
        .contains("will have rested", "before its first piece, as planned");
    assertThat(rested().path("restPlanned").asBoolean()).isTrue();
    long planned = rested().path("restedMinutes").asLong();
    drop("A", "15");
    assertThat(client.get("/k/TARN/baths/A").text())
        .contains(" rested ")
        .doesNotContain("as planned");
    assertThat(rested().path("restPlanned").asBoolean()).isFalse();
    assertThat(rested().path("restedMinutes").asLong()).isLessThan(planned);
  }

  @Test
  void theBathsAreReachedFromTheDayTheEveningAndTheKit() {
    for (String page : List.of("", "tonight", "kit")) {
      assertThat(client.get("/k/TARN/" + page).body()).as(page).contains("href=\"/k/TARN/baths\"");
    }
  }

  @Test
  void aWornBathAsksBeforeItTakesMore() {
    work();
    String id = drop("A", "15").all("name=\"drop\" value=\"([0-9a-f-]{36})\"").get(0);
    send("BROKE", "drop", id, "label", "A", "pieces", "9");
    Answer asked = drop("A", "14");
    assertThat(asked.status()).isEqualTo(409);
    assertThat(asked.text())
        .contains("Bath A is worn: the calcium reckoned for burst pieces thickens it")
        .contains("Drop 2 all the same");
    assertThat(asked.body()).contains("name=\"worn\" value=\"yes\"", "value=\"14\"");
    Answer again = send("DROP", "run", RUN, "label", "A", "pieces", "14", "worn", "yes");
    assertThat(again.text())
        .contains("Drop 2: 14 pieces into bath A")
        .doesNotContain("all the same");
  }

  @Test
  void aDropIntoABathThatIsNotThereComesBackAsTyped() {
    work();
    Answer wrong = drop("7", "12");
    assertThat(wrong.status()).isEqualTo(409);
    assertThat(wrong.body()).containsPattern("id=\"other-bath\" open").contains("value=\"12\"");
  }

  @Test
  void whatIsWrongComesBackAsTypedInItsPlace() {
    work();
    Answer words = drop("A", "a few");
    assertThat(words.status()).isEqualTo(422);
    assertThat(words.body()).contains("value=\"a few\"", "id=\"drop-fault-A\"");
    drop("A", "15");
    Answer deep = send("LEVEL", "label", "A", "formula", "alginate-bath", "millimetres", "high");
    assertThat(deep.status()).isEqualTo(422);
    assertThat(deep.body()).contains("value=\"high\"");
    assertThat(deep.text()).contains("Give the level by the ruler");
    Answer in = send("CHANGED", "label", "A", "formula", "alginate-bath", "note", "cloudy");
    assertThat(in.status()).isEqualTo(409);
    assertThat(in.text()).contains("Not taken: drop 1 is still in bath A");
    assertThat(in.body()).contains("value=\"cloudy\"");
  }

  @Test
  void theSideCountsTheDropsThatWereEntered() {
    work();
    assertThat(client.get(WALL).text()).contains("Bath A 7 of 7 drops left");
    drop("A", "15");
    drop("B", "15");
    String side = client.get(WALL).text();
    assertThat(side).contains("Bath A drop 1: lift at", "6 of 7 drops left");
    assertThat(side).contains("Bath B drop 2: lift at");
  }

  @Test
  void aBathsWholeLifeIsToldOnItsPageAndTakenBackThere() {
    work();
    drop("A", "15");
    Answer life = client.get("/k/TARN/baths/A");
    assertThat(life.text())
        .contains("Bath A", "CONTAINS MILK", "by the plan from tub t-1204-a1", "12 h at least")
        .contains("Drop 1: 15 pieces into bath A Ines", "Yoghurt spheres 1 15 0")
        .contains("calcium left in it", "202.3 mg");
    assertThat(client.get("/k/TARN/baths").text()).contains("0 of 273", "forecast: 6 more drops");
    assertThat(client.get("/k/TARN/log").body())
        .contains("/k/TARN/baths/A?date=2026-12-05&amp;of=alginate-bath");
    String entry = life.all("name=\"undoes\" value=\"([0-9a-f-]{36})\"").get(0);
    Answer back =
        client.postAndFollow(
            "/k/TARN/baths/A/back",
            "date",
            "2026-12-05",
            "of",
            "alginate-bath",
            "undoes",
            entry,
            "sequence",
            "5");
    assertThat(back.text()).contains("planned, nothing has gone in", "taken back");
    Answer again =
        client.post("/k/TARN/baths/A/back", "date", "2026-12-05", "undoes", entry, "sequence", "6");
    assertThat(again.status()).isEqualTo(409);
    assertThat(client.get("/k/TARN/baths/Q").status()).isEqualTo(404);
  }

  @Test
  void theBathsSpeakSpanishAndFrenchWithEverySentence() throws IOException {
    Properties english = sentences("en");
    for (String language : List.of("es", "fr")) {
      assertThat(sentences(language).keySet()).as(language).isEqualTo(english.keySet());
    }
  }

  // ---- below their callers ----

  private JsonNode rested() {
    return site.script().get("baths/A").body().path("tub");
  }

  private void work() {
    client.post("/k/TARN/wall/cook", "station", "cold", "person", "ines");
  }

  private Answer drop(String label, String pieces) {
    return send("DROP", "run", RUN, "label", label, "pieces", pieces);
  }

  private Answer send(String entry, String... fields) {
    List<String> all = new java.util.ArrayList<>(List.of(fields));
    all.addAll(
        List.of(
            "station",
            "cold",
            "task",
            TASK,
            "entry",
            entry,
            "sequence",
            String.valueOf(Site.sequence())));
    return client.postAndFollow("/k/TARN/bath", all.toArray(String[]::new));
  }

  private static Properties sentences(String language) throws IOException {
    Properties sentences = new Properties();
    String name = "/halfgram/pages/bath_" + language + ".properties";
    try (InputStream stream = AtBathsTest.class.getResourceAsStream(name)) {
      sentences.load(
          new java.io.InputStreamReader(stream, java.nio.charset.StandardCharsets.UTF_8));
    }
    return sentences;
  }
}
