package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.desk.CrewInForce;
import halfgram.desk.Demo;
import halfgram.desk.InForce;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Who does what when on the demo's Saturday, through HTTP, on H2. */
class CrewPlanTest {
  private static final String DEVICE = "00000000-0000-4000-8000-00000000000c";

  private Site site;
  private Script script;

  Site opened() {
    return Site.demo().searchFully();
  }

  @BeforeEach
  void open() {
    site = opened();
    script = site.script();
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void theFirstLookMakesOneThatEverybodyFinds() {
    JsonNode lanes = lanes();
    assertThat(lanes.path("number").asInt()).isEqualTo(1);
    assertThat(lanes.path("tasks")).isNotEmpty();
    assertThat(lanes.path("leftOut")).isEmpty();
    assertThat(lanes.path("adrift")).isEmpty();
    assertThat(lanes.path("over")).isEmpty();
    assertThat(lanes()).isEqualTo(lanes);
    site = site.restarted();
    script = site.script();
    assertThat(lanes()).isEqualTo(lanes);
    JsonNode task = script.get("tasks").body().get(0);
    assertThat(task.at("/planned/start"))
        .isEqualTo(place(lanes, task.path("id").asText(), "start"));
  }

  @Test
  void theSameDayGetsTheSamePlan() {
    JsonNode one = lanes();
    try (Site other = opened()) {
      JsonNode two = other.script().get("lanes").body();
      assertThat(one.path("cut").asBoolean() || two.path("cut").asBoolean() || same(one, two))
          .isTrue();
    }
  }

  private static boolean same(JsonNode one, JsonNode two) {
    return one.path("tasks").equals(two.path("tasks"));
  }

  @Test
  void todayAndTheWallSayWhenAndWho() {
    Answer today = site.client().get("/k/TARN/?by=start");
    assertThat(today.text()).contains("With the people and machines of the day", "latest");
    List<String> planned = today.all("class=\"planned\">([0-9:]+)<");
    assertThat(planned.subList(0, 40)).isSorted();
    JsonNode lanes = lanes();
    List<String> times =
        site.client().get("/k/TARN/wall/cold").all("class=\"time\"[^>]*>([0-9:]+)<");
    assertThat(times).isSubsetOf(starts(lanes));
  }

  private static List<String> starts(JsonNode lanes) {
    List<String> starts = new ArrayList<>();
    lanes.path("tasks").forEach(one -> starts.add(one.path("start").asText().substring(11, 16)));
    return starts;
  }

  @Test
  void moreCoversKeepMostOfWhatWasPlanned() {
    Map<String, String> before = starts();
    expect(32);
    Answer page = site.client().get("/k/TARN/");
    String facts = page.all("name=\"facts\" value=\"([^\"]*)\"").get(0);
    site.wiring().plans().accept(site.house(), Site.DAY, Long.parseLong(facts), Site.OFFICE);
    JsonNode lanes = lanes();
    assertThat(lanes.path("plan").asInt()).isEqualTo(2);
    assertThat(lanes.path("number").asInt()).isEqualTo(1);
    Map<String, String> after = starts();
    long kept =
        before.entrySet().stream()
            .filter(one -> one.getValue().equals(after.get(one.getKey())))
            .count();
    assertThat(kept).as("of %d", before.size()).isGreaterThan(before.size() * 3 / 4);
  }

  private Map<String, String> starts() {
    Map<String, String> starts = new HashMap<>();
    lanes()
        .path("tasks")
        .forEach(one -> starts.put(one.path("task").asText(), one.path("start").asText()));
    return starts;
  }

  @Test
  void aCookGoneHomeMovesWhatHasNotBegunAndNothingElse() {
    JsonNode lanes = lanes();
    JsonNode first = first(lanes, "");
    site.setClock(OffsetDateTime.parse(first.path("start").asText()).toInstant());
    tick(1, "start", first.path("task").asText(), first.at("/people/0").asText("office"));
    assertThat(lanes().path("proposal").isMissingNode()).isTrue();
    say(2, "'kind': 'in', 'person': 'ines', 'until': '13:00'");
    JsonNode moved = lanes();
    assertThat(moved.path("adrift").findValuesAsText("why")).contains("not-there");
    JsonNode proposal = moved.path("proposal");
    assertThat(tasks(proposal.path("moved"), proposal.path("given")))
        .isNotEmpty()
        .doesNotContain(first.path("task").asText());
    assertThat(accept(proposal).status()).isEqualTo(201);
    assertThat(accept(proposal).status()).isEqualTo(201);
    JsonNode after = lanes();
    assertThat(after.path("number").asInt()).isEqualTo(2);
    assertThat(place(after, first.path("task").asText(), "start")).isEqualTo(first.path("start"));
    for (JsonNode one : after.path("tasks")) {
      boolean ines = one.path("people").toString().contains("ines");
      assertThat(ines && one.path("start").asText().compareTo("2026-12-05T13:00") > 0)
          .as(one.toString())
          .isFalse();
    }
    assertThat(site.client().get("/k/TARN/log?what=lanes").text())
        .contains("Who does what when: accepted");
  }

  @Test
  void whatNobodyStartedIsTakenOnFromNowAndOldWordsAreStale() {
    JsonNode lanes = lanes();
    site.setClock(Site.at("13:30"));
    JsonNode late = lanes();
    assertThat(late.path("adrift").findValuesAsText("why")).contains("not-started");
    JsonNode proposal = late.path("proposal");
    assertThat(site.client().get("/k/TARN/").text()).contains("The day has moved:");
    say(1, "'kind': 'out', 'person': 'marit'");
    assertThat(accept(proposal).status()).isEqualTo(409);
    assertThat(lanes().path("number")).isEqualTo(lanes.path("number"));
  }

  @Test
  void whereAnotherPlanIsOfferedTooOneAcceptSettlesBoth() {
    lanes();
    site.setClock(Site.at("13:30"));
    var client = site.client();
    Answer moved = client.get("/k/TARN/");
    assertThat(moved.text()).contains("Accept the moves").doesNotContain("Accept the plan");
    String dinner = "/k/TARN/events/harvest-dinner";
    FilledForm covers = FilledForm.of(client.get(dinner), dinner + "/covers");
    client.post(dinner + "/covers", covers.with("/covers/final", "97").fields());
    Answer both = client.get("/k/TARN/");
    assertThat(both.text())
        .contains("The day has moved:", "accept it, and this is settled too", "Accept the plan")
        .doesNotContain("Accept the moves");
    FilledForm plan = FilledForm.of(both, "/k/TARN/plan");
    assertThat(client.post("/k/TARN/plan", plan.fields()).status()).isEqualTo(303);
    assertThat(client.get("/k/TARN/").text()).doesNotContain("The day has moved:", "Accept the ");
  }

  @Test
  void theOfficeAcceptsOnToday() {
    lanes();
    site.setClock(Site.at("13:30"));
    var client = site.client();
    Answer today = client.get("/k/TARN/");
    String mark = today.all("name=\"mark\" value=\"([0-9a-f]+)\"").get(0);
    assertThat(
            client.post("/k/TARN/lanes", "day", "2026-12-05", "number", "1", "mark", mark).status())
        .isEqualTo(303);
    assertThat(client.get("/k/TARN/").text()).doesNotContain("The day has moved:");
    assertThat(
            client
                .post("/k/TARN/lanes", "day", "2026-12-05", "number", "1", "mark", "0".repeat(64))
                .status())
        .isEqualTo(409);
    assertThat(client.post("/k/TARN/lanes", "day", "2026-12-05").status()).isEqualTo(400);
  }

  @Test
  void aKitchenThatSaysAtOnceIsNotAsked() {
    ObjectNode book = book();
    ((ObjectNode) book.path("kitchen")).put("lanes", "at-once");
    site.importBook(book.toString().getBytes(StandardCharsets.UTF_8));
    lanes();
    site.setClock(Site.at("10:45"));
    JsonNode after = lanes();
    assertThat(after.path("number").asInt()).isEqualTo(2);
    assertThat(after.path("proposal").isMissingNode()).isTrue();
  }

  @Test
  void whoIsOnItSaysHowMuchLongerAndTheDayIsAsked() {
    JsonNode first = first(lanes(), "");
    String task = first.path("task").asText();
    site.setClock(OffsetDateTime.parse(first.path("start").asText()).toInstant());
    String longer = "{'task': '%s', 'minutes': 240}".formatted(task);
    assertThat(script.post("lanes/longer", longer).status()).isEqualTo(409);
    tick(1, "start", task, first.at("/people/0").asText("office"));
    assertThat(script.post("lanes/longer", longer).status()).isEqualTo(201);
    JsonNode said = lanes();
    assertThat(said.at("/adrift/0/task").asText()).isEqualTo(task);
    assertThat(said.at("/adrift/0/why").asText()).isEqualTo("over");
    assertThat(said.path("tasks")).isEqualTo(lanes().path("tasks"));
    int number = said.path("number").asInt();
    assertThat(script.post("lanes/longer", longer).status()).isEqualTo(201);
    assertThat(lanes().path("number").asInt()).isEqualTo(number);
    assertThat(accept(said.path("proposal")).status()).isEqualTo(201);
    assertThat(lanes().path("adrift")).isEmpty();
    String log = site.client().get("/k/TARN/log?what=lanes").text();
    assertThat(log).contains("Takes longer").as("named, not by its id").doesNotContain(task);
  }

  @Test
  void aTickWorksNothingOut() {
    JsonNode lanes = lanes();
    InForce inForce = site.wiring().plans().find(site.house(), Site.DAY).orElseThrow();
    CrewInForce before = site.wiring().crewPlans().find(site.house(), inForce).orElseThrow();
    JsonNode first = first(lanes, "ines");
    site.setClock(Site.at("13:30"));
    tick(1, "start", first.path("task").asText(), "ines");
    assertThat(site.wiring().crewPlans().find(site.house(), inForce)).contains(before);
  }

  private JsonNode lanes() {
    Script.Answer answer = script.get("lanes");
    assertThat(answer.status()).isEqualTo(200);
    return answer.body();
  }

  private static List<String> tasks(JsonNode... lists) {
    List<String> tasks = new ArrayList<>();
    for (JsonNode list : lists) {
      list.forEach(one -> tasks.add(one.path("task").asText()));
    }
    return tasks;
  }

  private static JsonNode first(JsonNode lanes, String cook) {
    JsonNode first = null;
    for (JsonNode one : lanes.path("tasks")) {
      if (one.path("people").toString().contains(cook)
          && (first == null
              || one.path("start").asText().compareTo(first.path("start").asText()) < 0)) {
        first = one;
      }
    }
    assertThat(first).isNotNull();
    return first;
  }

  private static JsonNode place(JsonNode lanes, String task, String key) {
    for (JsonNode one : lanes.path("tasks")) {
      if (one.path("task").asText().equals(task)) {
        return one.path(key);
      }
    }
    throw new AssertionError("no place for " + task);
  }

  private Script.Answer accept(JsonNode proposal) {
    return script.post(
        "lanes",
        "{'day': '2026-12-05', 'number': %s, 'mark': '%s'}"
            .formatted(proposal.path("number"), proposal.path("mark").asText()));
  }

  private void say(int sequence, String entry) {
    assertThat(
            script
                .post(
                    "crew",
                    "{" + entry + ", 'device': '" + DEVICE + "', 'sequence': " + sequence + "}")
                .status())
        .isEqualTo(201);
  }

  private void tick(int sequence, String kind, String task, String cook) {
    assertThat(
            script
                .post(
                    "ticks",
                    "{'kind': '%s', 'task': '%s', 'cook': '%s', 'device': '%s', 'sequence': %d}"
                        .formatted(kind, task, cook, DEVICE, 100 + sequence))
                .status())
        .isEqualTo(201);
  }

  private static ObjectNode book() {
    return (ObjectNode) BookStore.parse(new String(Demo.book(Site.DAY), StandardCharsets.UTF_8));
  }

  /** Gives the terrace reception another final number. */
  private void expect(int covers) {
    ObjectNode book = book();
    for (JsonNode event : book.path("events")) {
      if (event.path("code").asText().equals("terrace")) {
        ((ObjectNode) event.path("covers")).put("final", covers);
      }
    }
    site.importBook(book.toString().getBytes(StandardCharsets.UTF_8));
  }
}
