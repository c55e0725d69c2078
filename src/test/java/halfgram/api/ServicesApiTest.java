package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.testkit.Script;
import halfgram.testkit.Script.Answer;
import halfgram.testkit.Site;
import java.time.Duration;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * Services at the pass by the API, on H2; {@link ServicesOnPostgresTest} is the same on PostgreSQL.
 */
class ServicesApiTest {
  private static final String DINNER = "services/harvest-dinner";
  private static final String DEVICE = "00000000-0000-4000-8000-000000000001";
  private static final String ENTRY = "00000000-0000-4000-8000-0000000000aa";

  private Site site;
  private Script script;
  private int sequence;

  Site open() {
    return Site.demo();
  }

  @BeforeEach
  void openSite() {
    site = open();
    script = site.script();
    site.setClock(Site.at("18:20"));
  }

  @AfterEach
  void closeSite() {
    site.close();
  }

  @Test
  void toGoIsTheFinalNumberWithoutBufferOrSparesLessWhatWasSent() {
    // 84 guests, 13 of them with diets; made for are 93, and one spare for the dairy-free.
    assertThat(trout().path("planned").asInt()).isEqualTo(71);
    assertThat(dish("trout-plate", "dairy-free").path("toGo").asInt()).isEqualTo(4);
    enter(sent("first", "trout-plate", 5));
    enter(sent("first", "trout-plate", 1));
    assertThat(trout().path("sent").asInt()).isEqualTo(6);
    assertThat(trout().path("toGo").asInt()).isEqualTo(65);
    assertThat(dish("trout-plate", "dairy-free").path("toGo").asInt()).isEqualTo(4);
    enter(sent("first", "trout-plate", 70));
    assertThat(trout().path("toGo").asInt()).as("more than the guests").isZero();
  }

  @Test
  void coversThatChangeCountAtOnce() {
    JsonNode event = script.get("events/harvest-dinner").body();
    String covers = "events/harvest-dinner/covers?seen=" + event.path("change").asLong();
    assertThat(script.put(covers, "{'final':90}").status()).isEqualTo(200);
    assertThat(trout().path("toGo").asInt()).isEqualTo(77);
  }

  @Test
  void readyIsTheFewestPlatesThatAnyComponentIsThereForAndTheScarcestIsNamed() {
    assertThat(trout().path("ready").asInt()).isZero();
    assertThat(trout().path("coming").asInt()).isPositive();
    bring("trout-slices", "60 piece");
    bring("yoghurt-spheres", "90 piece");
    // 52 crisps and more than a kilogram of oil are there: spheres, three a plate, are the fewest.
    assertThat(trout().path("ready").asInt()).isEqualTo(30);
    enter(sent("first", "trout-plate", 10));
    assertThat(trout().path("ready").asInt()).isEqualTo(20);
    assertThat(component("trout-slices").at("/ready/value").asInt()).isEqualTo(50);
    enter(out("'item':'yoghurt-spheres'"));
    assertThat(trout().path("ready").asInt()).isZero();
    assertThat(trout().at("/scarcest/component").asText()).isEqualTo("yoghurt-spheres");
    assertThat(trout().path("shortBy").asInt()).isEqualTo(61);
    assertThat(trout().at("/out/component").asText()).isEqualTo("yoghurt-spheres");
    assertThat(dish("trout-plate", "dairy-free").has("out")).as("it has pea spheres").isFalse();
  }

  @Test
  void whatCannotBeReadyBeforeAllIsServedIsNotOnTheWay() {
    assertThat(component("yoghurt-spheres").at("/coming/value").asInt()).isPositive();
    site.setClock(Site.at("21:25"));
    assertThat(component("yoghurt-spheres").at("/coming/value").asInt()).isZero();
    assertThat(trout().path("coming").asInt()).isZero();
  }

  @Test
  void leftCountsWhatEveryDishOfTheServiceStillNeeds() {
    JsonNode oil = component("dill-oil");
    assertThat(oil.at("/toGo/value").asInt()).as("84 plates at 4 g").isEqualTo(336);
    enter(sent("first", "trout-plate", 71));
    assertThat(component("dill-oil").at("/toGo/value").asInt()).isEqualTo(52);
    assertThat(component("dill-oil").at("/left/value").asInt())
        .as("what was sent is neither there nor needed")
        .isEqualTo(oil.at("/left/value").asInt());
  }

  @Test
  void sendingMoreThanThereIsLeavesNoMoreThanBefore() {
    long ready = trout().path("ready").asLong();
    long coming = trout().path("coming").asLong();
    long left = trout().path("left").asLong();
    assertThat(coming).as("its food is on the way").isPositive();
    enter(sent("first", "trout-plate", 71));
    assertThat(trout().path("left").asLong()).isEqualTo(left);
    enter(sent("first", "trout-plate", 20));
    assertThat(trout().path("left").asLong()).isLessThanOrEqualTo(left);
    assertThat(trout().path("coming").asLong()).isLessThan(coming);
    assertThat(trout().path("ready").asLong()).isLessThanOrEqualTo(ready);
  }

  @Test
  void aCountKnowsOfWhatWasSentBeforeIt() {
    JsonNode first = component("dill-oil").at("/tubs/0");
    double before = component("dill-oil").at("/ready/value").asDouble();
    enter(sent("first", "trout-plate", 10));
    assertThat(component("dill-oil").at("/ready/value").asDouble()).isEqualTo(before - 40);
    site.passTime(Duration.ofMinutes(1));
    double counted = first.at("/amount/value").asDouble() - 40;
    script.post(
        "stock/" + first.path("code").asText() + "/count", "{'amount':'" + counted + " g'}");
    assertThat(component("dill-oil").at("/ready/value").asDouble()).isEqualTo(before - 40);
    site.passTime(Duration.ofMinutes(1));
    enter(sent("first", "trout-plate", 1));
    assertThat(component("dill-oil").at("/ready/value").asDouble()).isEqualTo(before - 44);
  }

  @Test
  void aCountThatWasTakenBackIsNoCount() {
    JsonNode first = component("dill-oil").at("/tubs/0");
    double before = component("dill-oil").at("/ready/value").asDouble();
    enter(sent("first", "trout-plate", 10));
    site.passTime(Duration.ofMinutes(1));
    String tub = "stock/" + first.path("code").asText();
    double counted = first.at("/amount/value").asDouble() - 7;
    script.post(tub + "/count", "{'amount':'" + counted + " g'}");
    assertThat(component("dill-oil").at("/ready/value").asDouble()).isEqualTo(before - 7);
    assertThat(script.post(tub + "/back", "{}").status()).isEqualTo(200);
    assertThat(component("dill-oil").at("/ready/value").asDouble()).isEqualTo(before - 40);
  }

  @Test
  void theTubToTakeNextIsTheEventsOwnAndOfThoseTheFirstToExpire() {
    JsonNode tubs = component("dill-oil").path("tubs");
    assertThat(tubs.size()).isGreaterThan(1);
    assertThat(tubs.get(0).path("kept").asBoolean()).isTrue();
    for (int i = 1; i < tubs.size(); i++) {
      boolean sameKind = tubs.get(i).path("kept").equals(tubs.get(i - 1).path("kept"));
      if (sameKind) {
        assertThat(tubs.get(i).path("useBy").asText())
            .isGreaterThanOrEqualTo(tubs.get(i - 1).path("useBy").asText());
      } else {
        assertThat(tubs.get(i).path("kept").asBoolean()).isFalse();
      }
    }
    JsonNode bar = script.get("services/bar.2026-12-05").body();
    assertThat(bar.path("components").findValuesAsText("code"))
        .as("what the dinner keeps is not for the bar")
        .contains("t-1202-oil");
    bar.path("components")
        .forEach(
            one ->
                one.path("tubs")
                    .forEach(tub -> assertThat(tub.path("kept").asBoolean()).isFalse()));
  }

  @Test
  void theSameEntryAgainChangesNothing() {
    String entry = sent("first", "trout-plate", 5);
    Answer first = script.post(DINNER + "/entries", entry);
    assertThat(first.status()).isEqualTo(201);
    long change = site.house().stand().change();
    Answer again = script.post(DINNER + "/entries", entry);
    assertThat(again.status()).isEqualTo(200);
    assertThat(again.body()).isEqualTo(first.body());
    assertThat(site.house().stand().change()).isEqualTo(change);
    assertThat(trout().path("sent").asInt()).isEqualTo(5);
    Answer queue =
        script.post(
            DINNER + "/entries",
            "["
                + entry
                + ","
                + sent("first", "trout-plate", 1)
                + ","
                + sent("first", "nothing", 1)
                + "]");
    assertThat(queue.body().findValuesAsText("status")).containsExactly("200", "201", "404");
  }

  @Test
  void anEntryIsTakenBackOnce() {
    enter(withId(sent("first", "trout-plate", 5)));
    assertThat(enter(undo()).status()).isEqualTo(201);
    assertThat(trout().path("sent").asInt()).isZero();
    Answer again = enter(undo());
    assertThat(again.status()).isEqualTo(409);
    assertThat(again.body().path("said").asText()).contains("nothing to undo");
    enter(withId(sent("first", "trout-plate", 5)).replace(ENTRY, DEVICE));
    assertThat(trout().path("sent").asInt()).isEqualTo(5);
  }

  @Test
  void aCourseIsCalledOnceAndASecondDeviceIsToldByWhom() {
    assertThat(enter("'kind':'fire','course':'first'").status()).isEqualTo(201);
    assertThat(script.get(DINNER).body().at("/fires/0/called/who").asText()).isEqualTo("ines");
    Answer second = enter("'kind':'fire','course':'first'");
    assertThat(second.status()).isEqualTo(409);
    assertThat(second.body().path("said").asText()).contains("ines");
    assertThat(enter("'kind':'fire','course':'fifth'").status()).isEqualTo(404);
  }

  @Test
  void ofPickUpsTheSharesCalledAreGoneUntilPlatesAreRecorded() {
    String terrace = "services/terrace";
    assertThat(plates(terrace, "trout-bite")).isEqualTo(40);
    post(terrace, "'kind':'fire','course':'20:30'");
    assertThat(plates(terrace, "trout-bite")).as("55 of 100 to go").isEqualTo(22);
    post(terrace, "'kind':'sent','dish':'trout-bite','number':30");
    assertThat(plates(terrace, "trout-bite")).isEqualTo(10);
    JsonNode bar = script.get("services/bar.2026-12-05").body().path("components").get(0);
    double before = bar.at("/toGo/value").asDouble();
    post("services/bar.2026-12-05", "'kind':'fire','course':'17:00'");
    JsonNode after = script.get("services/bar.2026-12-05").body().path("components").get(0);
    assertThat(after.at("/toGo/value").asDouble()).isEqualTo(before * 0.8);
  }

  @Test
  void whatIsOutIsOutInEveryServiceUntilItIsBack() {
    assertThat(enter("'kind':'out','dish':'trout-plate'").problems()).containsExactly("$.note");
    enter(out("'dish':'trout-plate'"));
    assertThat(trout().at("/out/because").asText()).isEqualTo("none left");
    assertThat(script.get("services").body().at("/outages/0/who").asText()).isEqualTo("ines");
    assertThat(enter(out("'dish':'trout-plate'")).status()).isEqualTo(409);
    enter("'kind':'back','dish':'trout-plate'");
    assertThat(script.get("services").body().path("outages")).isEmpty();
    assertThat(enter("'kind':'back','dish':'trout-plate'").status()).isEqualTo(409);
    assertThat(enter(out("'dish':'nothing'")).status()).isEqualTo(404);
  }

  @Test
  void whatIsWrongIsToldAllAtOnce() {
    Answer wrong = script.post(DINNER + "/entries", "{'kind':'sent','number':201}");
    assertThat(wrong.problems()).contains("$.number", "$.who", "$.device", "$.sequence");
    assertThat(script.get("services/none").status()).isEqualTo(404);
    assertThat(post("services/none", "'kind':'fire','course':'first'").status()).isEqualTo(404);
  }

  @Test
  void theLogTellsWhatWasCalledAndSent() {
    enter(sent("first", "trout-plate", 5));
    JsonNode entry = script.get("log?kind=service").body().at("/entries/0");
    assertThat(entry.path("who").asText()).isEqualTo("ines");
    assertThat(entry.at("/detail/number").asInt()).isEqualTo(5);
  }

  // ---- below their callers ----

  private JsonNode trout() {
    return dish("trout-plate", "");
  }

  private JsonNode dish(String code, String diet) {
    for (JsonNode one : script.get(DINNER).body().path("dishes")) {
      boolean same =
          diet.isEmpty()
              ? one.path("diets").isEmpty()
              : one.path("diets").toString().equals("[\"" + diet + "\"]");
      if (one.path("dish").asText().equals(code) && same) {
        return one;
      }
    }
    throw new AssertionError("no " + code + " " + diet);
  }

  private JsonNode component(String code) {
    for (JsonNode one : script.get(DINNER).body().path("components")) {
      if (one.path("component").asText().equals(code)) {
        return one;
      }
    }
    throw new AssertionError("no " + code);
  }

  private int plates(String service, String dish) {
    for (JsonNode one : script.get(service).body().path("dishes")) {
      if (one.path("dish").asText().equals(dish) && one.path("diets").isEmpty()) {
        return one.path("toGo").asInt();
      }
    }
    throw new AssertionError("no " + dish);
  }

  private void bring(String component, String amount) {
    String body =
        "{'component':'"
            + component
            + "','left':'"
            + amount
            + "',"
            + "'made':'2026-12-05T17:00','useBy':'2026-12-06T12:00','place':'pass','sure':true}";
    assertThat(script.post("stock", body).status()).isEqualTo(201);
  }

  private Answer enter(String what) {
    return what.startsWith("{") ? script.post(DINNER + "/entries", what) : post(DINNER, what);
  }

  private Answer post(String service, String what) {
    return script.post(service + "/entries", body(what));
  }

  private String body(String what) {
    sequence++;
    return "{" + what + ",'who':'ines','device':'" + DEVICE + "','sequence':" + sequence + "}";
  }

  private String sent(String course, String dish, int number) {
    return body("'kind':'sent','course':'" + course + "','dish':'" + dish + "','number':" + number);
  }

  private static String out(String what) {
    return "'kind':'out'," + what + ",'note':'none left'";
  }

  private String undo() {
    return body("'kind':'undo','undoes':'" + ENTRY + "'");
  }

  private static String withId(String entry) {
    return entry.replaceFirst("\\{", "{'entry':'" + ENTRY + "',");
  }
}
