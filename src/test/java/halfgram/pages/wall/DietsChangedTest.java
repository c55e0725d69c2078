package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import org.junit.jupiter.api.Test;

/** Guests are counted among others: every wall is told before anything is cooked for too few. */
class DietsChangedTest extends AtWall {
  private static final String EVENT = "events/harvest-dinner";
  private static final String SIX = "Harvest dinner, GLUTEN-FREE: 3 → 6 guests";

  DietsChangedTest() {
    super("cold");
  }

  @Test
  void everyWallSaysItAtOnceThatThePlanDoesNotHaveItYetAndThenThatItDoes() {
    inForce();
    glutenFree(6);
    for (String station : new String[] {"cold", "hot", "pastry", "pass", "all"}) {
      assertThat(wall(station).text())
          .as(station)
          .contains(SIX, "Weights below do not include it yet");
    }
    accept();
    assertThat(wall("hot").text()).contains(SIX, "Weights below include it").doesNotContain("yet:");
    assertThat(client.get("/k/TARN/log").text())
        .contains("Harvest dinner, gluten-free 3 → 6 guests");
    seen("hot");
    assertThat(wall("hot").text()).doesNotContain(SIX);
    assertThat(wall("cold").text()).as("seen at another station").contains(SIX);
  }

  @Test
  void severalChangesAreToldAsOneAndOneThatIsBackIsNone() {
    inForce();
    glutenFree(6);
    accept();
    glutenFree(8);
    accept();
    assertThat(wall("cold").text()).contains("GLUTEN-FREE: 3 → 8 guests");
    glutenFree(3);
    accept();
    assertThat(wall("cold").text()).doesNotContain("GLUTEN-FREE: ");
  }

  @Test
  void whatWasSeenAndThenTakenBackBeforeAnyPlanHadItIsTold() {
    inForce();
    covers(97);
    assertThat(wall("cold").text()).contains("Harvest dinner: 84 → 97 covers");
    seen("cold");
    covers(84);
    String back = "covers, diets and times are those of the plan again";
    assertThat(wall("cold").text()).contains("Changed back at 09:00", back);
    assertThat(wall("hot").text()).as("nobody there saw it").doesNotContain(back);
    seen("cold");
    assertThat(wall("cold").text()).doesNotContain(back);
    glutenFree(6);
    assertThat(wall("cold").text()).contains(SIX);
    seen("cold");
    glutenFree(3);
    assertThat(wall("cold").text()).contains(back);
  }

  @Test
  void whatIsOverIsNotTakenBackByIt() {
    inForce();
    glutenFree(6);
    seen("cold");
    site.setClock(Site.at("21:45"));
    covers(97);
    covers(84);
    assertThat(wall("cold").text()).doesNotContain("those of the plan again");
  }

  private Answer wall(String station) {
    return client.get("/k/TARN/wall/" + station);
  }

  private void seen(String station) {
    client.post("/k/TARN/wall/seen", FilledForm.of(wall(station), "wall/seen").fields());
  }

  private void covers(int number) {
    Script script = site.script();
    String seen = "/covers?seen=" + script.get(EVENT).body().path("change").asLong();
    assertThat(script.put(EVENT + seen, "{'final':" + number + "}").status()).isEqualTo(200);
  }

  private void glutenFree(int guests) {
    Script script = site.script();
    JsonNode stored = script.get(EVENT).body();
    ObjectNode event = (ObjectNode) stored.path("event");
    for (JsonNode diet : event.path("diets")) {
      if (diet.path("diets").path(0).asText().equals("gluten-free")) {
        ((ObjectNode) diet).put("count", guests);
      }
    }
    String seen = "?seen=" + stored.path("change").asLong();
    assertThat(script.sent("PUT", EVENT + seen, event.toString()).status()).isEqualTo(200);
  }
}
