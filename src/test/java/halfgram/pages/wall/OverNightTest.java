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

  private void tomorrowAt(String time) {
    site.setClock(Site.at(time).plus(Duration.ofDays(1)));
  }
}
