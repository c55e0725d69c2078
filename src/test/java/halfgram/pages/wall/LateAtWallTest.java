package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.prep.Task;
import halfgram.testkit.Client;
import halfgram.testkit.Site;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What should be begun and is not: the wall says since when, and no time that cannot be. */
class LateAtWallTest {
  private Site site;
  private Client client;

  @BeforeEach
  void open() {
    site = Site.demo();
    client = site.client();
    client.get("/k/TARN/wall/hot");
    client.post("/k/TARN/wall/cook", "station", "hot", "person", "marit");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void aTaskThatShouldBeBegunSaysSinceWhenOpenAndInTheList() {
    Task roast = roast();
    assertThat(hand(roast)).doesNotContain("LATE since");
    site.setClock(roast.start().plus(Duration.ofMinutes(30)));
    String since = "LATE since " + clock(roast.start());
    assertThat(hand(roast)).contains(since);
    Task other = other(roast);
    assertThat(client.get("/k/TARN/wall/hot?task=" + Client.encoded(other.id())).body())
        .contains("<strong class=\"late\">" + since);
  }

  @Test
  void untilWhenItStandsIsSaidOfWhatIsInTimeAndOfWhatIsBegunAsItWasBegun() {
    Task roast = roast();
    assertThat(hand(roast)).contains("leave 40 min, to ");
    site.setClock(roast.start().plus(Duration.ofMinutes(30)));
    assertThat(hand(roast)).contains("leave 40 min").doesNotContain("leave 40 min, to ");
    press(roast, "START");
    assertThat(hand(roast))
        .contains("leave 40 min, to " + clock(roast.end().plus(Duration.ofMinutes(30))))
        .contains("ON IT · Marit · by ");
  }

  private String hand(Task task) {
    return client.get("/k/TARN/wall/hot?task=" + Client.encoded(task.id())).text();
  }

  private static String clock(Instant at) {
    return at.atZone(ZoneId.of("Europe/Copenhagen"))
        .toLocalTime()
        .truncatedTo(ChronoUnit.MINUTES)
        .toString();
  }

  private Task other(Task one) {
    return site.wiring().plans().open(site.house(), Site.DAY, "test").sheet().tasks().stream()
        .filter(task -> task.station().equals("hot") && !task.equals(one))
        .findFirst()
        .orElseThrow();
  }

  /** It stands alone for forty minutes. */
  private Task roast() {
    return site.wiring().plans().open(site.house(), Site.DAY, "test").sheet().tasks().stream()
        .filter(task -> task.station().equals("hot"))
        .filter(task -> task.unattended().equals(Duration.ofMinutes(40)))
        .findFirst()
        .orElseThrow();
  }

  private void press(Task task, String kind) {
    client.post(
        "/k/TARN/tick",
        "station",
        task.station(),
        "task",
        task.id(),
        "kind",
        kind,
        "sequence",
        String.valueOf(Site.sequence()));
  }
}
