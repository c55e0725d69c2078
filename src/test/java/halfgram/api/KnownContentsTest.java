package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.testkit.Script;
import halfgram.testkit.Script.Answer;
import org.junit.jupiter.api.Test;

/** What was in a tub when it was filled is in it still, whatever the book says since. */
class KnownContentsTest extends OnDemo {
  private static final String CROQUETTES = "t-1204-croq";

  @Test
  void aFormulaChangedFurtherDownTakesNoAllergenOffATub() {
    assertThat(label(CROQUETTES)).contains("CONTAINS CELERY, EGGS, GLUTEN");
    withoutCelery();
    assertThat(label(CROQUETTES)).contains("CONTAINS CELERY, EGGS, GLUTEN");
  }

  @Test
  void anIngredientOfAnotherMakeTakesNoAllergenOffATub() {
    ObjectNode celeriac = item("ingredients", "celeriac");
    celeriac.putArray("contains");
    assertThat(
            script
                .put("book/ingredients/celeriac?seen=" + seen("celeriac"), celeriac.toString())
                .status())
        .isEqualTo(200);
    assertThat(label(CROQUETTES)).contains("CELERY");
  }

  @Test
  void aTubThatCarriesMoreThanItsFormulaIsNotPlannedWith() {
    assertThat(drawn()).contains(CROQUETTES);
    withoutCelery();
    assertThat(drawn()).doesNotContain(CROQUETTES);
    assertThat(site.client().get("/k/TARN/stock/" + CROQUETTES).text())
        .contains("contains CELERY, which its formula no longer does");
  }

  @Test
  void whatIsSplitOffAndWhatIsBroughtElsewhereCarriesItToo() {
    withoutCelery();
    String part =
        script
            .post(
                "stock/" + CROQUETTES + "/split",
                "{'id':'00000000-0000-4000-8000-000000000011','amount':'100 g','tubs':1}")
            .body()
            .path("filled")
            .path(0)
            .asText();
    assertThat(label(part)).contains("CELERY");
    JsonNode tub = tub(part);
    assertThat(tub.path("contains").toString()).isEqualTo("[\"celery\"]");
    assertThat(tub("t-1203-oil-1").has("contains")).isFalse();
  }

  @Test
  void whatIsMadeOfSuchATubCarriesItToo() {
    site.client().get("/k/TARN/");
    oil("['celery']");
    String brought =
        "{'component':'dill-oil','left':'2"
            + " kg','made':'2026-12-05T08:00','place':'walk-in','sure':true}";
    String tub =
        script
            .post("stock?id=00000000-0000-4000-8000-000000000009", brought)
            .body()
            .path("code")
            .asText();
    oil("[]");
    for (JsonNode other : script.get("stock").body().path("tubs")) {
      String code = other.path("code").asText();
      if (other.path("component").asText().equals("dill-oil") && !code.equals(tub)) {
        script.post("stock/" + code + "/bin", "{'reason':'not safe'}");
      }
    }
    int sequence = 0;
    String task = "";
    for (JsonNode one : script.get("tasks").body()) {
      if (one.path("id").asText().startsWith("dill-oil-powder/")) {
        task = one.path("id").asText();
        String tick = "'kind':'done','cook':'ines','sequence':" + ++sequence;
        String device = ",'device':'00000000-0000-4000-8000-000000000001'";
        Answer done = script.post("ticks", "{'task':'" + task + "'," + tick + device + "}");
        assertThat(done.status()).as(done.plain().body()).isEqualTo(201);
      }
    }
    JsonNode powder = script.get("stock/" + tub).body().path("wentInto");
    assertThat(powder).isNotEmpty();
    assertThat(label(powder.path(0).asText())).contains("CELERY");
  }

  private void oil(String allergens) {
    ObjectNode oil = item("ingredients", "sunflower-oil");
    oil.set("contains", Script.object("{'of':" + allergens + "}").path("of"));
    String path = "book/ingredients/sunflower-oil?seen=" + seen("sunflower-oil");
    assertThat(script.put(path, oil.toString()).status()).isEqualTo(200);
  }

  private void withoutCelery() {
    ObjectNode mix = (ObjectNode) script.get("formulas/croquette-mix").body().path("formula");
    for (JsonNode line : mix.at("/versions/0/lines")) {
      if (line.path("component").asText().equals("celeriac-baked")) {
        ((ObjectNode) line).remove("component");
        ((ObjectNode) line).put("ingredient", "parsnip");
      }
    }
    assertThat(script.sent("PUT", "formulas/croquette-mix?seen=1", mix.toString()).status())
        .isEqualTo(201);
  }

  private String drawn() {
    site.client().get("/k/TARN/");
    long facts = site.house().stand().facts();
    script.post("plan", "{'facts':" + facts + "}");
    return script.get("plan").body().path("tubs").toString();
  }

  private String label(String tub) {
    return site.client().get("/k/TARN/label?tub=" + tub).text();
  }

  private JsonNode tub(String code) {
    for (JsonNode tub : script.get("book").body().path("tubs")) {
      if (tub.path("code").asText().equals(code)) {
        return tub;
      }
    }
    throw new AssertionError(code);
  }

  private ObjectNode item(String kind, String code) {
    return (ObjectNode) script.get("book/" + kind + "/" + code).body().path("thing");
  }

  private long seen(String code) {
    return script.get("book/ingredients/" + code).body().path("change").asLong();
  }
}
