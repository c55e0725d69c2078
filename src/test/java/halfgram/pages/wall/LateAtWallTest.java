package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.prep.Task;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Site;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
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
    assertThat(opened(other).body())
        .containsPattern(
            "<time>"
                + clock(roast.start())
                + "</time>(?:(?!</a>)[\\s\\S])*<span class=\"name\"><strong class=\"late\">LATE<");
  }

  @Test
  void untilWhenItStandsIsSaidOfWhatIsInTimeAndOfWhatIsBegunAsItWasBegun() {
    Task roast = roast();
    assertThat(opened(roast).text()).contains("leave 40 min, to ");
    site.setClock(roast.start().plus(Duration.ofMinutes(30)));
    assertThat(opened(roast).text()).contains("leave 40 min").doesNotContain("leave 40 min, to ");
    press(roast, "START");
    String said = "leave 40 min, to " + clock(roast.end().plus(Duration.ofMinutes(30)));
    assertThat(opened(roast).text()).contains(said, "ON IT · Ines · by ");
    String page = "task?date=" + Site.DAY + "&id=" + roast.id().replace("/", "%2F");
    for (String other : List.of("", page, "paper?station=hot")) {
      assertThat(client.get("/k/TARN/" + other).text()).as(other).contains(said);
    }
  }

  @Test
  void aTaskThatThePlanHasNoPlaceForSaysSoOpenInTheListAndOnPaper() {
    for (String person : List.of("lorcan", "ines", "sixten", "yrsa")) {
      client.post(
          "/k/TARN/crew",
          "kind",
          "in",
          "person",
          person,
          "from",
          "09:00",
          "until",
          "09:30",
          "sequence",
          String.valueOf(Site.sequence()));
    }
    Task roast = roast();
    assertThat(opened(roast).text()).doesNotContain("no place in the plan");
    FilledForm settle = FilledForm.of(client.get("/k/TARN/lanes"), "lanes");
    assertThat(client.post("/k/TARN/lanes", settle.fields()).status()).isEqualTo(303);
    String said = "no place in the plan: begin by " + clock(roast.start());
    assertThat(opened(roast).text()).contains(said);
    assertThat(opened(other(roast)).text()).contains(said);
    assertThat(client.get("/k/TARN/paper?station=hot").text()).contains(said);
  }

  @Test
  void aTabletLeftOpenAtATaskOfAnotherDayIsShownWhatThereIsToDo() {
    Answer wall = client.get("/k/TARN/wall/hot?task=nothing%2Fyesterday%2F1%2Fstir");
    assertThat(wall.status()).isEqualTo(200);
    assertThat(wall.text()).contains("The task that was asked for is not of today.", "Next");
  }

  @Test
  void whatTheNightLeftUndoneCanBeEnteredAsDone() {
    site.setClock(Site.at("23:00"));
    inForce();
    site.setClock(Site.at("09:00").plus(Duration.ofDays(1)));
    Answer today = client.get("/k/TARN/");
    assertThat(today.text()).contains("Missed last night", "It was done: enter it");
    String link = today.all("href=\"/k/TARN/(paper/entry\\?[^\"]*)\"").get(0);
    assertThat(link).contains("date=2026-12-05");
    Answer entry = client.get("/k/TARN/" + link.replace("&amp;", "&"));
    assertThat(entry.text()).contains("Saturday 5 December 2026", "Char, thawed");
    assertThat(client.get("/k/TARN/wall/cold").text()).contains("It was done: enter it");
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
