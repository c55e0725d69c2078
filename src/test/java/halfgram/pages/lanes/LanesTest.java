package halfgram.pages.lanes;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.desk.CrewInForce;
import halfgram.desk.InForce;
import halfgram.prep.Task;
import halfgram.prep.crew.DayFacts;
import halfgram.prep.crew.Placed;
import halfgram.prep.crew.Present;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import halfgram.web.Visit;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The lanes of a day: every task is there, what holds it is told, what if stores nothing. */
class LanesTest {
  private static final String LANES = "/k/TARN/lanes";

  private static Site site;
  private static Client client;

  @BeforeAll
  static void open() {
    site = Site.demo().searchFully();
    client = site.client();
  }

  @AfterAll
  static void close() {
    site.close();
  }

  @Test
  void everyTaskIsInTheListAndOnALaneOrHasNoPlace() {
    Answer page = client.get(LANES);
    assertThat(page.status()).isEqualTo(200);
    List<String> listed = page.all("href=\"([^\"]*lanes/task[^\"]*)\"");
    for (Task task : sheet()) {
      assertThat(listed.stream().filter(href -> href.endsWith("id=" + encoded(task.id()))))
          .as(task.id())
          .isNotEmpty();
    }
    assertThat(page.text()).contains("Ines", "Lorcan", "Marit", "Sixten", "Yrsa", "break 11:15");
    assertThat(page.body()).contains("class=\"service\"", "class=\"now\"", "now 09:00");
  }

  @Test
  void whatIsDoneLiesFoldedInALongList() {
    try (Site own = Site.demo()) {
      Client cook = own.client();
      cook.get(LANES);
      assertThat(cook.get(LANES).body()).doesNotContain("id=\"lanes-done\"");
      InForce inForce = own.wiring().plans().find(own.house(), Site.DAY).orElseThrow();
      Task brine =
          inForce.sheet().tasks().stream()
              .filter(task -> task.version().formula().equals("fish-brine"))
              .findFirst()
              .orElseThrow();
      String station = brine.station();
      cook.post("/k/TARN/wall/cook", "station", station, "person", "lorcan");
      for (String kind : List.of("START", "DONE")) {
        cook.post(
            "/k/TARN/tick",
            "station",
            station,
            "task",
            brine.id(),
            "kind",
            kind,
            "amount",
            kind.equals("DONE") ? "5591 g" : "",
            "sequence",
            String.valueOf(Site.sequence()));
      }
      List<String> folded =
          cook.get(LANES).all("(?s)<details class=\"fold\" id=\"lanes-done\">(.*?)</details>");
      assertThat(folded).hasSize(1);
      assertThat(folded.get(0)).contains("Done: 1", "Fish brine");
    }
  }

  @Test
  void theSameDayIsShownByMachineAndEachUnitHasItsOwnLane() {
    Answer page = client.get(LANES + "?by=machine");
    assertThat(page.text()).contains("The day by machine", "hob plate 1", "Not used today:");
    assertThat(page.body()).contains("href=\"/k/TARN/lanes\"");
  }

  @Test
  void whoTakesSomethingOutHasItOnTheirLaneAndOnItsPage() {
    Answer page = client.get(LANES);
    JsonNode lanes = site.script().get("lanes").body();
    int taken = 0;
    for (JsonNode task : lanes.path("tasks")) {
      if (task.has("unload")) {
        taken++;
        assertThat(task.at("/unload/people")).hasSize(1);
        assertThat(task.at("/unload/to").asText()).isEqualTo(task.path("end").asText());
        String id = encoded(task.path("task").asText());
        assertThat(page.body().split("lanes/task[?]id=" + id + "\"", -1))
            .as("the bar, the hands at its end, the list")
            .hasSizeGreaterThanOrEqualTo(4);
        assertThat(client.get(LANES + "/task?id=" + id).text()).contains("taken out");
      }
    }
    assertThat(taken).isPositive();
    assertThat(page.body()).contains(": out</title>");
  }

  @Test
  void whoWashesAMachineHasItOnTheirLaneTheMachineOnItsOwnAndTheListInItsOrder() {
    Answer page = client.get(LANES);
    JsonNode washes = site.script().get("lanes").body().path("washes");
    assertThat(washes).isNotEmpty();
    assertThat(page.all("<a href=\"[^\"]*\" class=\"(wash)\"")).hasSize(washes.size());
    assertThat(page.all("<tr class=\"(wash)\"")).hasSize(washes.size());
    assertThat(client.get(LANES + "?by=machine").all("<a href=\"[^\"]*\" class=\"(wash)\""))
        .hasSize(washes.size());
    JsonNode wash = washes.get(0);
    assertThat(page.text()).contains("wash ");
    assertThat(wash.path("from").asText()).isLessThan(wash.path("to").asText());
  }

  @Test
  void thePlatingOfADishIsOnTheLaneOfEachWhoPlatesAndLeadsToItsService() {
    Answer page = client.get(LANES);
    JsonNode platings = site.script().get("lanes").body().path("platings");
    assertThat(platings).isNotEmpty();
    int hands = 0;
    for (JsonNode line : platings) {
      hands += line.path("people").size();
      assertThat(page.body()).contains("service/" + line.path("service").asText());
    }
    assertThat(page.all("<a href=\"[^\"]*\" class=\"(plating)\"")).hasSize(hands);
    assertThat(page.all("<tr class=\"(plating)\"")).hasSize(platings.size());
    Answer asked = client.get(LANES + "/what-if?look=yes&off=ines");
    assertThat(asked.text()).contains("Plating short of hands");
    assertThat(site.script().post("what-if", "{'off': ['ines']}").body().at("/then/shortPlatings"))
        .hasToString(String.valueOf(platings.size()));
  }

  @Test
  void longWorkIsNotDrawnAcrossTheBreakOfWhoeverDoesIt() {
    String page = client.get(LANES).body();
    InForce inForce = site.wiring().plans().find(site.house(), Site.DAY).orElseThrow();
    CrewInForce crew = site.wiring().crewPlans().find(site.house(), inForce).orElseThrow();
    DayFacts facts = site.wiring().crewPlans().facts(site.house(), inForce, crew);
    int relieved = 0;
    for (Present one : Present.list(inForce.book(), facts, Site.DAY)) {
      String code = one.person().code();
      for (Placed placed : crew.plan().placed().values()) {
        relieved += placed.people().contains(code) && meets(one, whole(placed)) ? 1 : 0;
        placed.turns().stream()
            .filter(turn -> turn.people().contains(code))
            .forEach(turn -> assertThat(meets(one, turn)).as("%s at %s", code, turn).isFalse());
      }
    }
    assertThat(relieved).as("work that goes on over a break").isPositive();
    assertThat(page).doesNotContain("class=\"pause\"");
  }

  private static Placed.Hands whole(Placed placed) {
    return new Placed.Hands(placed.start(), placed.handsOff(), placed.people());
  }

  /** Whether somebody's break, or a fixed block, lies within. */
  private static boolean meets(Present one, Placed.Hands work) {
    return one.gaps().stream()
        .anyMatch(
            gap ->
                gap.window().start().isBefore(work.to())
                    && gap.window().end().isAfter(work.from()));
  }

  @Test
  void aTaskTellsItsLatestStartAndLinksWhatItWaitsForAndWhatWaitsForIt() {
    Task after = sheet().stream().filter(task -> !task.links().isEmpty()).findFirst().orElseThrow();
    String before = after.links().get(0).task();
    Answer page = client.get(LANES + "/task?id=" + encoded(after.id()));
    assertThat(page.text()).contains("latest start", "Waits for", "What waits for it");
    assertThat(page.body()).contains("lanes/task?id=" + encoded(before));
    Answer other = client.get(LANES + "/task?id=" + encoded(before));
    assertThat(other.body()).contains("lanes/task?id=" + encoded(after.id()));
    assertThat(client.get(LANES + "/task?id=none").status()).isEqualTo(404);
  }

  @Test
  void loadCountsNoMoreThanThereIsAndMarksTheHoursBeforeAServiceOnly() {
    JsonNode load = site.script().get("load").body();
    assertThat(load.path("people")).hasSize(5);
    for (JsonNode person : load.path("people")) {
      assertThat(person.path("workMinutes").asInt())
          .isPositive()
          .isLessThanOrEqualTo(person.path("thereMinutes").asInt());
    }
    for (JsonNode station : load.path("stations")) {
      for (JsonNode hour : station.path("hours")) {
        String mark = hour.path("mark").asText();
        boolean full = hour.path("beforeService").asBoolean() && hour.path("percent").asInt() >= 70;
        if (hour.path("thereMinutes").asInt() > 0) {
          assertThat(mark).as(hour.toString()).isEqualTo(full ? "tight" : "none");
        }
      }
    }
    assertThat(client.get(LANES).text()).contains("How full the day is", "By station and hour");
  }

  @Test
  void whatIfShowsBothSidesAndStoresNothing() {
    client.get(LANES);
    long before = site.house().stand().change();
    Answer asked = client.get(LANES + "/what-if?look=yes&off=ines&covers-harvest-dinner=10");
    assertThat(asked.status()).isEqualTo(200);
    assertThat(asked.text())
        .contains("Harvest dinner: 10 covers more", "without Ines", "Side by side", "not there");
    assertThat(asked.body()).contains("name=\"covers-harvest-dinner\"", "value=\"10\"");
    assertThat(site.house().stand().change()).isEqualTo(before);
    assertThat(client.get("/k/TARN/").text()).doesNotContain("94 covers");
  }

  @Test
  void whatIsTypedWrongComesBackAsTypedWithWhatIsAccepted() {
    Answer wrong = client.get(LANES + "/what-if?look=yes&covers-harvest-dinner=many");
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.text()).contains("Not covers. Accepted").doesNotContain("Side by side");
    assertThat(wrong.body()).contains("value=\"many\"");
    Answer gone = client.get(LANES + "/what-if?look=yes&off=nobody");
    assertThat(gone.status()).isEqualTo(422);
    assertThat(gone.text()).contains("accepted: ines");
  }

  @Test
  void everythingTypedWrongIsToldAtItsFieldAtOnce() {
    Answer wrong =
        client.get(
            LANES
                + "/what-if?look=yes&covers-harvest-dinner=many&minutes-harvest-dinner=soon"
                + "&covers-lunch.2026-12-05=-41&minutes-lunch.2026-12-05=700"
                + "&minutes-bar.2026-12-05=590&covers-bar.2026-12-05=3");
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.text()).doesNotContain("Side by side");
    assertThat(wrong.all("id=\"told-([a-z0-9.-]+)\""))
        .containsExactlyInAnyOrder(
            "covers-harvest-dinner",
            "minutes-harvest-dinner",
            "covers-lunch.2026-12-05",
            "minutes-lunch.2026-12-05",
            "minutes-bar.2026-12-05");
    assertThat(wrong.all("aria-describedby=\"told-([a-z0-9.-]+)\"")).hasSize(5);
    assertThat(wrong.text())
        .contains("Not covers. Accepted", "Not minutes. Accepted")
        .contains("There are no more than 40 covers", "would leave the kitchen's day");
    assertThat(wrong.body())
        .contains("value=\"many\"", "value=\"soon\"", "value=\"-41\"", "value=\"700\"")
        .contains("value=\"590\"", "value=\"3\"");
  }

  @Test
  void whoeverIsTakenOutDoesNothingFromThenOn() {
    JsonNode answer = site.script().post("what-if", "{'off': ['lorcan']}").body();
    assertThat(answer.path("moves")).isNotEmpty();
    for (JsonNode move : answer.path("moves")) {
      assertThat(move.path("to").path("people").toString()).doesNotContain("lorcan");
    }
    assertThat(answer.at("/then/load/people")).hasSize(4);
    assertThat(answer.at("/today/load/people")).hasSize(5);
    int last = Integer.MAX_VALUE;
    for (JsonNode move : answer.path("moves")) {
      if (move.has("from") && move.has("to")) {
        int by = Math.abs(move.path("minutes").asInt());
        assertThat(by).as("the farthest first").isLessThanOrEqualTo(last);
        last = by;
      }
    }
  }

  @Test
  void aSecondMachineAndALaterServiceCanBeAskedTogether() {
    String body = "{'services': [{'service': 'harvest-dinner', 'minutes': 30}], 'more': ['fryer']}";
    JsonNode answer = site.script().post("what-if", body).body();
    assertThat(answer.at("/then/load/stations")).hasSize(4);
    Script.Answer wrong = site.script().post("what-if", "{'services': [{'service': 'breakfast'}]}");
    assertThat(wrong.status()).isEqualTo(422);
    Script.Answer none = site.script().post("what-if", "{'more': ['sous-vide-army']}");
    assertThat(none.status()).isEqualTo(422);
    assertThat(none.body().toString()).contains("$.more", "fryer");
  }

  @Test
  void noMoreCoversAreTakenFromAServiceThanItHas() {
    Answer wrong = client.get(LANES + "/what-if?look=yes&covers-lunch.2026-12-05=-41");
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.text()).contains("There are no more than 40 covers");
    assertThat(client.get(LANES + "/what-if?look=yes&covers-lunch.2026-12-05=-40").status())
        .isEqualTo(200);
  }

  @Test
  void aDayAheadIsShownAndOneThatNobodyPlannedLeadsToItsPage() {
    assertThat(client.get(LANES + "?date=2026-12-29").status()).isEqualTo(200);
    assertThat(client.get(LANES + "?date=2021-01-01").status()).isEqualTo(404);
    Answer past = client.get(LANES + "?date=2026-12-04");
    assertThat(past.status()).isEqualTo(303);
    assertThat(past.header("location")).endsWith("/k/TARN/?date=2026-12-04");
    assertThat(client.get("/k/TARN/?date=2026-12-04").status()).isEqualTo(200);
  }

  @Test
  void everyWayOnFromTheLanesIsThere() {
    for (String day : List.of("", "?date=" + Site.DAY.plusDays(1))) {
      for (String link : client.get(LANES + day).all("href=\"(/k/TARN/(?:lanes|paper)[^\"#]*)\"")) {
        int status = client.get(link.replace("&amp;", "&")).status();
        assertThat(status).as("%s on %s", link, day).isIn(200, 303);
      }
    }
  }

  @Test
  void aDayThatHasMovedIsNotCalledFittingAnyMore() {
    try (Site own = Site.demo().searchFully()) {
      Client chef = own.client();
      assertThat(chef.get(LANES).text()).contains("It fits.");
      assertThat(chef.get("/k/TARN/").text()).contains("all is in time");
      own.setClock(Site.at("12:20"));
      assertThat(chef.get(LANES).text()).doesNotContain("It fits.");
      assertThat(chef.get("/k/TARN/").text())
          .doesNotContain("all is in time")
          .contains("With the people and machines of the day it does not fit.");
    }
  }

  // ---- what stands behind it ----

  private static List<Task> sheet() {
    return site.wiring().plans().open(site.house(), Site.DAY, "test").sheet().tasks();
  }

  /** As an address of the page has it. */
  private static String encoded(String id) {
    return Visit.encoded(id);
  }
}
