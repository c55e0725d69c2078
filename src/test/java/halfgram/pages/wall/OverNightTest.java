package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.prep.Task;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import java.time.Duration;
import org.junit.jupiter.api.Test;

/** A wall that shows the day before: it slept, or the day turned under the hand. */
class OverNightTest extends AtWall {

  OverNightTest() {
    super("cold");
  }

  @Test
  void whatIsPressedAfterTheDayHasTurnedIsKept() {
    Task sheep = firstOf("yoghurt-base");
    Task pea = firstOf("pea-base");
    tomorrowAt("03:58");
    press(sheep, "DONE", "sure", "yes");
    String done = inForce().progress(sheep).last().orElseThrow().id().toString();
    tomorrowAt("04:01");
    assertThat(client.get("/k/TARN/wall/cold").status()).isEqualTo(200);
    assertThat(fullTubs(sheep)).isPositive();
    Answer undone = press(sheep, "UNDO", "undoes", done);
    assertThat(undone.status()).isEqualTo(303);
    assertThat(client.get(undone.header("location")).status()).isEqualTo(200);
    assertThat(fullTubs(sheep)).isZero();
    Answer late = press(pea, "DONE", "sure", "yes");
    assertThat(late.status()).isEqualTo(303);
    assertThat(client.get(late.header("location")).status()).isEqualTo(200);
    assertThat(fullTubs(pea)).isPositive();
  }

  @Test
  void whatIsOlderThanADayIsNotThereAnyMore() {
    Task pea = firstOf("pea-base");
    site.setClock(Site.at("12:00").plus(Duration.ofDays(2)));
    assertThat(press(pea, "DONE", "sure", "yes").status()).isEqualTo(404);
  }

  @Test
  void whatIsInABathWhenTheDayTurnsIsLiftedAndItsRunGoesOn() {
    String run = "yoghurt-spheres/harvest-dinner/1";
    Task drops = inForce().findTask(run + "/drop").orElseThrow();
    tomorrowAt("03:58");
    Answer in = atBath(drops, "DROP", "run", run, "label", "A", "pieces", "15");
    String drop = in.all("name=\"drop\" value=\"([0-9a-f-]{36})\"").get(0);
    tomorrowAt("04:01");
    assertThat(client.get("/k/TARN/wall/cold").text())
        .contains("Yoghurt spheres, drop drop 1: lift at 04:00:");
    assertThat(client.get("/k/TARN/wall/hot").text()).doesNotContain("lift at");
    Answer lifted = atBath(drops, "LIFT", "drop", drop);
    assertThat(lifted.status()).as(lifted.text()).isEqualTo(200);
    assertThat(lifted.text()).contains("15 good of 273", "1 lifted, 0 in");
    Answer back = atBath(drops, "UNDO", "undoes", undoable(lifted));
    assertThat(back.text()).contains("0 lifted, 1 in");
    assertThat(atBath(drops, "BROKE", "drop", drop, "pieces", "2").text()).contains("2 burst");
    assertThat(atBath(drops, "LIFT", "drop", drop).text()).contains("13 good of 273");
    assertThat(
            atBath(drops, "LEVEL", "formula", "alginate-bath", "label", "A", "millimetres", "40")
                .text())
        .contains("40 mm");
    assertThat(atBath(drops, "DROP", "run", run, "label", "A", "pieces", "3", "worn", "yes").text())
        .contains("1 lifted, 1 in");
  }

  private static String undoable(Answer page) {
    return page.all("name=\"undoes\" value=\"([0-9a-f-]{36})\"").get(0);
  }

  private void tomorrowAt(String time) {
    site.setClock(Site.at(time).plus(Duration.ofDays(1)));
  }
}
