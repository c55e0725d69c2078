package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.prep.Task;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import org.junit.jupiter.api.Test;

/** What should be begun and is not: the wall says since when, and no time that cannot be. */
class LateAtWallTest extends AtWall {
  LateAtWallTest() {
    super("hot");
  }

  @Test
  void aTaskThatShouldBeBegunSaysSinceWhenOpenAndInTheList() {
    Task roast = roast();
    assertThat(opened(roast).text()).doesNotContain("LATE since");
    site.setClock(roast.start().plus(Duration.ofMinutes(30)));
    String since = "LATE since " + clock(roast.start());
    assertThat(opened(roast).text()).contains(since);
    Task other = other(roast);
    assertThat(opened(other).body()).contains("<strong class=\"late\">" + since);
  }

  @Test
  void untilWhenItStandsIsSaidOfWhatIsInTimeAndOfWhatIsBegunAsItWasBegun() {
    Task roast = roast();
    assertThat(opened(roast).text()).contains("leave 40 min, to ");
    site.setClock(roast.start().plus(Duration.ofMinutes(30)));
    assertThat(opened(roast).text()).contains("leave 40 min").doesNotContain("leave 40 min, to ");
    press(roast, "START");
    assertThat(opened(roast).text())
        .contains("leave 40 min, to " + clock(roast.end().plus(Duration.ofMinutes(30))))
        .contains("ON IT · Ines · by ");
  }

  private static String clock(Instant at) {
    return at.atZone(ZoneId.of("Europe/Copenhagen"))
        .toLocalTime()
        .truncatedTo(ChronoUnit.MINUTES)
        .toString();
  }

  private Task other(Task one) {
    return inForce().sheet().tasks().stream()
        .filter(task -> task.station().equals("hot") && !task.equals(one))
        .findFirst()
        .orElseThrow();
  }

  /** It stands alone for forty minutes. */
  private Task roast() {
    return inForce().sheet().tasks().stream()
        .filter(task -> task.station().equals("hot"))
        .filter(task -> task.unattended().equals(Duration.ofMinutes(40)))
        .findFirst()
        .orElseThrow();
  }
}
