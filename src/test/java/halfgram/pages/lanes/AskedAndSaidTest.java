package halfgram.pages.lanes;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What is asked on the page "What if" and what is proposed once it is said are the same. */
class AskedAndSaidTest {
  private static final String DEVICE = "'device': '00000000-0000-4000-8000-00000000000b'";

  private Site site;
  private Script script;

  @BeforeEach
  void open() {
    site = Site.demo().searchFully();
    site.setClock(Site.at("09:10"));
    script = site.script();
    script.get("lanes");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void somebodyWhoDoesNotCome() {
    asSaid("{'off': ['sixten']}", "'kind': 'out', 'person': 'sixten'");
  }

  @Test
  void somebodyWhoGoesHomeNow() {
    asSaid("{'off': ['marit']}", "'kind': 'in', 'person': 'marit', 'until': '09:10'");
  }

  @Test
  void aMachineThatBreaksNow() {
    asSaid("{'broken': ['blender']}", "'kind': 'broken', 'machine': 'blender'");
  }

  private void asSaid(String asked, String said) {
    JsonNode what = script.post("what-if", asked).body();
    String entry = "{" + said + "," + DEVICE + ",'sequence': 1}";
    assertThat(script.post("crew", entry).status()).isEqualTo(201);
    JsonNode proposal = script.get("lanes").body().path("proposal");
    String seen =
        "{'number': %s, 'mark': '%s'}"
            .formatted(proposal.path("number"), proposal.path("mark").asText());
    JsonNode lanes = script.post("lanes", seen).body();

    assertThat(lanes.path("leftOut")).isEqualTo(what.at("/then/leftOut"));
    Map<String, JsonNode> placed = new HashMap<>();
    lanes.path("tasks").forEach(task -> placed.put(task.path("task").asText(), task));
    assertThat(what.path("moves")).isNotEmpty();
    for (JsonNode move : what.path("moves")) {
      String task = move.path("task").asText();
      if (move.has("to")) {
        assertThat(placed.get(task).path("start")).as(task).isEqualTo(move.at("/to/start"));
        assertThat(placed.get(task).path("people")).as(task).isEqualTo(move.at("/to/people"));
      } else {
        assertThat(placed).as(task).doesNotContainKey(task);
      }
    }
  }
}
