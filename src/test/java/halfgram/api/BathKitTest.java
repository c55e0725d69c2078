package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.testkit.Script.Answer;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What baths carry by what was entered at them, and the work for a diet that may not go in. */
class BathKitTest extends OnBaths {
  private long ticked = 1000;

  @Test
  void piecesLeaveTheirAllergensInTheBathTheyWentIntoNotInThosePlanned() {
    drop("D", RUN, 15);
    assertThat(carrying()).containsExactly("bath/alginate-bath/2026-12-05/D");
    Answer refused = test("start");
    assertThat(refused.status()).isEqualTo(409);
    assertThat(refused.body().path("said").asText()).contains("bath D carries", "Yoghurt spheres");
    assertThat(refused.body().path("said").asText()).contains("milk", "dairy-free");
    assertThat(test("done").status()).isEqualTo(409);
  }

  @Test
  void anotherBathTakesThemAllTheSame() {
    drop("D", RUN, 15);
    drop("F", PEAS, 15);
  }

  @Test
  void aBathThatWasEmptiedCarriesNothingOfBefore() {
    String drop = drop("D", RUN, 15);
    enter("'kind':'lift','drop':'" + drop + "'");
    assertThat(test("start").status()).isEqualTo(409);
    site.passTime(Duration.ofMinutes(1));
    String changed = enter("'kind':'changed','bath':'D','fresh':'F'");
    assertThat(carrying()).isEmpty();
    assertThat(undo(changed).status()).isEqualTo(201);
    assertThat(test("start").status()).isEqualTo(409);
    enter("'kind':'changed','bath':'D','fresh':'F'");
    assertThat(test("start").status()).isEqualTo(201);
    drop("F", PEAS, 15);
  }

  @Test
  void aDropThatIsTakenBackLeavesNothing() {
    String drop = drop("D", RUN, 15);
    assertThat(undo(drop).status()).isEqualTo(201);
    assertThat(carrying()).doesNotContain("bath/alginate-bath/2026-12-05/D");
    assertThat(test("start").status()).isEqualTo(201);
  }

  @Test
  void whereNobodyEnteredDropsThosePlannedCount() {
    script.get("baths");
    String run = "{'task':'%s','kind':'start','cook':'ines','device':'%s','sequence':%d}";
    assertThat(script.post("ticks", run.formatted(RUN + "/drop", DEVICE, ++ticked)).status())
        .isEqualTo(201);
    assertThat(carrying()).contains("bath/alginate-bath/2026-12-05/A");
  }

  private Answer test(String kind) {
    return script.post(
        "ticks",
        "{'task':'%s','kind':'%s','cook':'ines','device':'%s','sequence':%d}"
            .formatted(PEAS + "/drop/test-piece", kind, DEVICE, ++ticked));
  }

  /** Ids of the baths that carry something. */
  private List<String> carrying() {
    List<String> baths = new ArrayList<>();
    for (JsonNode thing : script.get("kit").body().path("things")) {
      String id = thing.path("thing").asText();
      if (id.startsWith("bath/") && !thing.path("carries").isEmpty()) {
        baths.add(id);
      }
    }
    return baths;
  }
}
