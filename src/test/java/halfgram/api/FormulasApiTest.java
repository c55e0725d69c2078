package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.testkit.Script.Answer;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Formulas by the API: versions are added and never changed, sizes are those of page and command.
 */
class FormulasApiTest extends OnDemo {
  @Test
  void anyVersionCanBeRead() {
    Answer current = script.get("formulas/yoghurt-base");
    assertThat(current.body().path("version").asInt()).isEqualTo(2);
    assertThat(current.body().path("versions")).hasSize(2);
    Answer first = script.get("formulas/yoghurt-base?version=1");
    assertThat(first.body().at("/formula/versions/0/version").asInt()).isEqualTo(1);
    assertThat(script.get("formulas/yoghurt-base?version=7").status()).isEqualTo(404);
    assertThat(script.get("formulas/none").status()).isEqualTo(404);
    assertThat(script.get("formulas").body().at("/formulas")).hasSizeGreaterThan(30);
  }

  @Test
  void aNewVersionIsSavedOnceAndShownOnThePage() {
    ObjectNode formula = formula();
    ((ObjectNode) formula.at("/versions/0")).put("note", "drips longer");
    Answer saved = put(1, formula);
    assertThat(saved.status()).isEqualTo(201);
    assertThat(saved.body().path("version").asInt()).isEqualTo(2);
    assertThat(put(1, formula).body().path("versions")).as("the same again").hasSize(2);
    assertThat(site.client().get("/k/TARN/formulas/dill-oil/versions").text())
        .contains("drips longer");
  }

  @Test
  void lookingTellsWhatAVersionWouldWeighAndStoresNothing() {
    site.client().get("/k/TARN/");
    ObjectNode formula = formula();
    ((ObjectNode) formula.at("/versions/0/lines/0")).put("percent", 50);
    Answer looked = script.sent("PUT", "formulas/dill-oil?seen=1&look=yes", formula.toString());
    assertThat(looked.status()).isEqualTo(200);
    assertThat(looked.body().at("/effects/0/of").asText()).isEqualTo("today");
    assertThat(looked.body().at("/effects/0/difference/weighed"))
        .anySatisfy(one -> assertThat(one.path("item").asText()).isEqualTo("blanched-dill"));
    assertThat(script.get("formulas/dill-oil").body().path("versions")).hasSize(1);
    ((ObjectNode) formula.at("/versions/0/lines/0")).put("percent", -4);
    assertThat(
            script.sent("PUT", "formulas/dill-oil?seen=1&look=yes", formula.toString()).problems())
        .contains("$.versions[0].lines[0].percent");
    assertThat(script.sent("PUT", "formulas/dill-oil?seen=7&look=yes", formula.toString()).kind())
        .isEqualTo("stale");
  }

  @Test
  void aVersionMadeFromAnOlderOneIsStale() {
    ObjectNode formula = formula();
    ((ObjectNode) formula.at("/versions/0")).put("note", "mine");
    assertThat(put(1, formula).status()).isEqualTo(201);
    ((ObjectNode) formula.at("/versions/0")).put("note", "theirs");
    assertThat(put(1, formula).kind()).isEqualTo("stale");
    assertThat(script.sent("PUT", "formulas/dill-oil", formula.toString()).status()).isEqualTo(400);
  }

  @Test
  void everythingWrongWithAVersionIsSaidAtOnceAndNothingIsSaved() {
    ObjectNode formula = formula();
    ((ObjectNode) formula.at("/versions/0/lines/0")).put("percent", -4);
    ((ObjectNode) formula.at("/versions/0/steps/0")).put("station", "moon").put("zeal", 3);
    assertThat(put(1, formula).problems())
        .contains(
            "$.versions[0].lines[0].percent",
            "$.versions[0].steps[0].station",
            "$.versions[0].steps[0].zeal");
    formula.putArray("versions");
    assertThat(put(1, formula).problems()).containsExactly("$.versions");
    assertThat(script.get("formulas/dill-oil").body().path("versions")).hasSize(1);
  }

  @Test
  void aFormulaIsAddedUnlessItsCodeIsTaken() {
    ObjectNode formula = formula();
    formula.put("code", "mint-oil").put("name", "Mint oil");
    Answer added = script.sent("POST", "formulas", formula.toString());
    assertThat(added.status()).isEqualTo(201);
    assertThat(site.client().get("/k/TARN/formulas/mint-oil").text()).contains("Mint oil");
    formula.put("name", "Another oil");
    assertThat(script.sent("POST", "formulas", formula.toString()).kind()).isEqualTo("refused");
    formula.put("code", "Not A Code");
    assertThat(script.sent("POST", "formulas", formula.toString()).problems()).contains("$.code");
  }

  @Test
  void aFormulaIsSizedInEachOfTheFiveWays() {
    String two = script.get(scale("amount=2%20kg")).body().at("/gives/0/amount/value").asText();
    assertThat(Double.parseDouble(two)).isGreaterThanOrEqualTo(2000);
    assertThat(script.get(scale("covers=40&each=50%20g")).body().at("/gives/0/amount/value"))
        .hasToString(two);
    assertThat(script.get("formulas/rye-crisp/scale?pieces=40").status()).isEqualTo(200);
    assertThat(script.get("formulas/pea-stock/scale?batches=2").status()).isEqualTo(200);
    Answer have = script.get(scale("have=sunflower-oil%3D500%20g"));
    assertThat(have.body().at("/lines/1/setOut/value").asInt()).isEqualTo(500);
  }

  @Test
  void aSizeThatIsNoneIsSaidAtTheParameter() {
    assertThat(script.get(scale("amount=much&output=none")).problems()).containsExactly("output");
    assertThat(script.get(scale("amount=much")).problems()).containsExactly("amount");
    assertThat(script.get(scale("covers=x&each=y")).problems()).containsExactly("each", "covers");
    for (String ways : List.of("", "amount=1%20kg&batches=2")) {
      assertThat(script.get(scale(ways)).status()).as(ways).isEqualTo(422);
    }
  }

  private static String scale(String query) {
    return "formulas/dill-oil/scale?" + query;
  }

  private ObjectNode formula() {
    return (ObjectNode) script.get("formulas/dill-oil").body().path("formula");
  }

  private Answer put(int seen, ObjectNode formula) {
    return script.sent("PUT", "formulas/dill-oil?seen=" + seen, formula.toString());
  }
}
