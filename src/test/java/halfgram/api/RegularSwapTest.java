package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.book.BookStore;
import halfgram.desk.Demo;
import halfgram.prep.ServiceRun;
import halfgram.testkit.Client;
import halfgram.testkit.Script;
import halfgram.testkit.Script.Answer;
import halfgram.testkit.Site;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What dishes list to stand in for something, in a service that is planned from pars. */
class RegularSwapTest {
  private static final String LUNCH = "lunch.2026-12-05";
  private static final String DEVICE = "00000000-0000-4000-8000-000000000009";

  private Site site;
  private Script script;
  private Client client;
  private long sequence = 1;

  @BeforeEach
  void open() {
    site = Site.demo();
    script = site.script();
    client = site.client();
    client.get("/k/TARN/");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void aSwapIsOfferedWithWhatDiffersAndNeedsAYesByName() {
    JsonNode offer = offer();
    assertThat(offer.path("dish").asText()).isEqualTo("trout-plate");
    assertThat(offer.path("with").asText()).isEqualTo("seed-crisp");
    assertThat(offer.path("plates").asInt()).as("a par of 52, one a plate").isEqualTo(52);
    assertThat(offer.path("loses").toString()).contains("gluten");
    assertThat(offer.path("costAfter").decimalValue())
        .isNotEqualByComparingTo(offer.path("costBefore").decimalValue());
    assertThat(offer.path("inForce").asBoolean()).isFalse();
    assertThat(swap("nobody").status()).isEqualTo(409);
    assertThat(script.post("services/" + LUNCH + "/swaps", body("")).status()).isEqualTo(422);
    assertThat(used("rye-crisp")).isEqualByComparingTo("52");
  }

  @Test
  void inForceThePlanMakesTheOtherOnThatDateAloneAndUndoTakesItBack() {
    Answer taken = swap("marit");
    assertThat(taken.status()).isEqualTo(201);
    assertThat(offer().path("inForce").asBoolean()).isTrue();
    assertThat(client.get("/k/TARN/").text()).contains("Accept");
    accept();
    assertThat(used("rye-crisp")).isEqualByComparingTo("0");
    assertThat(used("seed-crisp")).isEqualByComparingTo("52");
    assertThat(client.get("/k/TARN/service/" + LUNCH).text()).contains("Seed crisps");
    assertThat(client.get("/k/TARN/service/" + LUNCH + "/swap").text())
        .contains("Seed crisps in place of Rye crisps", "in force, yes by Marit")
        .contains("food cost of a portion")
        .doesNotContain("plates to go");
    assertThat(client.get("/k/TARN/log?kind=slip").text()).contains("something stands in");
    JsonNode dates = service().path("dates");
    assertThat(dates).hasSize(1);
    assertThat(dates.get(0).path("date").asText()).isEqualTo("2026-12-05");
    assertThat(swap("marit").status()).as("twice").isEqualTo(409);

    String entry = taken.body().path("entry").asText();
    String undo = "'kind':'undo','undoes':'" + entry + "','who':'ines'";
    assertThat(script.post("services/" + LUNCH + "/entries", numbered(undo)).status())
        .isEqualTo(201);
    accept();
    assertThat(used("rye-crisp")).isEqualByComparingTo("52");
    assertThat(offer().path("inForce").asBoolean()).isFalse();
  }

  @Test
  void aPushAndAnImportLeaveTheSwapWhereItIs() {
    swap("marit");
    script.post("slip/" + LUNCH, "{'minutes':15,'covers':80}");
    site.importBook(
        BookStore.parse(new String(Demo.book(Site.DAY), StandardCharsets.UTF_8))
            .toString()
            .getBytes(StandardCharsets.UTF_8));
    accept();
    assertThat(used("rye-crisp")).isEqualByComparingTo("0");
    assertThat(used("seed-crisp")).as("twice the usual covers").isEqualByComparingTo("104");
    assertThat(offer().path("plates").asInt()).isEqualTo(104);
  }

  @Test
  void whatNoDishListsOrTheServiceDoesNotUseIsNotThere() {
    String other =
        "'dish':'trout-plate','item':'yoghurt-spheres','with':'pea-spheres','confirmedBy':'marit'";
    assertThat(script.post("services/" + LUNCH + "/swaps", numbered(other)).status())
        .isEqualTo(404);
    String unlisted =
        "'dish':'trout-plate','item':'rye-crisp','with':'pea-spheres','confirmedBy':'marit'";
    assertThat(script.post("services/" + LUNCH + "/swaps", numbered(unlisted)).status())
        .isEqualTo(404);
  }

  private JsonNode offer() {
    for (JsonNode one : script.get("services/" + LUNCH + "/swaps").body().path("swaps")) {
      if (one.path("item").asText().equals("rye-crisp")) {
        return one;
      }
    }
    throw new AssertionError("no swap for rye crisps");
  }

  private Answer swap(String who) {
    return script.post("services/" + LUNCH + "/swaps", body(",'confirmedBy':'" + who + "'"));
  }

  private String body(String who) {
    return numbered("'dish':'trout-plate','item':'rye-crisp','with':'seed-crisp'" + who);
  }

  private String numbered(String what) {
    return "{" + what + ",'device':'" + DEVICE + "','sequence':" + sequence++ + "}";
  }

  private void accept() {
    long facts = site.house().stand().facts();
    site.wiring().plans().accept(site.house(), Site.DAY, facts, "test");
  }

  private BigDecimal used(String formula) {
    return site
        .wiring()
        .plans()
        .find(site.house(), Site.DAY)
        .orElseThrow()
        .sheet()
        .services()
        .stream()
        .filter(run -> run.id().equals(LUNCH))
        .flatMap(run -> run.uses().stream())
        .filter(use -> use.version().formula().equals(formula))
        .map(ServiceRun.Use::amount)
        .map(amount -> amount.number())
        .reduce(BigDecimal.ZERO, BigDecimal::add);
  }

  private JsonNode service() {
    for (JsonNode one : site.house().tree().path("services")) {
      if (one.path("code").asText().equals("lunch")) {
        return one;
      }
    }
    throw new AssertionError("no lunch");
  }
}
