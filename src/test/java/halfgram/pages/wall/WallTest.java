package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.measure.Amount;
import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Site;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The wall through HTTP: what a cook presses, and what is refused. */
class WallTest {
  private static final String WALL = "/k/TARN/wall/cold";

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
  void whoeverPressesWithoutANameIsAskedAndThePressGoesOn() {
    Answer asked = tick(base(), "START", Site.sequence());
    assertThat(asked.status()).isEqualTo(200);
    assertThat(asked.text()).contains("Who is this?", "Ines");
    assertThat(state(base())).isEqualTo(TaskState.TO_DO);
    Answer on =
        client.postAndFollow(
            "/k/TARN/wall/cook",
            "person",
            "ines",
            "station",
            "cold",
            "task",
            base().id(),
            "kind",
            "START",
            "sequence",
            String.valueOf(Site.sequence()));
    assertThat(on.text()).contains("ON IT · Ines");
    assertThat(state(base())).isEqualTo(TaskState.ON_IT);
  }

  @Test
  void aPressThatComesTwiceCountsOnce() {
    work();
    long sequence = Site.sequence();
    assertThat(tick(base(), "START", sequence).status()).isEqualTo(303);
    long before = site.house().stand().change();
    assertThat(tick(base(), "START", sequence).status()).isEqualTo(303);
    assertThat(site.house().stand().change()).isEqualTo(before);
  }

  @Test
  void doneFillsTubsWithLabelsAndUndoTakesThemBack() {
    work();
    Answer done =
        client.postAndFollow(
            "/k/TARN/tick",
            "station",
            "cold",
            "task",
            base().id(),
            "kind",
            "DONE",
            "amount",
            "5,9 kg",
            "sequence",
            String.valueOf(Site.sequence()));
    List<String> tubs = tubs();
    assertThat(tubs).hasSizeGreaterThan(4);
    assertThat(done.text()).as("one link for all of them").doesNotContain(tubs.get(0));
    Answer label = client.get("/k/TARN/label?station=cold&tub=" + tubs.get(0));
    assertThat(label.text())
        .contains("Sheep-yoghurt base", tubs.get(0), "CONTAINS MILK", "use by", "Ines")
        .contains("keep walk-in, 4 °C");
    assertThat(done.text()).contains("all " + tubs.size() + " labels");
    String all = "/k/TARN/label?station=cold&task=" + Client.encoded(base().id());
    assertThat(client.get(all).all("class=\"code\">([^<]*)<")).isEqualTo(tubs);
    assertThat(client.get("/k/TARN/label?task=none").status()).isEqualTo(404);
    assertThat(label.body()).contains("href=\"/k/TARN/wall/cold\"");
    assertThat(left(tubs)).isEqualByComparingTo(Amount.grams(5900));

    String undoes = all(done.body(), "name=\"undoes\" value=\"([0-9a-f-]{36})\"").get(0);
    Answer undone =
        client.postAndFollow(
            "/k/TARN/tick",
            "station",
            "cold",
            "task",
            base().id(),
            "kind",
            "UNDO",
            "undoes",
            undoes,
            "sequence",
            String.valueOf(Site.sequence()));
    assertThat(undone.status()).isEqualTo(200);
    assertThat(state(base())).isEqualTo(TaskState.TO_DO);
    assertThat(left(tubs).isZero()).isTrue();
  }

  private List<String> tubs() {
    Answer of = client.get(WALL + "?task=" + Client.encoded(base().id()));
    return of.all("label\\?station=cold&amp;tub=(1205-\\d+)");
  }

  @Test
  void undoIsRefusedInPlaceOnceATubWasCounted() {
    work();
    Answer done =
        client.postAndFollow(
            "/k/TARN/tick",
            "station",
            "cold",
            "task",
            base().id(),
            "kind",
            "DONE",
            "amount",
            "",
            "sequence",
            String.valueOf(Site.sequence()));
    String tub = tubs().get(0);
    site.wiring().stock().count(site.house(), tub, Amount.grams(100), "ines");
    String undoes = all(done.body(), "name=\"undoes\" value=\"([0-9a-f-]{36})\"").get(0);
    Answer refused =
        client.post(
            "/k/TARN/tick",
            "station",
            "cold",
            "task",
            base().id(),
            "kind",
            "UNDO",
            "undoes",
            undoes,
            "sequence",
            String.valueOf(Site.sequence()));
    assertThat(refused.status()).isEqualTo(409);
    assertThat(refused.text()).contains("Not taken: tub " + tub);
    assertThat(state(base())).isEqualTo(TaskState.DONE);
  }

  @Test
  void anAmountThatIsNoneComesBackAsTypedAndNothingIsDone() {
    work();
    for (String typed : List.of("six", "12 piece", "5,900 kg", "-1 kg", "70 kg")) {
      Answer wrong =
          client.post(
              "/k/TARN/tick",
              "station",
              "cold",
              "task",
              base().id(),
              "kind",
              "DONE",
              "amount",
              typed,
              "sequence",
              String.valueOf(Site.sequence()));
      assertThat(wrong.status()).as(typed).isEqualTo(422);
      assertThat(wrong.body()).contains("value=\"" + typed + "\"").contains("id=\"made-fault\"");
    }
    assertThat(state(base())).isEqualTo(TaskState.TO_DO);
  }

  @Test
  void theWallSaysWhatAStepWantsOfItsMachineAndOfHandsAtItsEnd() {
    assertThat(everyTask("pastry")).contains("planetary mixer: dry before the powders go in");
    assertThat(everyTask("hot")).contains("at the end 3 min of it with hands");
  }

  private String everyTask(String station) {
    String wall = "/k/TARN/wall/" + station;
    return all(client.get(wall).body(), "href=\"[^\"]*\\?task=([^\"&#]+)").stream()
        .distinct()
        .map(task -> client.get(wall + "?task=" + task).text())
        .collect(java.util.stream.Collectors.joining("\n"));
  }

  @Test
  void unknownStationPersonAndTubAreNotFound() {
    work();
    assertThat(client.get("/k/TARN/wall/nowhere").status()).isEqualTo(404);
    assertThat(client.get("/k/TARN/label?tub=none").status()).isEqualTo(404);
    assertThat(client.get("/k/OTHER/wall/cold").status()).isEqualTo(404);
    assertThat(client.post("/k/TARN/wall/cook", "station", "cold", "person", "nobody").status())
        .isEqualTo(404);
    Answer tick =
        client.post(
            "/k/TARN/tick",
            "station",
            "cold",
            "task",
            "no/such/task",
            "kind",
            "START",
            "sequence",
            "7");
    assertThat(tick.status()).isEqualTo(404);
  }

  @Test
  void changedCoversStandOnTheWallUntilTheStationHasSeenThem() {
    client.get("/k/TARN/events/harvest-dinner");
    site.wiring().importBook().importBook(withCovers(97), "test");
    Answer before = client.get(WALL);
    assertThat(before.text())
        .contains("Harvest dinner: 84 → 97 covers", "Weights below do not include it yet");
    assertThat(
            site.wiring()
                .plans()
                .accept(site.house(), Site.DAY, site.house().stand().facts(), "chef"))
        .isEqualTo(halfgram.desk.Plans.Accepting.IN_FORCE);
    Answer after = client.get(WALL);
    assertThat(after.text()).contains("Harvest dinner: 84 → 97 covers", "Weights below include it");
    String number = all(after.body(), "name=\"number\" value=\"(\\d+)\"").get(0);
    Answer seen = client.postAndFollow("/k/TARN/wall/seen", "station", "cold", "number", number);
    assertThat(seen.text()).doesNotContain("97 covers");
    assertThat(client.get("/k/TARN/wall/hot").text()).contains("97 covers");
  }

  @Test
  void whatTomorrowTakesOfALateBatchTooIsNoWorkOfTonightUnlessSomebodyHasBegunIt() {
    work();
    site.setClock(Site.at("23:30"));
    Answer wall = client.get(WALL);
    int past = wall.body().indexOf("class=\"past\"");
    assertThat(wall.body().indexOf("Sheep-yoghurt base")).isGreaterThan(past);
    assertThat(wall.body().indexOf("Char, thawed")).as("for tomorrow").isBetween(0, past);
    tick(base(), "START", Site.sequence());
    Answer begun = client.get(WALL);
    assertThat(begun.body().indexOf("Sheep-yoghurt base"))
        .isBetween(0, begun.body().indexOf("class=\"past\""));
  }

  @Test
  void workOfAServiceThatIsOverStandsApartAndIsMadeOrLeft() {
    work();
    assertThat(client.get(WALL).text()).doesNotContain("Of services that are over");
    site.setClock(Site.at("22:00"));
    Answer wall = client.get(WALL);
    assertThat(wall.text())
        .contains("Of services that are over", "for Harvest dinner, over since 21:30", "Leave it");
    String today = client.get("/k/TARN/").text();
    assertThat(today.indexOf("Of services that are over"))
        .isGreaterThan(today.indexOf("Prep sheet"));
    String past = wall.body().substring(wall.body().indexOf("class=\"past\""));
    String lead = wall.body().substring(0, wall.body().indexOf("class=\"past\""));
    for (String task : all(past, "name=\"task\" value=\"([^\"]+)\"")) {
      assertThat(lead).doesNotContain("\"" + task + "\"");
    }
    FilledForm leave = FilledForm.of(new Answer(200, past, Map.of()), "/tick");
    Answer left = client.postAndFollow("/k/TARN/tick", leave.fields());
    assertThat(left.text()).contains("Undo", "its service is over");
    String still = left.body().substring(left.body().indexOf("class=\"past\""));
    assertThat(still).doesNotContain("\"" + leave.value("task") + "\"");
    assertThat(client.get(WALL + "?task=" + leave.value("task").replace("/", "%2F")).text())
        .contains("FAILED");
  }

  @Test
  void platesForDietsNameTheirServiceAndThePassIsLedToTheOneThatRuns() {
    String wall = client.get(WALL).text();
    assertThat(wall).containsPattern("DAIRY-FREE \\d+ plates Harvest dinner \\d+ [A-Z]");
    assertThat(client.get("/k/TARN/wall/pass").text())
        .contains("Nothing to do here today")
        .doesNotContain("to its page", "0 of 0 done", "on time");
    site.setClock(Site.at("19:30"));
    Answer pass = client.get("/k/TARN/wall/pass");
    assertThat(pass.text()).contains("Harvest dinner now: to its page");
    assertThat(pass.body()).contains("/k/TARN/service/harvest-dinner\">Harvest dinner now");
    assertThat(client.get(WALL).text()).doesNotContain("to its page");
  }

  @Test
  void theWallSpeaksSpanishAndFrenchWithEverySentence() throws IOException {
    Properties english = sentences("en");
    for (String language : List.of("es", "fr")) {
      assertThat(sentences(language).keySet()).as(language).isEqualTo(english.keySet());
    }
    client.post("/k/TARN/language", "language", "es", "here", WALL);
    assertThat(client.get(WALL).text()).contains("CONTIENE", "POR HACER").doesNotContain("TO DO");
    client.post("/k/TARN/language", "language", "fr", "here", WALL);
    assertThat(client.get(WALL).text()).contains("CONTIENT").doesNotContain("TO DO");
  }

  // ---- below their callers ----

  private void work() {
    client.post("/k/TARN/wall/cook", "station", "cold", "person", "ines");
  }

  private Task base() {
    return site.wiring().plans().open(site.house(), Site.DAY, "test").sheet().tasks().stream()
        .filter(task -> task.version().formula().equals("yoghurt-base"))
        .filter(task -> !task.stored().isEmpty())
        .findFirst()
        .orElseThrow();
  }

  private TaskState state(Task task) {
    return site.wiring().plans().find(site.house(), Site.DAY).orElseThrow().progress(task).state();
  }

  private Answer tick(Task task, String kind, long sequence) {
    return client.post(
        "/k/TARN/tick",
        "station",
        "cold",
        "task",
        task.id(),
        "kind",
        kind,
        "sequence",
        String.valueOf(sequence));
  }

  private Amount left(List<String> tubs) {
    return Amount.sum(
        tubs.stream()
            .distinct()
            .map(code -> site.wiring().stock().find(site.house(), code).orElseThrow())
            .map(life -> life.tub().lot().left())
            .toList());
  }

  private static byte[] withCovers(int covers) {
    return new String(halfgram.desk.Demo.book(Site.DAY), java.nio.charset.StandardCharsets.UTF_8)
        .replace("\"final\":84", "\"final\":" + covers)
        .getBytes(java.nio.charset.StandardCharsets.UTF_8);
  }

  private static List<String> all(String source, String pattern) {
    Matcher matcher = Pattern.compile(pattern).matcher(source);
    List<String> found = new java.util.ArrayList<>();
    while (matcher.find()) {
      found.add(matcher.group(1));
    }
    return found;
  }

  private static Properties sentences(String language) throws IOException {
    Properties sentences = new Properties();
    String name = "/halfgram/pages/wall_" + language + ".properties";
    try (InputStream stream = WallTest.class.getResourceAsStream(name)) {
      sentences.load(
          new java.io.InputStreamReader(stream, java.nio.charset.StandardCharsets.UTF_8));
    }
    return sentences;
  }
}
