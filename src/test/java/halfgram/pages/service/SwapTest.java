package halfgram.pages.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.desk.Plans;
import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import java.time.Duration;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What stands in for what runs short: shown, confirmed by name, in force, undone. */
class SwapTest {
  private static final String DINNER = "/k/TARN/service/harvest-dinner";

  private Site site;
  private Client client;
  private Script script;

  @BeforeEach
  void open() {
    site = Site.demo();
    site.setClock(Site.at("18:20"));
    client = site.client();
    script = site.script();
    client.get("/k/TARN/service");
    client.post(DINNER + "/cook", "person", "ines");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void aSwapSaysWhatWouldDifferBeforeAnybodySaysYes() {
    bring("pea-spheres", "90 piece");
    String page = client.get(DINNER + "/swap").text();
    assertThat(page)
        .contains("Pea spheres in place of Yoghurt spheres")
        .contains("no more on the plate: MILK", "lasts for 30 plates", "food cost of a plate")
        .contains("It sets in a bath and is another base", "test piece");
    JsonNode butter = offer("celeriac-main", "mushroom-jus");
    assertThat(butter.path("gains").toString()).contains("milk");
    assertThat(butter.path("costAfter").asDouble())
        .isNotEqualTo(butter.path("costBefore").asDouble());
    assertThat(page).contains("NEW ON THE PLATE: MILK", "not for: DAIRY-FREE");
  }

  @Test
  void whatIsShortOrOutOffersItsSwapFirst() {
    assertThat(offer("trout-plate", "yoghurt-spheres").path("wanted").asBoolean()).isFalse();
    enter("kind", "OUT", "item", "yoghurt-spheres", "note", "burst", "sequence", number());
    assertThat(offer("trout-plate", "yoghurt-spheres").path("wanted").asBoolean()).isTrue();
    assertThat(client.get(DINNER).body()).contains("/k/TARN/service/harvest-dinner/swap");
    assertThat(client.get(DINNER + "/swap").text())
        .contains("Cured lake trout, sheep yoghurt, dill short or 86");
  }

  @Test
  void withoutAYesByNameNothingIsInForce() {
    Answer none = swap("trout-plate", "yoghurt-spheres", "pea-spheres", "");
    assertThat(none.status()).isEqualTo(422);
    assertThat(none.text()).contains("Choose who says yes");
    Answer stranger = swap("trout-plate", "yoghurt-spheres", "pea-spheres", "nobody");
    assertThat(stranger.status()).isEqualTo(409);
    assertThat(stranger.text()).contains("the yes of somebody");
    String body =
        "{'dish':'trout-plate','item':'yoghurt-spheres','with':'pea-spheres',"
            + "'device':'00000000-0000-4000-8000-000000000001','sequence':1}";
    assertThat(script.post("services/harvest-dinner/swaps", body).problems())
        .containsExactly("$.confirmedBy");
    assertThat(swap("trout-plate", "yoghurt-spheres", "dill-oil", "ines").status())
        .as("the dish does not list it")
        .isEqualTo(404);
    assertThat(perPlate("yoghurt-spheres")).isPositive();
    assertThat(offer("trout-plate", "yoghurt-spheres").path("inForce").asBoolean()).isFalse();
  }

  @Test
  void withAYesItIsOnThePlatesAtOnceAndThePlanIsOffered() {
    swap("trout-plate", "yoghurt-spheres", "pea-spheres", "ines");
    assertThat(client.get(DINNER).text()).contains("Pea spheres for Yoghurt spheres");
    // 84 plates of three; the dairy-free had pea spheres before.
    assertThat(perPlate("pea-spheres")).isEqualTo(252);
    assertThat(perPlate("yoghurt-spheres")).isZero();
    Plans.Proposal proposal = proposal();
    assertThat(proposal.difference().isEmpty()).isFalse();
    assertThat(
            proposal.sheet().services().stream()
                .filter(run -> run.id().equals("harvest-dinner"))
                .flatMap(run -> run.uses().stream())
                .map(use -> use.version().formula()))
        .contains("pea-spheres")
        .doesNotContain("yoghurt-spheres");
    assertThat(script.get("events/harvest-dinner").body().toString())
        .as("it is a fact of the book, and goes out with it")
        .contains("\"swaps\":[{\"dish\":\"trout-plate\"");
    Answer again = swap("trout-plate", "yoghurt-spheres", "pea-spheres", "ines");
    assertThat(again.text()).contains("something stands in for it already");
  }

  @Test
  void anotherServiceOfTheSameDishKeepsItsPlate() {
    JsonNode before = script.get("services/terrace").body().path("components");
    swap("trout-plate", "yoghurt-spheres", "pea-spheres", "ines");
    assertThat(script.get("services/terrace").body().path("components")).isEqualTo(before);
  }

  @Test
  void aPlateForADietKeepsWhatItHasWhenTheStandInWouldHarm() {
    JsonNode refused = offer("celeriac-main", "mushroom-jus").path("refusedFor");
    assertThat(refused.toString()).contains("dairy-free", "milk", "butter");
    swap("celeriac-main", "mushroom-jus", "butter-sauce", "ines");
    JsonNode served = script.get("services/harvest-dinner").body();
    // Two dairy-free plates at 30 g, and the char's three at 25 g; all others have butter sauce.
    assertThat(grams(served, "mushroom-jus")).isEqualTo(2 * 30 + 3 * 25);
    assertThat(client.get(DINNER).text())
        .contains("Brown-butter sauce for Mushroom jus")
        .contains("DAIRY-FREE Baked celeriac, parsnip, mushroom jus to go")
        .as("a dish that stays as it is has its name once")
        .doesNotContain("mushroom jus, Baked celeriac");
    assertThat(client.get(DINNER + "/swap").text())
        .contains("2 DAIRY-FREE plates keep what they have: milk: butter-sauce");
  }

  @Test
  void undoneItIsAsBefore() {
    String before = script.get("services/harvest-dinner").body().path("components").toString();
    String body = site.house().tree().path("events").toString();
    Answer done = swap("trout-plate", "yoghurt-spheres", "pea-spheres", "ines");
    String entry = done.all("name=\"undoes\" value=\"([^\"]+)\"").get(0);
    enter("kind", "UNDO", "undoes", entry, "sequence", number());
    assertThat(script.get("services/harvest-dinner").body().path("components").toString())
        .isEqualTo(before);
    assertThat(site.house().tree().path("events").toString()).isEqualTo(body);
    assertThat(client.get("/k/TARN/log?kind=service").text()).contains("Swapped:", "taken back");
  }

  @Test
  void theSameSwapSentTwiceIsOne() {
    String sequence = number();
    for (int i = 0; i < 2; i++) {
      Answer sent =
          client.post(
              DINNER + "/swap",
              "dish",
              "trout-plate",
              "item",
              "rye-crisp",
              "with",
              "seed-crisp",
              "confirmedBy",
              "ines",
              "sequence",
              sequence);
      assertThat(sent.status()).isEqualTo(303);
    }
    String event = script.get("events/harvest-dinner").body().toString();
    assertThat(event.split("\"dish\":\"trout-plate\",\"component\"", -1)).hasSize(2);
  }

  @Test
  void theCloseTakesWhatStoodIn() {
    bring("pea-spheres", "300 piece");
    bring("yoghurt-spheres", "300 piece");
    enter(
        "kind",
        "SENT",
        "course",
        "first",
        "dish",
        "trout-plate",
        "number",
        "10",
        "sequence",
        number());
    swap("trout-plate", "yoghurt-spheres", "pea-spheres", "ines");
    enter(
        "kind",
        "SENT",
        "course",
        "first",
        "dish",
        "trout-plate",
        "number",
        "20",
        "sequence",
        number());
    site.passTime(Duration.ofHours(13));
    client.get("/k/TARN/");
    assertThat(assumed("yoghurt-spheres")).isEqualTo(30);
    assertThat(assumed("pea-spheres")).isEqualTo(60);
  }

  // ---- below their callers ----

  private Answer swap(String dish, String item, String with, String yes) {
    return client.postAndFollow(
        DINNER + "/swap",
        "dish",
        dish,
        "item",
        item,
        "with",
        with,
        "confirmedBy",
        yes,
        "sequence",
        number());
  }

  private Answer enter(String... fields) {
    return client.postAndFollow(DINNER, fields);
  }

  private static String number() {
    return String.valueOf(Site.sequence());
  }

  private JsonNode offer(String dish, String item) {
    for (JsonNode one : script.get("services/harvest-dinner/swaps").body().path("swaps")) {
      if (one.path("dish").asText().equals(dish) && one.path("item").asText().equals(item)) {
        return one;
      }
    }
    throw new AssertionError("no swap for " + item);
  }

  private int perPlate(String component) {
    return grams(script.get("services/harvest-dinner").body(), component);
  }

  /** What the plates to go take of a component: grams or pieces; 0 when none has it. */
  private static int grams(JsonNode service, String component) {
    for (JsonNode one : service.path("components")) {
      if (one.path("component").asText().equals(component)) {
        return one.at("/toGo/value").asInt();
      }
    }
    return 0;
  }

  private Plans.Proposal proposal() {
    House house = site.house();
    InForce inForce = site.wiring().plans().find(house, Site.DAY).orElseThrow();
    return site.wiring().plans().findProposal(house, inForce).orElseThrow();
  }

  private void bring(String component, String amount) {
    String body =
        "{'component':'"
            + component
            + "','left':'"
            + amount
            + "','made':'2026-12-05T17:00','useBy':'2026-12-06T12:00','place':'pass','sure':true}";
    assertThat(script.post("stock", body).status()).isEqualTo(201);
  }

  private int assumed(String formula) {
    int sum = 0;
    for (Tub tub : site.wiring().stock().listAll(site.house())) {
      if (tub.lot().component().formula().equals(formula)) {
        for (Movement one :
            site.wiring().stock().find(site.house(), tub.lot().code()).orElseThrow().movements()) {
          if (one.kind() == Movement.Kind.ASSUMED
              && one.reason().filter("harvest-dinner"::equals).isPresent()) {
            sum -= one.amount().number().intValue();
          }
        }
      }
    }
    return sum;
  }
}
