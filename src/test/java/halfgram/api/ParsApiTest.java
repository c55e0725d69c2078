package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.testkit.Script;
import halfgram.testkit.Script.Answer;
import org.junit.jupiter.api.Test;

/** Pars by the API: cell by cell, as on the page. */
class ParsApiTest extends OnDemo {
  @Test
  void whatIsChangedIsSavedAndShownOnThePage() {
    JsonNode seen = pars();
    ArrayNode wanted = seen.deepCopy();
    amounts(wanted, 1).put("sat", "1.25 kg").remove("sun");
    Answer saved = put(seen, wanted);
    assertThat(saved.status()).isEqualTo(200);
    assertThat(saved.body().path("pars")).isEqualTo(wanted);
    assertThat(site.client().get("/k/TARN/pars").body()).contains("value=\"1.25 kg\"");
  }

  @Test
  void cellsInNeitherListStay() {
    JsonNode before = pars();
    Answer saved =
        script.put(
            "pars",
            "{'seen':[{'service':'lunch','component':'cured-trout','amounts':{'sat':'800"
                + " g'}}],'pars':[{'service':'lunch','component':'cured-trout','amounts':{'sat':'1"
                + " kg'}}]}");
    ArrayNode expected = before.deepCopy();
    amounts(expected, 1).put("sat", "1 kg");
    assertThat(saved.body().path("pars")).isEqualTo(expected);
  }

  @Test
  void everythingWrongIsSaidAtOnceAndNothingChanges() {
    JsonNode seen = pars();
    ArrayNode wrong = seen.deepCopy();
    amounts(wrong, 0).put("sat", "a lot").put("mon", "1 kg");
    ((ObjectNode) wrong.get(1)).put("component", "nothing");
    assertThat(put(seen, wrong).problems())
        .contains("$.pars[0].amounts.sat", "$.pars[0].amounts.mon", "$.pars[1].component");
    assertThat(script.put("pars", "{'seen':3}").problems()).containsExactly("$.pars", "$.seen");
    assertThat(pars()).isEqualTo(seen);
  }

  @Test
  void aCellThatSomebodyElseHasChangedIsStale() {
    JsonNode seen = pars();
    ArrayNode mine = seen.deepCopy();
    ArrayNode theirs = seen.deepCopy();
    amounts(mine, 1).put("sat", "1 kg");
    amounts(theirs, 1).put("sat", "2 kg");
    assertThat(put(seen, theirs).status()).isEqualTo(200);
    assertThat(put(seen, mine).kind()).isEqualTo("stale");
    assertThat(pars()).isEqualTo(theirs);
  }

  private JsonNode pars() {
    return script.get("pars").body().path("pars");
  }

  private static ObjectNode amounts(JsonNode pars, int row) {
    return (ObjectNode) pars.path(row).path("amounts");
  }

  private Answer put(JsonNode seen, JsonNode wanted) {
    ObjectNode body = Script.object("{}");
    body.set("seen", seen);
    body.set("pars", wanted);
    return script.sent("PUT", "pars", body.toString());
  }
}
