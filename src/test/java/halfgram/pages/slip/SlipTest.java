package halfgram.pages.slip;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.desk.Demo;
import halfgram.desk.InForce;
import halfgram.prep.ServiceRun;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A service that slips or changes its covers: every press looks, one does it. */
class SlipTest {
  private static final String DINNER = "/k/TARN/slip/harvest-dinner";
  private static final String BAR = "/k/TARN/slip/bar.2026-12-05";

  private Site site;
  private Client client;

  @BeforeEach
  void open() {
    open(Site.demo());
  }

  private void open(Site other) {
    site = other;
    client = site.client();
    client.get("/k/TARN/");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void everyPressShowsWhatItWouldDoAndStoresNothing() {
    assertThat(client.get("/k/TARN/").body()).contains("slip/harvest-dinner");
    FilledForm form = form(client.get(DINNER));
    Answer later = client.post(DINNER, form.with("step", "minutes 15").fields());
    assertThat(later.text()).contains("18:45 to 21:45", "Today's sheet");
    Answer more = client.post(DINNER, form(later).with("step", "covers 10").fields());
    assertThat(more.text()).contains("18:45 to 21:45, 94 covers", "84 → 94 covers");
    assertThat(form(more).value("minutes")).isEqualTo("15");
    assertThat(form(more).value("covers")).isEqualTo("94");
    assertThat(client.post(DINNER, form(more).with("do", "view").fields()).status())
        .as("a press that no page has")
        .isEqualTo(400);
    assertThat(run("harvest-dinner").covers()).hasValue(84);
    assertThat(client.get("/k/TARN/").text()).doesNotContain("Accept");
  }

  @Test
  void fewerGuestsThanDietsLeadsToWhereDietsAreChanged() {
    FilledForm form = form(client.get(DINNER)).with("covers", "12").with("look", "yes");
    Answer refused = client.post(DINNER, form.fields());
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.text())
        .contains("more guests with a diet than guests", "Covers and diets of Harvest dinner");
    assertThat(refused.body()).contains("href=\"/k/TARN/events/harvest-dinner\"");
    assertThat(client.get("/k/TARN/events/harvest-dinner").body())
        .contains("action=\"/k/TARN/events/harvest-dinner/covers\"", "dairy-free");
  }

  @Test
  void doingItPutsThePlanWithItInForceOnce() {
    FilledForm form = form(client.get(DINNER)).with("minutes", "20").with("do", "force");
    assertThat(client.post(DINNER, form.fields()).status()).isEqualTo(303);
    assertThat(run("harvest-dinner").window().start()).isEqualTo(Site.at("18:50"));
    assertThat(client.get("/k/TARN/").text()).doesNotContain("Accept");
    Answer again = client.post(DINNER, form.fields());
    assertThat(again.status()).isEqualTo(409);
    assertThat(again.text()).contains("has changed since", "19:10");
    assertThat(run("harvest-dinner").window().start()).isEqualTo(Site.at("18:50"));
  }

  @Test
  void aRegularServiceSlipsOnItsDateAloneAndItsParsFollowTheCovers() {
    ServiceRun before = run("bar.2026-12-05");
    int usual = before.covers().orElseThrow();
    FilledForm form = form(client.get(BAR)).with("minutes", "-15");
    form = form.with("covers", String.valueOf(usual * 2)).with("do", "force");
    assertThat(client.post(BAR, form.fields()).status()).isEqualTo(303);
    ServiceRun after = run("bar.2026-12-05");
    assertThat(after.window().start()).isEqualTo(before.window().start().minusSeconds(900));
    assertThat(after.covers()).hasValue(usual * 2);
    for (int i = 0; i < before.uses().size(); i++) {
      assertThat(after.uses().get(i).amount())
          .isEqualByComparingTo(before.uses().get(i).amount().times(2));
    }
    JsonNode dates = service("bar").path("dates");
    assertThat(dates).hasSize(1);
    assertThat(dates.get(0).path("date").asText()).isEqualTo("2026-12-05");
    assertThat(service("bar").path("start")).isNotEqualTo(dates.get(0).path("start"));
    assertThat(client.get("/k/TARN/log?kind=slip").text())
        .contains("Bar evening", "15 min earlier");
  }

  @Test
  void aBookThatSaysNothingOfSingleDatesLeavesThePushAsItIs() {
    FilledForm form = form(client.get(BAR)).with("minutes", "-15").with("do", "force");
    assertThat(client.post(BAR, form.fields()).status()).isEqualTo(303);
    JsonNode pushed = service("bar").path("dates");
    assertThat(pushed).hasSize(1);
    ObjectNode book =
        (ObjectNode) BookStore.parse(new String(Demo.book(Site.DAY), StandardCharsets.UTF_8));
    for (JsonNode one : book.path("services")) {
      assertThat(one.has("dates")).isFalse();
    }
    site.importBook(bytes(book));
    assertThat(service("bar").path("dates")).isEqualTo(pushed);
    for (JsonNode one : book.path("services")) {
      if (one.path("code").asText().equals("bar")) {
        ((ObjectNode) one).putArray("dates");
      }
    }
    site.importBook(bytes(book));
    assertThat(service("bar").path("dates")).as("said to be none").isEmpty();
  }

  private static byte[] bytes(ObjectNode book) {
    return book.toString().getBytes(StandardCharsets.UTF_8);
  }

  @Test
  void coversAreNamedOnlyWhereTheyChange() {
    assertThat(look(DINNER, "minutes", "15").text())
        .contains("18:45 to 21:45")
        .doesNotContain("84 → 84", "0 → 0");
    int usual = run("bar.2026-12-05").covers().orElseThrow();
    assertThat(look(BAR, "covers", String.valueOf(usual + 6)).text())
        .contains(usual + " → " + (usual + 6) + " covers")
        .doesNotContain("made for 0");
  }

  @Test
  void wallAndLogTellTheNewTimeOnOneStripThatOnePressTakesAway() {
    client.post(
        DINNER, form(client.get(DINNER)).with("minutes", "10").with("do", "force").fields());
    client.post(DINNER, form(client.get(DINNER)).with("minutes", "5").with("do", "force").fields());
    client.post(DINNER, form(client.get(DINNER)).with("minutes", "5").with("do", "note").fields());
    Answer wall = client.get("/k/TARN/wall/cold");
    assertThat(wall.text())
        .contains("Harvest dinner: 18:45, not 18:30", "Harvest dinner: 18:50, not 18:45")
        .contains("Tasks here:")
        .doesNotContain("Tasks of the kitchen");
    assertThat(wall.all(">(Seen)</button>")).hasSize(1);
    List<String> seen = new java.util.ArrayList<>(List.of("station", "cold"));
    for (String number : wall.all("name=\"number\" value=\"(\\d+)\"")) {
      seen.addAll(List.of("number", number));
    }
    assertThat(seen).hasSizeGreaterThan(4);
    Answer after = client.postAndFollow("/k/TARN/wall/seen", seen.toArray(String[]::new));
    assertThat(after.text()).doesNotContain("not 18:30", "not 18:45");
    assertThat(client.get("/k/TARN/wall/hot").text()).contains("18:45, not 18:30");
    client.post("/k/TARN/language", "language", "fr", "here", "/k/TARN/wall/hot");
    assertThat(client.get("/k/TARN/wall/hot").text()).contains("18:45, et non 18:30");
    assertThat(client.get("/k/TARN/log?kind=plan").text())
        .contains("Harvest dinner 18:40, not 18:30", "Harvest dinner 18:45, not 18:40");
  }

  @Test
  void onlyWhatGoesOutFromThatTimeOnMoves() {
    FilledForm form = form(client.get(DINNER)).with("minutes", "10").with("from", "20:05");
    Answer looked = client.post(DINNER, form.with("look", "yes").fields());
    assertThat(looked.text()).contains("18:30 to 21:40");
    client.post(DINNER, form(looked).with("do", "note").fields());
    JsonNode courses = event().at("/services/0/courses");
    assertThat(courses)
        .extracting(one -> one.path("at").asText())
        .containsExactly("18:45", "19:25", "20:15", "21:05");
    assertThat(client.get("/k/TARN/").text()).contains("Accept", "until");
  }

  @Test
  void whatWaitsAlreadyIsToldApartFromWhatTheChangeDoes() {
    JsonNode alone = looked("{'minutes':5}");
    assertThat(alone.has("waiting")).isFalse();
    FilledForm more = form(client.get(DINNER)).with("covers", "150").with("do", "note");
    client.post(DINNER, more.fields());
    JsonNode later = looked("{'minutes':5}");
    assertThat(later.at("/difference/services/0/plates")).as("not by this").isEmpty();
    assertThat(later.at("/difference/made")).hasSizeLessThan(later.at("/waiting/made").size());
    assertThat(later.at("/waiting/services/0/to").asInt()).isEqualTo(150);
    assertThat(look(DINNER, "minutes", "5").text())
        .contains("Not by this: what waits on Today to be accepted already. Tasks: ")
        .doesNotContain("84 → 150");
  }

  private JsonNode looked(String asked) {
    JsonNode body = site.script().post("slip/harvest-dinner?look=yes", asked).body();
    assertThat(body.at("/effects/0/of").asText()).isEqualTo("today");
    return body.at("/effects/0");
  }

  @Test
  void theVerdictOnPeopleAndMachinesIsInTheJsonToo() {
    site.close();
    open(Site.demo().searchFully());
    String look = "slip/harvest-dinner?look=yes";
    assertThat(site.script().post(look, "{'minutes':5}").body().at("/crew/then/fits").asBoolean())
        .isTrue();
    JsonNode many = site.script().post(look, "{'covers':400}").body().path("crew");
    assertThat(many.at("/today/fits").asBoolean()).isTrue();
    assertThat(many.at("/then/fits").asBoolean()).isFalse();
  }

  @Test
  void whetherPeopleAndMachinesHoldItIsToldBeforeItIsDoneWithTheWayToTheLanes() {
    site.close();
    open(Site.demo().searchFully());
    Answer same = look(DINNER, "minutes", "5");
    assertThat(same.text())
        .contains("With people and machines It fits.", "as it is then Fits yes yes");
    Answer many = look(DINNER, "covers", "400");
    assertThat(many.text())
        .contains("With people and machines It does not fit.")
        .containsAnyOf("These would be late", "These would have no place")
        .contains("Why it would not fit", "Harvest dinner");
    assertThat(many.body().indexOf("Why it would not fit"))
        .as("before one decides")
        .isLessThan(many.body().indexOf("value=\"force\""));
    assertThat(run("harvest-dinner").covers()).hasValue(84);
    List<String> ways = many.all("href=\"(/k/TARN/lanes/what-if[^\"#]*)");
    assertThat(ways).hasSize(1);
    assertThat(client.get(ways.get(0).replace("&amp;", "&")).text())
        .contains("Harvest dinner: 316 covers more", "It does not fit.", "Why it would not fit");
  }

  @Test
  void whatTheLanesCannotBeAskedLeadsToNoLanesAndADayAheadIsToldToo() {
    FilledForm part = form(client.get(DINNER)).with("minutes", "10").with("from", "20:05");
    Answer looked = client.post(DINNER, part.with("look", "yes").fields());
    assertThat(looked.text()).contains("With people and machines");
    assertThat(looked.body()).doesNotContain("lanes/what-if");
    Answer ahead = client.get("/k/TARN/slip/bar.2026-12-12?minutes=30");
    assertThat(ahead.text()).contains("With people and machines");
    assertThat(ahead.body()).contains("lanes/what-if?date=2026-12-12&amp;covers-bar.2026-12-12=0");
  }

  @Test
  void ofAServiceThatHasBegunOnlyWhatIsLeftMoves() {
    site.setClock(Site.at("19:30"));
    Answer page = client.get(DINNER);
    assertThat(page.text()).contains("What is left of it").doesNotContain("All of it");
    client.post(DINNER, form(page).with("minutes", "20").with("do", "note").fields());
    assertThat(event().at("/services/0/courses"))
        .extracting(one -> one.path("at").asText())
        .containsExactly("18:45", "19:25", "20:25", "21:15");
    assertThat(event().at("/services/0/start").asText()).isEqualTo("18:30");
    assertThat(event().at("/services/0/end").asText()).isEqualTo("21:50");
  }

  @Test
  void aPushPastTheEndOfTheKitchensDayIsRefusedAndNothingMoves() {
    Answer far = look(DINNER, "minutes", "400");
    assertThat(far.status()).isEqualTo(422);
    assertThat(far.text()).contains("would leave the kitchen's day");
    Answer past = look(DINNER, "minutes", "-600");
    assertThat(past.status()).isEqualTo(422);
    assertThat(past.text())
        .containsPattern("that time is over; accepted: -\\d+ minutes and more")
        .doesNotContain("With people and machines");
    assertThat(form(far).value("minutes")).isEqualTo("400");
    assertThat(site.script().post("slip/bar.2026-12-05", "{'minutes':400}").problems())
        .containsExactly("$.minutes");
    assertThat(service("bar").has("dates")).isFalse();
    assertThat(event().at("/services/0/end").asText()).isEqualTo("21:30");
  }

  @Test
  void whatWouldNotLastIsNamedWithItsRemakeAndWhatCanWaitIsLeft() {
    site.setClock(Site.at("15:30"));
    Script script = site.script();
    String tub =
        "{'component':'yoghurt-spheres','left':'90 piece','made':'2026-12-05T15:20',"
            + "'useBy':'2026-12-05T19:20','place':'walk-in','sure':true}";
    String spheres = script.post("stock", tub).body().path("code").asText();
    JsonNode said = script.post("slip/harvest-dinner?look=yes", "{'minutes':90}").body();
    JsonNode lost = said.at("/consequences/lost");
    assertThat(lost).extracting(one -> one.path("tub").asText()).contains(spheres);
    for (JsonNode one : lost) {
      if (one.path("tub").asText().equals(spheres)) {
        assertThat(one.at("/remake/make").asText()).startsWith("yoghurt-spheres/harvest-dinner");
        assertThat(one.at("/remake/start").asText()).startsWith("2026-12-05T");
      }
    }
    JsonNode later = said.at("/consequences/later");
    assertThat(later).isNotEmpty();
    for (JsonNode one : later) {
      assertThat(one.path("start").asText()).isLessThan(one.path("now").asText("~"));
    }
    Answer looked = look(DINNER, "minutes", "90");
    assertThat(looked.text())
        .contains("Leave for now", "Will not last until then", "(" + spheres + ")", "Make ");
    assertThat(event().at("/services/0/start").asText()).isEqualTo("18:30");
  }

  @Test
  void badNumbersAreToldAtTheirFieldAndNothingIsLost() {
    Answer bad =
        client.post(
            DINNER, form(client.get(DINNER)).with("minutes", "soon").with("covers", "x").fields());
    assertThat(bad.status()).isEqualTo(422);
    assertThat(bad.text()).contains("Not minutes", "Not covers");
    assertThat(form(bad).value("minutes")).isEqualTo("soon");
    assertThat(form(bad).value("covers")).isEqualTo("x");
    assertThat(look(DINNER, "covers", "1").status()).isEqualTo(422);
    assertThat(client.get("/k/TARN/slip/nobody").status()).isEqualTo(404);
    assertThat(client.get("/k/TARN/slip/bar.2026-13-40").status()).isEqualTo(404);
    Script script = site.script();
    assertThat(script.post("slip/harvest-dinner", "{}").problems()).containsExactly("$.minutes");
    assertThat(
            script.post("slip/harvest-dinner", "{'minutes':601,'covers':-1,'from':'x'}").problems())
        .containsExactly("$.minutes", "$.covers", "$.from");
  }

  @Test
  void aScriptDoesTheSame() {
    Script script = site.script();
    JsonNode stands = script.get("slip/bar.2026-12-05").body();
    assertThat(stands.path("times")).isNotNull();
    String seen = stands.path("facts").asText();
    Script.Answer done =
        script.post("slip/bar.2026-12-05?accept=yes&seen=" + seen, "{'minutes':30,'covers':60}");
    assertThat(done.status()).isEqualTo(200);
    assertThat(done.body().path("covers").asInt()).isEqualTo(60);
    assertThat(run("bar.2026-12-05").covers()).hasValue(60);
    assertThat(script.post("slip/bar.2026-12-05?seen=" + seen, "{'minutes':30}").status())
        .isEqualTo(409);
  }

  // ---- below their callers ----

  private Answer look(String page, String field, String value) {
    return client.post(
        page, form(client.get(page)).with(field, value).with("look", "yes").fields());
  }

  private static FilledForm form(Answer page) {
    return FilledForm.of(
        page, page.body().contains("slip/bar") ? "bar.2026-12-05" : "harvest-dinner");
  }

  private InForce inForce() {
    return site.wiring().plans().find(site.house(), Site.DAY).orElseThrow();
  }

  private ServiceRun run(String id) {
    List<ServiceRun> all = inForce().sheet().services();
    return all.stream().filter(run -> run.id().equals(id)).findFirst().orElseThrow();
  }

  private JsonNode service(String code) {
    return item("services", code);
  }

  private JsonNode event() {
    return item("events", "harvest-dinner");
  }

  private JsonNode item(String list, String code) {
    for (JsonNode one : site.house().tree().path(list)) {
      if (one.path("code").asText().equals(code)) {
        return one;
      }
    }
    throw new AssertionError(code);
  }
}
