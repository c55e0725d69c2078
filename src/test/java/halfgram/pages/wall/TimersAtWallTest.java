package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Site;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Timers, limits, notes and calls as they are pressed at the wall. */
class TimersAtWallTest {
  private static final String COOK = "parsnip-puree/lunch.2026-12-05/1/cook";
  private static final String BLEND = "parsnip-puree/lunch.2026-12-05/1/blend";
  private static final String CHILL = "parsnip-puree/lunch.2026-12-05/1/chill";

  private Site site;
  private Client client;

  @BeforeEach
  void open() {
    site = Site.demo();
    client = site.client();
    client.get("/k/TARN/wall/hot");
    cook("marit");
    site.setClock(Site.at("10:00"));
  }

  @AfterEach
  void close() {
    site.close();
  }

  private void cook(String code) {
    client.post("/k/TARN/wall/cook", "station", "hot", "person", code);
  }

  private Answer press(String task, String kind, String... more) {
    List<String> fields =
        new ArrayList<>(
            List.of(
                "station", "hot", "task", task, "kind", kind, "sequence", "" + Site.sequence()));
    fields.addAll(List.of(more));
    return client.post("/k/TARN/tick", fields.toArray(String[]::new));
  }

  private String wall(String station) {
    return client.get("/k/TARN/wall/" + station).text();
  }

  @Test
  void oneThatRunsShowsOnEveryWallItConcernsAndIsHeardForAllOfThem() {
    press(COOK, "START");
    assertThat(wall("hot")).contains("45 min", "until 10:45");
    assertThat(wall("cold")).contains("until 10:45");
    assertThat(wall("pastry")).doesNotContain("until 10:45");
    site.setClock(Site.at("10:46"));
    assertThat(wall("cold")).contains("NOW", "time is up", "Got it");
    assertThat(press(COOK, "HEARD", "line", "stands").status()).isEqualTo(303);
    assertThat(wall("cold")).doesNotContain("Got it");
  }

  @Test
  void puttingOffReturnsToTheTaskThatLayOpenAndRingsAgain() {
    press(COOK, "TIMED", "minutes", "3", "note", "turn the tray");
    site.setClock(Site.at("10:04"));
    assertThat(wall("hot")).contains("turn the tray", "2 min more");
    String page = client.get("/k/TARN/wall/hot").body();
    String name = page.replaceAll("(?s).*name=\"line\" value=\"(own/[^\"]+)\".*", "$1");
    Answer later = press(COOK, "", "later", "2", "line", name, "shown", CHILL);
    assertThat(later.status()).isEqualTo(303);
    assertThat(later.header("location")).contains(Client.encoded(CHILL));
    assertThat(wall("hot")).contains("turn the tray").doesNotContain("Got it");
    site.setClock(Site.at("10:07"));
    assertThat(wall("hot")).contains("Got it");
  }

  @Test
  void aTimeThatIsNoneIsRefusedAndSaysWhatWouldBe() {
    assertThat(press(COOK, "TIMED", "minutes", "0").text()).contains("1 to 1440 minutes");
    assertThat(press(COOK, "LATER", "line", "stands", "minutes", "5").text())
        .contains("that timer does not ring");
  }

  @Test
  void whatHasFailedRingsNoMoreAndTakesNoTimerUntilThatIsUndone() {
    press(BLEND, "TIMED", "minutes", "3", "note", "scrape the bowl");
    press(COOK, "FAILED", "note", "burnt");
    site.setClock(Site.at("10:04"));
    assertThat(wall("cold")).doesNotContain("scrape the bowl").doesNotContain("Got it");
    assertThat(press(COOK, "TIMED", "minutes", "3").text()).contains("it failed; undo that first");
    assertThat(press(BLEND, "TIMED", "minutes", "3").text())
        .contains("another task of this batch has failed");
    String page = client.get("/k/TARN/wall/hot?task=" + Client.encoded(COOK)).body();
    String failed = page.replaceAll("(?s).*name=\"undoes\" value=\"([^\"]+)\".*", "$1");
    assertThat(press(COOK, "UNDO", "undoes", failed).status()).isEqualTo(303);
    assertThat(wall("cold")).contains("scrape the bowl", "Got it");
  }

  @Test
  void pastASafetyLimitThereIsOnlyTheBin() {
    press(COOK, "DONE");
    press(BLEND, "DONE");
    site.setClock(Site.at("10:31"));
    assertThat(wall("hot")).contains("waited past 10:30: not safe, bin it");
    Answer start = press(CHILL, "START");
    assertThat(start.status()).isEqualTo(409);
    assertThat(start.text()).contains("what has waited longer is not safe");
    Answer tasted = press(BLEND, "TASTED");
    assertThat(tasted.status()).isIn(303, 409);
    assertThat(press(CHILL, "START").status()).isEqualTo(409);
    assertThat(press(BLEND, "FAILED", "note", "waited").status()).isEqualTo(303);
    assertThat(wall("hot")).doesNotContain("not safe, bin it");
  }

  @Test
  void theFirstPartDoesNotWaitForARestThatTakesLonger() {
    press(COOK, "DONE");
    press(BLEND, "PART_DONE", "amount", "1 kg");
    // Eleven minutes for all of it, and thirty to the chiller.
    site.setClock(Site.at("10:42"));
    assertThat(wall("hot")).contains("waited past 10:41: not safe, bin it");
    assertThat(press(CHILL, "START").status()).isEqualTo(409);
    assertThat(press(BLEND, "DONE").status()).isEqualTo(303);
    Answer start = press(CHILL, "START");
    assertThat(start.status()).isEqualTo(409);
    assertThat(start.text()).contains("what has waited longer is not safe");
    assertThat(wall("hot")).contains("waited past 10:41: not safe, bin it");
  }

  @Test
  void whatIsPastASafetyLimitGetsNoNewOneByTakingBackThatItWasDone() {
    press(COOK, "DONE");
    press(BLEND, "DONE");
    String page = "/k/TARN/wall/hot?task=" + Client.encoded(BLEND);
    String done = client.get(page).all("name=\"undoes\" value=\"([0-9a-f-]{36})\"").get(0);
    site.setClock(Site.at("10:31"));
    Answer back = press(BLEND, "UNDO", "undoes", done);
    assertThat(back.status()).isEqualTo(409);
    assertThat(back.text()).contains("nobody would see any more how long it stood");
    assertThat(press(CHILL, "START").status()).isEqualTo(409);
    site.setClock(Site.at("10:29"));
    assertThat(press(BLEND, "UNDO", "undoes", done).status()).isEqualTo(303);
  }

  @Test
  void pastItsBestOnlyAChefLetsItBeUsed() {
    press(COOK, "DONE");
    site.setClock(Site.at("10:40"));
    assertThat(wall("cold")).contains("past its best: a chef tastes");
    assertThat(press(BLEND, "START").status()).isEqualTo(409);
    String chefs =
        site.house().book().people().stream()
            .filter(person -> person.chef())
            .map(person -> person.code())
            .findFirst()
            .orElseThrow();
    String cook =
        site.house().book().people().stream()
            .filter(person -> !person.chef())
            .map(person -> person.code())
            .findFirst()
            .orElseThrow();
    cook(cook);
    assertThat(press(COOK, "TASTED").status()).isEqualTo(409);
    cook(chefs);
    assertThat(press(COOK, "TASTED").status()).isEqualTo(303);
    String name =
        site.house().book().people().stream()
            .filter(one -> one.code().equals(chefs))
            .findFirst()
            .orElseThrow()
            .name();
    assertThat(wall("cold"))
        .contains("30 min Parsnip purée, cook tasted 10:40 by " + name + ", good until 11:10")
        .doesNotContain("past its best");
    site.setClock(Site.at("11:11"));
    assertThat(wall("cold")).contains("good until 11:10: a chef tastes again", "Tasted: good");
    Answer late = press(BLEND, "START");
    assertThat(late.status()).isEqualTo(409);
    assertThat(late.text()).contains("it was tasted at Sat 5 Dec 10:40", "a chef tastes it again");
    assertThat(press(COOK, "TASTED").status()).isEqualTo(303);
    assertThat(press(BLEND, "START").status()).isEqualTo(303);
    assertThat(wall("cold")).doesNotContain("tasted 11:11");
  }

  @Test
  void aNoteStandsAtTheTaskAndAnEmptyOneIsAskedFor() {
    assertThat(press(COOK, "NOTE", "note", "the lid leaks").status()).isEqualTo(303);
    assertThat(client.get("/k/TARN/wall/hot?task=" + Client.encoded(COOK)).text())
        .contains("10:00 Marit: the lid leaks", "TO DO");
    assertThat(press(COOK, "NOTE", "note", " ").status()).isEqualTo(422);
    assertThat(client.get("/k/TARN/log").text()).contains("the lid leaks");
  }

  @Test
  void aCallForTheChefStandsEverywhereUntilItIsAnswered() {
    press(COOK, "CALLED", "note", "taste this");
    for (String station : List.of("hot", "cold", "pastry", "all")) {
      assertThat(wall(station)).contains("Chef wanted at Hot", "taste this");
    }
    assertThat(client.get("/k/TARN/").text()).contains("Chef wanted at Hot", "taste this");
    press(COOK, "ANSWERED");
    assertThat(wall("pastry")).doesNotContain("Chef wanted");
    assertThat(client.get("/k/TARN/").text()).doesNotContain("Chef wanted");
  }

  @Test
  void whoTakesOverSaysSoAndIsOnItFromThen() {
    press(COOK, "START");
    String page = "/k/TARN/wall/hot?task=" + Client.encoded(COOK);
    assertThat(client.get(page).text()).doesNotContain("Take over");
    cook("lorcan");
    assertThat(client.get(page).text()).contains("ON IT · Marit", "Take over from Marit");
    FilledForm over =
        FilledForm.posted(client.get(page)).stream()
            .map(FilledForm.Posted::form)
            .filter(form -> form.names().contains("sure") && form.value("kind").equals("START"))
            .findFirst()
            .orElseThrow();
    client.post("/k/TARN/tick", over.fields());
    assertThat(client.get(page).text()).contains("ON IT · Lorcan").doesNotContain("Take over");
  }

  @Test
  void moreTimeForWhatNobodyIsOnIsSaidNotToCount() {
    Answer told =
        client.postAndFollow(
            "/k/TARN/lanes/longer", "station", "hot", "task", COOK, "minutes", "10");
    assertThat(told.text()).contains("More time did not count");
    press(COOK, "START");
    Answer counts =
        client.postAndFollow(
            "/k/TARN/lanes/longer", "station", "hot", "task", COOK, "minutes", "10");
    assertThat(counts.text()).doesNotContain("More time did not count");
  }

  @Test
  void timersOutliveTheServer() {
    press(COOK, "START");
    site = site.restarted();
    site.setClock(Site.at("10:00").plus(Duration.ofMinutes(10)));
    assertThat(site.client().get("/k/TARN/wall/hot").text()).contains("until 10:45", "35 min");
  }
}
