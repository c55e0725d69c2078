package halfgram.pages.book;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.station.Block;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Site;
import java.time.LocalTime;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The house's rules on a page of their own, and what they do to a day that is planned. */
class HouseRulesTest extends OnBook {
  private static final String RULES = "kitchen/TARN";
  private static final String TODAY = "/k/TARN/";

  @Test
  void thereIsOneSetOfRulesAndItStays() {
    assertThat(client.get(BOOK).text()).contains("House rules", "staff meal");
    assertThat(client.get(BOOK).body()).doesNotContain("book/kitchen/new");
    assertThat(client.get(BOOK + "/kitchen/new").status()).isEqualTo(404);
    assertThat(client.get(BOOK + "/" + RULES).text()).doesNotContain("Take it out");
    Answer out = change(RULES, "act", "out");
    assertThat(out.status()).isEqualTo(422);
    assertThat(out.text()).contains("there is one set of house rules, of TARN");
    Answer other = client.post(BOOK + "/kitchen/OTHER", fields(BOOK + "/" + RULES));
    assertThat(other.status()).isEqualTo(422);
    assertThat(rules().path("code").asText()).isEqualTo("TARN");
  }

  @Test
  void whatIsWrongWithThemIsSaidAtItsFieldAndKept() {
    Answer answer =
        change(
            RULES,
            "zone",
            "Moon/North",
            "closes",
            "6",
            "lineCheck",
            "soon",
            "blocks.0.end",
            "1630",
            "places.1.volume",
            "a lot",
            "buffer.0.percent",
            "-1",
            "tolerances.dose",
            "50");
    assertThat(answer.status()).isEqualTo(422);
    for (String field : List.of("zone", "closes", "lineCheck", "blocks.0.end", "places.1.volume")) {
      assertThat(answer.body()).contains("id=\"" + field + "-fault\"");
    }
    assertThat(answer.body())
        .contains("id=\"buffer.0.percent-fault\"", "id=\"tolerances.dose-fault\"")
        .contains("value=\"Moon/North\"", "value=\"soon\"", "value=\"a lot\"");
  }

  @Test
  void whatIsLeftOutTakesItsUsualValue() {
    Answer answer = change(RULES, "buffer.rows", "", "lineCheck", "", "zone", "europe/berlin");
    assertThat(answer.status()).as(answer.text()).isEqualTo(303);
    assertThat(rules().has("buffer")).isFalse();
    assertThat(rules().has("lineCheck")).isFalse();
    assertThat(rules().path("zone").asText()).isEqualTo("Europe/Berlin");
    assertThat(rules().path("lookAhead").asText()).as("what is left alone").isEqualTo("2 d");
  }

  @Test
  void aPlaceThatIsRenamedWhileFormulasKeepThingsThereIsTold() {
    String told = "\"walk-in\" is not among the places of the house rules";
    String tomorrow = TODAY + "?date=" + Site.DAY.plusDays(1);
    assertThat(client.get(tomorrow).text()).doesNotContain(told);
    assertThat(change(RULES, "places.0.name.en", "cold room").status()).isEqualTo(303);
    assertThat(client.get(tomorrow).text()).contains(told);
  }

  @Test
  void aLongerLineCheckIsLookedAtFirstAndThenOfferedOnToday() {
    client.get(TODAY);
    Answer look = change(RULES, "lineCheck", "90 min", "act", "look");
    assertThat(look.status()).isEqualTo(200);
    assertThat(look.text()).contains("What it would do to the sheet", "61 change");
    assertThat(rules().path("lineCheck").asText()).isEqualTo("45 min");
    assertThat(client.get(TODAY).text()).doesNotContain("Since this plan was made");
    assertThat(change(RULES, "lineCheck", "90 min").status()).isEqualTo(303);
    assertThat(client.get(TODAY).text()).contains("Since this plan was made");
    assertThat(client.get("/k/TARN/log?what=book").text()).contains("the house rules TARN");
  }

  @Test
  void aMealThatMovesChangesNoTaskAndIsOfferedOnTodayAllTheSame() {
    client.get(TODAY);
    String[] moved = {"blocks.0.start", "15:00", "blocks.0.end", "15:30", "act", "look"};
    assertThat(change(RULES, moved).text()).contains("Who is in when changes");
    moved[5] = "save";
    assertThat(change(RULES, moved).status()).isEqualTo(303);
    assertThat(meal()).as("the plan in force stays").isEqualTo(LocalTime.of(16, 30));
    Answer today = client.get(TODAY);
    assertThat(today.text()).contains("Since this plan was made", "Who is in when changes");
    FilledForm accept = FilledForm.of(today, "/plan");
    assertThat(client.post("/k/TARN/plan", accept.fields()).status()).isEqualTo(303);
    assertThat(meal()).isEqualTo(LocalTime.of(15, 0));
    assertThat(client.get(TODAY).text()).doesNotContain("Since this plan was made");
    assertThat(client.get("/k/TARN/log").text())
        .containsPattern("plan 2 of Sat 5 Dec.{0,80}Who is in when changes");
  }

  @Test
  void whatSomebodyOrSomethingIsCalledChangesNoDay() {
    client.get(TODAY);
    for (String thing : List.of("people/ines", "equipment/blender", "scales/bench")) {
      Answer look = change(thing, "name", "Other", "name.en", "Other", "act", "look");
      assertThat(look.text()).as(thing).contains("No sheet of today, of the week to come");
    }
  }

  @Test
  void anotherPaceAtThePassIsOfferedOnTodayToo() {
    client.get(TODAY);
    assertThat(change("dishes/trout-plate", "plating.people", "2").status()).isEqualTo(303);
    assertThat(client.get(TODAY).text()).contains("What is served is plated or finished otherwise");
  }

  @Test
  void whatIsAroundTheTasksIsToldForWhatItIs() {
    client.get(TODAY);
    Answer room = change(RULES, "places.0.volume", "800 L", "act", "look");
    assertThat(room.text())
        .contains("What there is to work in changes")
        .doesNotContain("weighed on");
    Answer scales = change(RULES, "tolerances.dose", "2", "act", "look");
    assertThat(scales.text()).contains("What things are weighed on changes");
    Answer name = change(RULES, "name.fr", "Chalet", "act", "look");
    assertThat(name.text()).contains("No sheet of today, of the week to come");
  }

  @Test
  void aHouseThatMovesToAnotherClockGoesOn() {
    client.get(TODAY);
    client.get("/k/TARN/lanes");
    String[] moved = {"zone", "America/New_York", "dayStart", "05:00", "act", "look"};
    assertThat(change(RULES, moved).status()).isEqualTo(200);
    moved[5] = "save";
    assertThat(change(RULES, moved).status()).isEqualTo(303);
    // Nine in the morning of Saturday there is three in the morning here: Friday's work.
    assertThat(client.get(TODAY).text()).contains("Friday 4 December 2026");
    for (String page : List.of("lanes", "wall/cold", "service", "crew", "stock", "baths", "log")) {
      assertThat(client.get(TODAY + page).status()).as(page).isEqualTo(200);
    }
    assertThat(client.get(TODAY + "?date=2026-12-05").status()).isEqualTo(200);
    assertThat(client.get(TODAY + "lanes?date=2026-12-05").status()).isEqualTo(200);
  }

  @Test
  void theUnitsSetMeanwhileAreNotSetBack() {
    String[] late = with(fields(BOOK + "/" + RULES), "lineCheck", "1 h");
    client.post("/k/TARN/settings", settings("us"));
    Answer stale = client.post(BOOK + "/" + RULES, late);
    assertThat(stale.status()).isEqualTo(409);
    Answer again = client.post(BOOK + "/" + RULES, saving(FilledForm.of(stale, "/book/" + RULES)));
    assertThat(again.status()).isEqualTo(303);
    assertThat(rules().path("lineCheck").asText()).isEqualTo("1 h");
    assertThat(rules().path("units").asText()).isEqualTo("us");
  }

  private String[] settings(String units) {
    return FilledForm.of(client.get("/k/TARN/settings"), "/settings").with("units", units).fields();
  }

  private LocalTime meal() {
    List<Block> blocks =
        site.wiring().plans().find(site.house(), Site.DAY).orElseThrow().book().blocks();
    return blocks.get(0).start();
  }

  private ObjectNode rules() {
    return thing("kitchen", "TARN").orElseThrow();
  }
}
