package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import org.junit.jupiter.api.Test;

/** What was held back to taste never takes the room of the work that comes next. */
class HeldBackTest extends AtWall {

  HeldBackTest() {
    super("hot");
  }

  @Test
  void oneStandsAtOnceAndTheOthersBehindAPress() {
    site.setClock(Site.at("13:10"));
    inForce().sheet().tasks().stream()
        .filter(task -> task.station().equals("hot"))
        .forEach(task -> press(task, "DONE", "sure", "yes"));
    Answer page = client.get("/k/TARN/wall/hot");
    String[] said = page.text().split("held back too: 4", -1);
    assertThat(said[0]).containsOnlyOnce("not yet used");
    assertThat(said[1].split("not yet used", -1)).hasSize(5);
  }
}
