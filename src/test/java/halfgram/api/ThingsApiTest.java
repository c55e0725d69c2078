package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.BookItems;
import halfgram.testkit.Script;
import halfgram.testkit.Script.Answer;
import halfgram.testkit.Site;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Single things of the book by the API obey the rules of the pages. */
class ThingsApiTest {
  private Site site;
  private Script script;

  Site open() {
    return Site.demo();
  }

  @BeforeEach
  void begin() {
    site = open();
    script = site.script();
    script.get("today");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void everyThingOfEveryKindIsListedShownAndPutBackUnchanged() {
    long before = site.house().stand().facts();
    for (String kind : BookItems.KINDS) {
      JsonNode things = script.get("book/" + kind + "?limit=500").body().path("things");
      assertThat(things).as(kind).isNotEmpty();
      assertThat(things.findValuesAsText("kind")).contains(kind);
      JsonNode first = things.get(0);
      Answer one = script.get("book/" + kind + "/" + first.path("code").asText());
      assertThat(one.body()).isEqualTo(first);
      assertThat(put(kind + "/" + first.path("code").asText(), one.body().path("thing")).status())
          .isEqualTo(200);
    }
    assertThat(site.house().stand().facts()).as("nothing was changed").isEqualTo(before);
  }

  @Test
  void aLongListIsReadPartByPart() {
    Answer first = script.get("book/ingredients?limit=2");
    assertThat(first.body().path("things")).hasSize(2);
    String next = first.body().path("next").asText();
    Answer more = script.get("book/ingredients?limit=1&after=" + next);
    assertThat(more.body().path("things").get(0)).isNotEqualTo(first.body().path("things").get(1));
  }

  @Test
  void whatIsNotThereIsNotFound() {
    assertThat(script.get("book/stations/none").kind()).isEqualTo("not-found");
    assertThat(script.delete("book/stations/none?seen=1").kind()).isEqualTo("not-found");
    assertThat(script.put("book/stations/none?seen=1", "{'name':'None'}").status()).isEqualTo(404);
    // Kinds that have calls of their own.
    assertThat(site.client().get("/k/TARN/api/v1/book/formulas").status()).isEqualTo(404);
  }

  @Test
  void aThingIsAddedOnceAndItsPageSaysSo() {
    String bar = "{'code':'raw-bar','name':{'en':'Raw bar','fr':'Cru'}}";
    Answer added = script.post("book/stations", bar);
    assertThat(added.status()).isEqualTo(201);
    assertThat(added.plain().header("location")).isEqualTo("/k/TARN/api/v1/book/stations/raw-bar");
    assertThat(added.body().at("/thing/name/fr").asText()).isEqualTo("Cru");
    assertThat(script.post("book/stations", bar).status()).as("the same again").isEqualTo(200);
    Answer other = script.post("book/stations", "{'code':'raw-bar','name':'Other'}");
    assertThat(other.status()).isEqualTo(422);
    assertThat(other.problems()).containsExactly("$.code");
    assertThat(site.client().get("/k/TARN/book/stations/raw-bar").body()).contains("Raw bar");
  }

  @Test
  void allThatIsWrongIsSaidWithItsPathAndNothingIsStored() {
    Answer wrong =
        script.post(
            "book/dishes",
            "{'code':'toast','plate':[{'component':'moon-dust','amount':'a lot'}],'price':3}");
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.problems())
        .contains("$.name", "$.plate[0].component", "$.plate[0].amount", "$.price");
    assertThat(script.post("book/dishes", "{'name':'Toast'}").problems()).contains("$.code");
    assertThat(script.put("book/stations/cold", "{'code':'hot','name':'X'}").problems())
        .containsExactly("$.code");
    assertThat(script.post("book/dishes", "[]").problems()).containsExactly("$");
    assertThat(script.get("book/dishes/toast").status()).isEqualTo(404);
  }

  @Test
  void aDishIsLookedAtFirstAndThenChangesTheSheet() {
    ObjectNode dish = thing("dishes/trout-plate");
    ((ObjectNode) dish.at("/plate/0")).put("amount", "2 piece");
    Answer looked = script.sent("PUT", "book/dishes/trout-plate?look=yes", dish.toString());
    assertThat(looked.status()).isEqualTo(200);
    assertThat(looked.body().has("change")).isFalse();
    JsonNode made = looked.body().at("/effects/0/difference/made");
    assertThat(made.findValuesAsText("formula")).contains("trout-slices");
    assertThat(thing("dishes/trout-plate").at("/plate/0/amount").asText()).isEqualTo("1 piece");
    Answer stored = put("dishes/trout-plate", dish);
    assertThat(stored.status()).isEqualTo(200);
    assertThat(stored.body().path("effects")).isEqualTo(looked.body().path("effects"));
    assertThat(site.client().get("/k/TARN/").text()).contains("Since this plan was made");
  }

  @Test
  void theRulesOfTheHouseAreOneThingThatStays() {
    ObjectNode rules = thing("kitchen/TARN");
    ((ObjectNode) rules.at("/blocks/0")).put("start", "15:00").put("end", "15:30");
    Answer changed = put("kitchen/TARN", rules);
    assertThat(changed.status()).isEqualTo(200);
    assertThat(changed.body().at("/effects/0/difference/around/0").asText()).isEqualTo("hours");
    long seen = seen("kitchen/TARN");
    assertThat(script.delete("book/kitchen/TARN?seen=" + seen).status()).isEqualTo(422);
    rules.put("code", "FELL");
    assertThat(script.post("book/kitchen", rules.toString()).status()).isEqualTo(422);
    assertThat(thing("kitchen/TARN").at("/blocks/0/start").asText()).isEqualTo("15:00");
  }

  @Test
  void whatSomebodyElseHasChangedIsStale() {
    long seen = seen("stations/cold");
    String mine = "{'code':'cold','name':'Cold side'}";
    assertThat(script.put("book/stations/cold", mine).kind()).as("unseen").isEqualTo("stale");
    assertThat(script.put("book/stations/cold?seen=" + seen, mine).status()).isEqualTo(200);
    assertThat(script.put("book/stations/cold?seen=" + seen, mine).status())
        .as("the same again")
        .isEqualTo(200);
    Answer late = script.put("book/stations/cold?seen=" + seen, "{'code':'cold','name':'C'}");
    assertThat(late.kind()).isEqualTo("stale");
    assertThat(script.delete("book/stations/cold?seen=" + seen).kind()).isEqualTo("stale");
    assertThat(script.delete("book/stations/cold").kind()).isEqualTo("stale");
  }

  @Test
  void onlyWhatNothingUsesIsTakenOut() {
    Answer used = script.delete("book/stations/cold?seen=" + seen("stations/cold"));
    assertThat(used.status()).isEqualTo(422);
    assertThat(used.problems())
        .isNotEmpty()
        .allSatisfy(path -> assertThat(path).startsWith("book"));
    script.post("book/stations", "{'code':'raw-bar','name':'Raw bar'}");
    long seen = seen("stations/raw-bar");
    assertThat(script.delete("book/stations/raw-bar?look=yes").status()).isEqualTo(200);
    assertThat(script.get("book/stations/raw-bar").status()).as("only looked at").isEqualTo(200);
    Answer out = script.delete("book/stations/raw-bar?seen=" + seen);
    assertThat(out.status()).isEqualTo(200);
    assertThat(out.body().has("thing")).isFalse();
    assertThat(script.get("book/stations/raw-bar").status()).isEqualTo(404);
  }

  private ObjectNode thing(String place) {
    return script.get("book/" + place).body().path("thing").deepCopy();
  }

  private long seen(String place) {
    return script.get("book/" + place).body().path("change").asLong();
  }

  private Answer put(String place, JsonNode body) {
    return script.sent("PUT", "book/" + place + "?seen=" + seen(place), body.toString());
  }
}
