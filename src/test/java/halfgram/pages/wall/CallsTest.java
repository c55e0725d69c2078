package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.prep.Task;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is called above the task in hand leaves the task its room. */
class CallsTest extends AtWall {
  CallsTest() {
    super("cold");
  }

  @Test
  void threeCallsStandAboveTheTaskAndOthersWaitBehindAPress() {
    List<Task> tasks =
        inForce().sheet().tasks().stream()
            .filter(task -> task.station().equals("cold"))
            .limit(4)
            .toList();
    tasks.forEach(task -> press(task, "CALLED", "note", "thick enough?"));
    Answer page = client.get("/k/TARN/wall/cold");
    assertThat(rows(above(page))).isEqualTo(3);
    assertThat(page.text()).contains("More calls: 1");
    press(tasks.get(0), "ANSWERED");
    assertThat(client.get("/k/TARN/wall/cold").text()).doesNotContain("More calls");
  }

  @Test
  void aChefWhoIsWantedHasAPlaceBesideTheCourses() {
    site.setClock(Site.at("18:40"));
    press(inForce().sheet().tasks().get(0), "CALLED", "note", "thick enough?");
    String above = above(client.get("/k/TARN/wall/cold"));
    assertThat(rows(above)).isEqualTo(3);
    assertThat(above).contains("Harvest dinner: First", "thick enough?");
  }

  /** What stands above the task without a press. */
  private static String above(Answer page) {
    return page.body()
        .replaceFirst("(?s)^.*?<ul class=\"calls\">", "<ul>")
        .replaceFirst("(?s)</ul>.*$", "");
  }

  private static int rows(String list) {
    return list.split("<li", -1).length - 1;
  }
}
