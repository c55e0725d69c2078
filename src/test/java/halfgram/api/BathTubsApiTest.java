package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.testkit.Script.Answer;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What baths take out of tubs, by the API, and when the tubs have it back. */
class BathTubsApiTest extends OnBaths {
  @Test
  void aBathHasUsedItsTubFromItsFirstDropUntilNoneCounts() {
    assertThat(left("t-1204-a1")).isEqualTo(4000);
    String first = drop("A", RUN, 15);
    assertThat(left("t-1204-a1")).isZero();
    assertThat(bath("A").path("tub").path("code").asText()).isEqualTo("t-1204-a1");
    String second = drop("A", RUN, 15);
    undo(first);
    assertThat(left("t-1204-a1")).isZero();
    undo(second);
    assertThat(left("t-1204-a1")).isEqualTo(4000);
    enter("'kind':'lift','drop':'" + drop("A", RUN, 15) + "'");
    String change = enter("'kind':'changed','bath':'A','tub':'t-1204-a3'");
    assertThat(left("t-1204-a3")).isZero();
    drop("B", RUN, 15);
    assertThat(left("t-1204-a2")).isEqualTo(4000);
    assertThat(undo(change).status()).isEqualTo(409);
  }

  @Test
  void theBathIsTracedIntoTheSpheresThatWentThroughItAndBack() {
    String other = drop("B", RUN, 15);
    undo(other);
    enter("'kind':'lift','drop':'" + drop("A", RUN, 15) + "'");
    int number = 100;
    for (JsonNode task : script.get("tasks").body()) {
      String id = task.path("id").asText();
      if (id.startsWith(RUN + "/")) {
        String done = "'task':'" + id + "','kind':'done','sure':true";
        Answer answer = script.post("ticks", body(done, DEVICE, number++));
        assertThat(answer.status()).as(answer.plain().body()).isEqualTo(201);
      }
    }
    JsonNode into = script.get("stock/t-1204-a1").body().path("wentInto");
    assertThat(into).isNotEmpty();
    JsonNode made = script.get("stock/" + into.path(0).asText()).body();
    assertThat(made.path("component").asText()).isEqualTo("yoghurt-spheres");
    assertThat(made.path("madeOf"))
        .extracting(JsonNode::asText)
        .contains("t-1204-a1")
        .doesNotContain("t-1204-a2");
  }

  @Test
  void aTubStandsAtOneBath() {
    enter("'kind':'lift','drop':'" + drop("A", RUN, 15) + "'");
    Answer again = send("'kind':'changed','bath':'A','tub':'t-1204-a1'");
    assertThat(again.status()).isEqualTo(409);
    assertThat(again.body().path("said").asText()).contains("tub t-1204-a1 has gone into bath A");
    String planned = bath("B").at("/tub/code").asText();
    enter("'kind':'changed','bath':'A','fresh':'X','tub':'" + planned + "'");
    assertThat(bath("X").at("/tub/code").asText()).isEqualTo(planned);
    assertThat(bath("B").at("/tub/code").asText()).isNotEqualTo(planned);
  }

  @Test
  void noLaterPlanGivesTheTubOfABathInUseToAnythingElse() {
    drop("A", RUN, 15);
    script.post("stock/t-1204-a3/bin", "{'reason':'cloudy','cook':'ines'}");
    long facts = script.get("today").body().path("facts").asLong();
    Answer next = script.post("plan", "{'facts':" + facts + "}");
    assertThat(next.status()).as(next.plain().body()).isEqualTo(201);
    assertThat(given()).contains("t-1204-a2").doesNotContain("t-1204-a1");
    assertThat(bath("A").path("tub").path("code").asText()).isEqualTo("t-1204-a1");
  }

  /** The tubs that the plan in force gives to baths. */
  private List<String> given() {
    return script.get("plan").body().path("tubs").findParents("component").stream()
        .filter(tub -> tub.path("component").asText().equals("alginate-bath"))
        .map(tub -> tub.path("tub").asText())
        .toList();
  }

  private double left(String tub) {
    return script.get("stock/" + tub).body().path("left").path("value").asDouble();
  }
}
