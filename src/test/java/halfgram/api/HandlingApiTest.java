package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.prep.Task;
import halfgram.testkit.Script.Answer;
import halfgram.testkit.Site;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What hands do to tubs, by the API: the same verbs as on the page. */
class HandlingApiTest extends OnDemo {
  private static final String TUB = "stock/t-1203-oil-1";
  private static final String ID = "'id':'00000000-0000-4000-8000-000000000021'";

  @Test
  void aLabelSaysThatItsDateIsThatOfTheFreezer() {
    script.post("stock/t-1203-oil-1/freeze", "{'until':'2027-02-01T12:00','place':'freezer'}");
    assertThat(label()).contains("keep frozen until Mon 1 Feb 12:00", "frozen; a new label");
    assertThat(label()).doesNotContain("use by");
    script.post("stock/t-1203-oil-1/thaw", "{}");
    assertThat(label()).contains("use by Sat 5 Dec 23:59", "thawed; not to be frozen again");
  }

  private String label() {
    return site.client().get("/k/TARN/label?tub=t-1203-oil-1").text();
  }

  @Test
  void whatIsWastedIsCostedAndSummedForTheDayUntilItIsTakenBack() {
    String body = "{" + ID + ",'amount':'20 g','reason':'dropped'}";
    script.post(TUB + "/waste", body);
    Answer twice = script.post(TUB + "/waste", body);
    assertThat(twice.body().at("/left/value").asInt()).isEqualTo(400);
    JsonNode lost = twice.body().path("movements").get(2);
    assertThat(lost.path("kind").asText()).isEqualTo("wasted");
    assertThat(lost.at("/cost/standing").asText()).isEqualTo("computed");
    script.post("stock/t-1203-oil-2/bin", "{'reason':'smells'}");
    script.post("stock/t-1203-crisp-1/broke", "{'amount':'3 piece','reason':'handling'}");
    JsonNode day = script.get("waste?from=2026-12-05&to=2026-12-05").body().at("/days/0");
    assertThat(day.path("components").findValuesAsText("component"))
        .containsExactly("dill-oil", "rye-crisp");
    assertThat(day.at("/components/0/amount/value").asInt()).isEqualTo(440);
    assertThat(day.at("/components/0/reasons").findValuesAsText("reason"))
        .containsExactly("dropped", "smells");
    double sum =
        day.at("/components/0/cost/value").asDouble()
            + day.at("/components/1/cost/value").asDouble();
    assertThat(day.at("/cost/value").asDouble()).isPositive().isEqualTo(sum);
    script.post("stock/t-1203-oil-2/back", "{}");
    JsonNode after = script.get("waste").body().at("/days/0/components/0/amount/value");
    assertThat(after.asInt()).isEqualTo(20);
    assertThat(script.get("waste?from=2026-12-06&to=2026-12-05").status()).isEqualTo(400);
  }

  @Test
  void withoutAPriceThereIsNoNumber() {
    String book = site.wiring().desk().find(Site.KITCHEN).orElseThrow().tree().toString();
    ObjectNode tree = (ObjectNode) BookStore.parse(book);
    for (JsonNode ingredient : tree.withArray("ingredients")) {
      ((ObjectNode) ingredient).remove("packs");
    }
    site.importBook(tree.toString().getBytes(StandardCharsets.UTF_8));
    Answer wasted = script.post(TUB + "/waste", "{'amount':'20 g','reason':'dropped'}");
    JsonNode cost = wasted.body().path("movements").get(2).path("cost");
    assertThat(cost.has("value")).isFalse();
    assertThat(cost.path("complete").asBoolean()).isFalse();
    assertThat(cost.path("unpriced")).isNotEmpty();
    assertThat(site.client().get("/k/TARN/" + TUB).text()).contains("no price for ");
    assertThat(site.client().get("/k/TARN/log").text())
        .contains("no price for ")
        .doesNotContain("0.00 EUR");
  }

  @Test
  void aTubIsFrozenAndThawedAndRefusalsSayWhy() {
    Answer frozen = script.post(TUB + "/freeze", "{'until':'2027-02-01','place':'freezer'}");
    assertThat(frozen.body().at("/frozen/keepUntil").asText()).startsWith("2027-02-01T23:59");
    assertThat(frozen.body().at("/frozen/days").asInt()).isEqualTo(1);
    assertThat(frozen.body().path("place").asText()).isEqualTo("freezer");
    assertThat(script.post(TUB + "/freeze", "{'until':'soon'}").problems())
        .containsExactly("$.until");
    Answer thawed = script.post(TUB + "/thaw", "{}");
    assertThat(thawed.body().path("useBy").asText()).startsWith("2026-12-05T23:59");
    Answer again = script.post(TUB + "/freeze", "{'until':'2027-02-01'}");
    assertThat(again.status()).isEqualTo(409);
    assertThat(again.body().path("said").asText()).contains("not frozen again");
  }

  @Test
  void tubsAreSplitAndCombinedAndMovedAndTakenBackByNumber() {
    Answer split =
        script.post(TUB + "/split", "{" + ID + ",'amount':'50 g','tubs':2,'kept':'goes'}");
    List<String> filled = List.of("1205-1", "1205-2");
    assertThat(split.body().path("filled")).extracting(JsonNode::asText).isEqualTo(filled);
    Answer combined = script.post("stock/1205-1/combine", "{'with':['1205-2']}");
    assertThat(combined.body().at("/left/value").asInt()).isEqualTo(100);
    assertThat(combined.body().at("/reserved/0/amount/value").asInt()).isEqualTo(100);
    String code = combined.body().path("code").asText();
    assertThat(script.post("stock/" + code + "/combine", "{'with':['t-1204-jus']}").problems())
        .containsExactly("$.with");
    assertThat(script.post(TUB + "/split", "{'amount':'1 kg','tubs':'many'}").problems())
        .contains("$.tubs");
    Answer moved = script.post("stock/" + code + "/move", "{'place':'pass'}");
    long change = moved.body().path("movements").findValue("change").asLong();
    Answer early = script.post("stock/" + code + "/back", "{'change':" + change + "}");
    assertThat(early.status()).as("it was moved since").isEqualTo(409);
    script.post("stock/" + code + "/back", "{}");
    Answer back = script.post("stock/" + code + "/back", "{'change':" + change + "}");
    assertThat(back.body().at("/left/value").asInt()).isZero();
    assertThat(script.post("stock/none/move", "{'place':'pass'}").status()).isEqualTo(404);
  }

  @Test
  void whatRestsForSafetyIsNotReadySoonerAmongWhatHasRested() {
    site.setClock(Site.at("10:00"));
    String fish = "{'component':'char-thawed','left':'1 kg','made':'2026-12-05T08:00'}";
    String code = script.post("stock", fish).body().path("code").asText();
    String with = "{'with':['" + code + "']}";
    Answer early = script.post("stock/t-1204-char-1/combine", with);
    assertThat(early.problems()).containsExactly("$.with");
    assertThat(early.body().toString()).contains("may be used sooner than the other");
    site.setClock(Site.at("20:00"));
    assertThat(script.post("stock/t-1204-char-1/combine", with).status()).isEqualTo(200);
  }

  @Test
  void whatIsTakenOfWhatIsKeptIsListedUntilSeen() {
    Answer counted = script.post(TUB + "/count", "{'amount':'100 g'}");
    JsonNode taken = counted.body().at("/taken/0");
    assertThat(taken.path("event").asText()).isEqualTo("harvest-dinner");
    assertThat(taken.at("/amount/value").asInt()).isEqualTo(260);
    assertThat(taken.path("by").asText()).isEqualTo("counted");
    assertThat(script.get("taken").body().path("taken")).hasSize(1);
    String number = taken.path("change").asText();
    Answer seen = script.post("taken/seen", "{'changes':[" + number + "]}");
    assertThat(seen.body().path("taken")).isEmpty();
    assertThat(script.post("taken/seen", "{'changes':['x']}").problems())
        .containsExactly("$.changes");
  }

  @Test
  void aBatchInWorkIsOnItsWayUntilItIsDone() {
    site.client().get("/k/TARN/");
    assertThat(script.get("coming").body().path("coming")).isEmpty();
    Task task =
        site.wiring().plans().find(site.house(), Site.DAY).orElseThrow().sheet().tasks().stream()
            .filter(one -> one.version().formula().equals("parsnip-puree"))
            .findFirst()
            .orElseThrow();
    String tick =
        "{'task':'"
            + task.id()
            + "','kind':'start','cook':'ines','sequence':1,"
            + "'device':'00000000-0000-4000-8000-000000000001'}";
    Answer ticked = script.post("ticks", tick);
    assertThat(ticked.body().path("taken")).isEmpty();
    JsonNode coming = script.get("coming").body().at("/coming/0");
    assertThat(coming.path("component").asText()).isEqualTo("parsnip-puree");
    assertThat(coming.at("/amount/value").asDouble()).isPositive();
    assertThat(coming.path("for")).isNotEmpty();
    assertThat(site.client().get("/k/TARN/stock").text()).contains("On the way");
  }
}
