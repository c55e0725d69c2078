package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.testkit.Script;
import halfgram.testkit.Script.Answer;
import halfgram.testkit.Site;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Deliveries by the API: what is expected, what came of it, and what it holds up. */
class DeliveryApiTest extends OnDemo {
  private static final String ONE = "deliveries/greens";
  private static final String CELERIAC = "celeriac-baked/harvest-dinner/1/roast";

  /** Kohlrabi is shaved at 18:10, celeriac roasted at 12:31. */
  static final String GREENS =
      """
      {'code':'greens','supplier':'Elm Farm','date':'2026-12-05','expected':'14:00',
       'lines':[{'ingredient':'kohlrabi','amount':'6 kg'},
                {'ingredient':'celeriac','amount':'20 kg'}]}
      """;

  @Test
  void aDeliveryIsAddedChangedByWhoSawItAndReadBackWhole() {
    Answer added = script.post("deliveries", GREENS);
    assertThat(added.status()).isEqualTo(201);
    assertThat(script.post("deliveries", GREENS).status()).isEqualTo(200);
    long seen = added.body().path("change").asLong();
    String later = GREENS.replace("14:00", "15:00");
    assertThat(script.put(ONE + "?seen=" + (seen - 1), later).status()).isEqualTo(409);
    Answer changed = script.put(ONE + "?seen=" + seen, later);
    assertThat(changed.body().path("expected").asText()).startsWith("2026-12-05T15:00");
    assertThat(changed.body().path("checkInIsDefault").asBoolean()).isTrue();
    assertThat(script.get("deliveries").body().path("deliveries")).hasSize(1);
    assertThat(script.get("deliveries/none").status()).isEqualTo(404);
  }

  @Test
  void everythingWrongIsSaidAtItsPlaceAndNothingIsStored() {
    long before = site.house().stand().change();
    Answer wrong =
        script.post(
            "deliveries",
            """
            {'code':'greens','supplier':'Elm Farm','date':'2026-12-05','expected':'noon',
             'lines':[{'ingredient':'kohlrabi','amount':'0 g'},
                      {'ingredient':'kohlrabi','amount':'2 kg'},
                      {'ingredient':'moon','amount':'2 kg'}]}
            """);
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.problems())
        .contains(
            "$.expected", "$.lines[0].amount", "$.lines[1].ingredient", "$.lines[2].ingredient");
    assertThat(site.house().stand().change()).isEqualTo(before);
  }

  @Test
  void theAnswerNamesWhatWaitsForWhomTheLastMomentAndOtherWork() {
    site.client().get("/k/TARN/");
    script.post("deliveries", GREENS);
    JsonNode answer = script.get(ONE).body().path("answer");
    assertThat(answer.path("blocked").findValuesAsText("task"))
        .containsExactly(CELERIAC, "kohlrabi-ribbons/harvest-dinner/1/shave");
    assertThat(answer.path("serves").findValuesAsText("service")).contains("harvest-dinner");
    assertThat(answer.path("serves").toString()).contains("celeriac-main", "kohlrabi-plate");
    // Celeriac has to be in the oven at 12:31, ten minutes after it is here.
    assertThat(answer.path("lastMoment").asText()).startsWith("2026-12-05T12:21");
    // From 14:10 against 12:31.
    assertThat(answer.path("tooLateMinutes").asInt()).isEqualTo(99);
    List<String> meanwhile = texts(answer.path("meanwhile"));
    assertThat(meanwhile)
        .isNotEmpty()
        .doesNotContain("kohlrabi-ribbons/harvest-dinner/1/shave")
        .doesNotContain("parsnip-puree/lunch.2026-12-05/1/cook");
  }

  @Test
  void whatCameOfItIsAFactAndTheSameEntryTwiceIsOnce() {
    site.client().get("/k/TARN/");
    script.post("deliveries", GREENS);
    long facts = site.house().stand().facts();
    String late =
        "{'entry':'0b8c7a3e-52f1-4c7d-9a16-3d2f5e6b7a80','kind':'late','expected':'15:30'}";
    assertThat(enter(late).status()).isEqualTo(201);
    assertThat(site.house().stand().facts()).isGreaterThan(facts);
    long change = site.house().stand().change();
    assertThat(enter(late).status()).isEqualTo(200);
    assertThat(site.house().stand().change()).isEqualTo(change);
    assertThat(script.get(ONE).body().path("state").asText()).isEqualTo("late");
    site.setClock(Site.at("15:20"));
    Answer here = enter("{'kind':'arrived'}");
    assertThat(here.body().path("arrived").asText()).startsWith("2026-12-05T15:20");
    assertThat(here.body().path("from").asText()).startsWith("2026-12-05T15:30");
    assertThat(enter("{'kind':'arrived'}").status()).isEqualTo(409);
    assertThat(enter("{'kind':'late','expected':'16:00'}").status()).isEqualTo(409);
    assertThat(enter("{'kind':'cancelled'}").status()).isEqualTo(409);
  }

  @Test
  void aTimeThatIsOverIsNoneToBeLateUntil() {
    site.client().get("/k/TARN/");
    script.post("deliveries", GREENS);
    site.setClock(Site.at("15:00"));
    Answer tomorrow = enter("{'kind':'late','expected':'08:00'}");
    assertThat(tomorrow.status()).isEqualTo(409);
    assertThat(tomorrow.body().path("said").asText()).contains("is over", "a later one");
    assertThat(enter("{'kind':'late','expected':'15:30'}").status()).isEqualTo(201);
  }

  @Test
  void whatComesOnlyTomorrowHoldsUpTheWorkOfBothDays() {
    site.client().get("/k/TARN/");
    script.post("deliveries", GREENS);
    String late = "{'kind':'late','expected':'08:00','day':'";
    assertThat(enter(late + "2026-12-04'}").problems()).containsExactly("$.day");
    assertThat(enter(late + "2026-12-06'}").status()).isEqualTo(201);
    JsonNode told = script.get(ONE).body();
    assertThat(told.path("expected").asText()).startsWith("2026-12-06T08:00");
    assertThat(told.at("/answer/blocked").findValuesAsText("task"))
        .contains(CELERIAC, "kohlrabi-ribbons/harvest-dinner/1/shave");
    assertThat(site.client().get("/k/TARN/?again=yes").text())
        .contains("Elm Farm", "Sun 6 Dec 08:10");
    site.setClock(Site.at("07:00").plusSeconds(24 * 3600));
    site.client().get("/k/TARN/");
    assertThat(site.client().get("/k/TARN/deliveries").text())
        .contains("Sunday 6 December 2026", "Elm Farm", "08:00");
    assertThat(script.get(ONE).body().at("/answer/blocked").findValuesAsText("task"))
        .contains("kohlrabi-ribbons/naming-day/1/shave");
    String shaving = "/k/TARN/wall/cold?task=kohlrabi-ribbons/naming-day/1/shave";
    assertThat(site.client().get(shaving).text()).contains("Elm Farm");
    site.setClock(Site.at("08:00").plusSeconds(24 * 3600));
    assertThat(enter("{'kind':'arrived'}").status()).isEqualTo(201);
    site.setClock(Site.at("08:11").plusSeconds(24 * 3600));
    assertThat(site.client().get(shaving).text()).doesNotContain("Elm Farm");
  }

  @Test
  void aLineIsTakenOutOnceWhatWasSaidOfItIsUndone() {
    script.post("deliveries", GREENS);
    String id = "0b8c7a3e-52f1-4c7d-9a16-3d2f5e6b7a80";
    String less = "'kind':'short','ingredient':'celeriac','came':'1 kg'}";
    enter("{'entry':'" + id + "'," + less);
    ObjectNode body = (ObjectNode) script.get(ONE).body().path("delivery");
    body.remove("entries");
    ((ArrayNode) body.path("lines")).remove(1);
    assertThat(saved(body).problems()).containsExactly("$.entries[0].ingredient");
    enter("{'kind':'undo','undoes':'" + id + "'}");
    assertThat(saved(body).status()).isEqualTo(200);
  }

  private Answer saved(ObjectNode body) {
    long seen = script.get(ONE).body().path("change").asLong();
    return script.put(ONE + "?seen=" + seen, body.toString());
  }

  @Test
  void anEntryIsUndoneOnceAndCountsAsNeverMade() {
    script.post("deliveries", GREENS);
    String id = "0b8c7a3e-52f1-4c7d-9a16-3d2f5e6b7a80";
    enter("{'entry':'" + id + "','kind':'arrived'}");
    assertThat(script.get(ONE).body().path("state").asText()).isEqualTo("here");
    assertThat(enter("{'kind':'undo','undoes':'" + id + "'}").status()).isEqualTo(201);
    assertThat(script.get(ONE).body().path("state").asText()).isEqualTo("expected");
    assertThat(enter("{'kind':'undo','undoes':'" + id + "'}").status()).isEqualTo(409);
  }

  @Test
  void lessOfALineTellsThePlatesItCosts() {
    site.client().get("/k/TARN/");
    script.post("deliveries", GREENS);
    JsonNode plates = enter("{'kind':'short','ingredient':'kohlrabi','came':'1 kg'}").body();
    JsonNode less = plates.at("/answer/short/0");
    assertThat(less.path("ingredient").asText()).isEqualTo("kohlrabi");
    assertThat(less.path("plates").findValuesAsText("dish")).contains("kohlrabi-plate");
    for (JsonNode one : less.path("plates")) {
      int planned = one.path("planned").asInt();
      assertThat(one.path("possible").asInt()).isBetween(0, planned - 1);
      assertThat(one.path("short").asInt()).isEqualTo(planned - one.path("possible").asInt());
    }
    assertThat(plates.at("/lines/0/comes/value").asInt()).isEqualTo(1000);
    assertThat(enter("{'kind':'short','ingredient':'kohlrabi','came':'6 kg'}").status())
        .isEqualTo(409);
    assertThat(enter("{'kind':'short','ingredient':'dill','came':'1 kg'}").problems())
        .containsExactly("$.ingredient");
  }

  @Test
  void aLineIsTurnedAwayOnlyAtTheDoorAndWithAReason() {
    site.client().get("/k/TARN/");
    script.post("deliveries", GREENS);
    String away = "{'kind':'rejected','ingredient':'celeriac','reason':'soft','reading':'9 °C'}";
    assertThat(enter(away).status()).isEqualTo(409);
    enter("{'kind':'arrived'}");
    assertThat(enter("{'kind':'rejected','ingredient':'celeriac'}").problems())
        .containsExactly("$.reason");
    assertThat(enter(away.replace("9 °C", "warm")).problems()).containsExactly("$.reading");
    Answer turned = enter(away);
    assertThat(turned.body().at("/lines/1/comes/value").asInt()).isZero();
    JsonNode blocked = turned.body().at("/answer/blocked");
    JsonNode celeriac = blocked.get(0);
    assertThat(celeriac.path("task").asText()).isEqualTo(CELERIAC);
    assertThat(celeriac.has("notBefore")).isFalse();
  }

  @Test
  void theNextPlanHasItAndItsSnapshotAlone() {
    site.client().get("/k/TARN/");
    script.post("deliveries", GREENS);
    JsonNode today = script.get("today").body();
    assertThat(texts(today.at("/proposal/held"))).contains(CELERIAC);
    long facts = today.path("facts").asLong();
    assertThat(script.post("plan", "{'facts':" + facts + "}").status()).isEqualTo(201);
    assertThat(script.get("today").body().has("proposal")).isFalse();
    JsonNode plan = script.get("plan").body();
    assertThat(plan.path("fits").asBoolean()).isFalse();
    for (JsonNode task : plan.path("tasks")) {
      if (task.path("task").asText().equals(CELERIAC)) {
        JsonNode wait = task.at("/deliveries/0");
        assertThat(wait.at("/notBefore/at").asText()).startsWith("2026-12-05T14:10");
        String path = "task/" + CELERIAC + "/not-before/greens";
        assertThat(wait.at("/notBefore/id").asText()).endsWith(path);
        JsonNode why = script.get("why?plan=2026-12-05/2&path=" + path).body();
        assertThat(why.toString()).contains("check-in, the default", "Elm Farm is expected");
      }
    }
    // What comes of it later changes no plan that is in force.
    enter("{'kind':'late','expected':'16:00'}");
    assertThat(script.get("plan").body()).isEqualTo(plan);
    assertThat(texts(script.get("today").body().at("/proposal/held"))).contains(CELERIAC);
  }

  @Test
  void aBookGoesOutAndComesInWithItsDeliveriesAndTheirEntries() {
    script.post("deliveries", GREENS);
    enter("{'kind':'late','expected':'15:30'}");
    String book = script.text("book");
    try (Site other = Site.empty()) {
      other.importBook(book.getBytes(java.nio.charset.StandardCharsets.UTF_8));
      Script there = other.script();
      assertThat(there.get(ONE).body().path("state").asText()).isEqualTo("late");
      other.importBook(book.getBytes(java.nio.charset.StandardCharsets.UTF_8));
      assertThat(there.get(ONE).body().at("/delivery/entries")).hasSize(1);
    }
  }

  private Answer enter(String body) {
    return script.post(ONE + "/entries", body);
  }

  private static List<String> texts(JsonNode list) {
    List<String> texts = new java.util.ArrayList<>();
    list.forEach(one -> texts.add(one.asText()));
    return texts;
  }
}
