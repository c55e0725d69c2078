package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.desk.Tablets;
import halfgram.prep.Task;
import halfgram.prep.TaskCode;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Site;
import halfgram.testkit.Staff;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The prep sheet on paper, and where its codes lead. */
class PaperTest {
  private static Site site;
  private static Client office;

  @BeforeAll
  static void open() {
    site = Site.demo();
    site.wiring().plans().open(site.house(), Site.DAY, "test");
    office = site.client();
    Staff.join(site, "carla", "cook");
  }

  @AfterAll
  static void close() {
    site.close();
  }

  @BeforeEach
  void atNine() {
    site.setClock(Site.at("09:00"));
  }

  @Test
  void aTaskHasAllThatHandsMustKnow() {
    String paper = office.get("/k/TARN/paper?station=cold").text();
    Task base = task("yoghurt-base/harvest-dinner/1/shear");
    assertThat(paper)
        .contains("Sheep-yoghurt base", "shear", "CONTAINS MILK", "CAUTION blade", "in the jug")
        .contains("calcium lactate", "held back, to taste", "read the tub", "0.1 g scale")
        .contains("gives", "keeps to", "started", "done", "made", "by", "note")
        .contains(TaskCode.of(Site.DAY, base.id()));
  }

  @Test
  void eachSentenceOfTheMethodStandsBelowTheLinesItSpeaksOf() {
    assertThat(office.get("/k/TARN/paper?station=cold").text())
        .containsPattern(
            "fine salt[^:]*? 1 Stir the powders together dry in the jug .*?"
                + "cream, 36 %[^:]*? 2 Shear the dry cup into the jug .*?"
                + "Dill oil .*? 3 Then the oil in a thread gives");
  }

  @Test
  void whatItWaitsForStandsWithItsRestsByTheClock() {
    assertThat(office.get("/k/TARN/paper?station=cold").text())
        .containsPattern(
            "after Sheep-yoghurt base, shear \\(\\d\\d:\\d\\d\\);"
                + " rest at least 2 h: from \\d\\d:\\d\\d; at most \\d+ h: by [^;]*SAFETY");
  }

  @Test
  void everyDropOfARunHasItsBox() {
    String page = office.get("/k/TARN/paper?station=cold").body();
    assertThat(page).containsPattern("20 drops</b><ol>(<li[^>]*>.*?</li>){20}</ol>");
    assertThat(page).contains("<small>8 B</small>");
  }

  @Test
  void theDayHasItsServicesDietsBathsAndTonight() {
    String paper = office.get("/k/TARN/paper").text();
    assertThat(paper)
        .contains("The day", "Harvest dinner", "84 covers, made for 93", "DAIRY-FREE")
        .contains("CONTAINS FISH, GLUTEN, MILK", "then bath", "Tonight, for tomorrow", "plan 1");
  }

  @Test
  void allStationsFollowOneAnotherAndOneStandsAlone() {
    String all = office.get("/k/TARN/paper").body();
    assertThat(all).contains("<h2>Cold</h2>", "<h2>Hot</h2>", "<h2>Pastry</h2>");
    String cold = office.get("/k/TARN/paper?station=cold").body();
    assertThat(cold).contains("<h2>Cold</h2>").doesNotContain("<h2>Hot</h2>");
  }

  @Test
  void aDayAheadIsPrintedAsWhatItIsAndNothingIsEnteredFromIt() {
    String tomorrow = "/k/TARN/paper?date=2026-12-06";
    String today = office.get("/k/TARN/?date=2026-12-06").body();
    assertThat(today).contains(tomorrow);
    Answer ahead = office.get(tomorrow);
    assertThat(ahead.text())
        .contains("Sunday 6 December 2026", "planned ahead, not in force: print it again")
        .doesNotContain("plan 0", "Enter what was done");
    assertThat(ahead.all("<p class=\"times\"><b>(\\d\\d:\\d\\d)</b>")).isNotEmpty();
    assertThat(site.wiring().plans().find(site.house(), Site.DAY.plusDays(1)))
        .as("nobody has put it in force")
        .isEmpty();
    assertThat(office.get("/k/TARN/paper?date=2026-12-01").status()).isEqualTo(404);
  }

  @Test
  void aTabletPrintsItsOwnStationsOnly() {
    Client tablet = tablet("Cold left", "cold");
    assertThat(tablet.get("/k/TARN/paper").body())
        .contains("<h2>Cold</h2>")
        .doesNotContain("<h2>Hot</h2>");
    assertThat(tablet.get("/k/TARN/paper?station=hot").status()).isEqualTo(403);
  }

  @Test
  void itIsPrintedInTheLanguageOfTheDevice() {
    assertThat(site.client().withCookie("language", "es").get("/k/TARN/paper").text())
        .contains("El día", "empezado", "CONTIENE")
        .doesNotContain("started", "CONTAINS");
    assertThat(site.client().withCookie("language", "fr").get("/k/TARN/paper").text())
        .contains("La journée", "commencé", "CONTIENT");
  }

  @Test
  void paperOfASizeIsChosenAndAnyOtherIsThePrinters() {
    assertThat(office.get("/k/TARN/paper?size=a4").body()).contains("/paper-a4.");
    assertThat(office.get("/k/TARN/paper?size=a5").body()).doesNotContain("/paper-a");
  }

  @Test
  void dayAndStationThatAreNotThereAreNotFound() {
    assertThat(office.get("/k/TARN/paper?station=nix").status()).isEqualTo(404);
    assertThat(office.get("/k/TARN/paper?date=2026-11-01").status()).isEqualTo(404);
    assertThat(office.get("/k/TARN/paper?date=today").status()).isEqualTo(404);
  }

  @Test
  void itIsReachedFromTodayFromLanesAndFromTheStationChooser() {
    assertThat(office.get("/k/TARN/").body()).contains("href=\"/k/TARN/paper?date=2026-12-05\"");
    assertThat(office.get("/k/TARN/lanes").body())
        .contains("href=\"/k/TARN/paper?date=2026-12-05\"");
    assertThat(office.get("/k/TARN/wall").body())
        .contains("href=\"/k/TARN/paper\"", "href=\"/k/TARN/paper/entry\"");
  }

  @Test
  void aCodeLeadsTheOfficeToTheTaskAndACookToItsWall() {
    Task base = task("yoghurt-base/harvest-dinner/1/shear");
    Answer read = follow(office, code(base));
    assertThat(read.header("Location"))
        .isEqualTo("/k/TARN/task?date=2026-12-05&id=" + Client.encoded(base.id()));
    String wall = "/k/TARN/wall/cold?task=" + Client.encoded(base.id());
    assertThat(follow(Staff.signedIn(site, "carla"), code(base)).header("Location"))
        .isEqualTo(wall);
    assertThat(follow(tablet("Cold", "cold"), code(base)).header("Location")).isEqualTo(wall);
    assertThat(office.get(read.header("Location")).text()).contains("Sheep-yoghurt base, shear");
  }

  @Test
  void aCodeTypedInSmallLettersIsTheSame() {
    Task base = task("yoghurt-base/harvest-dinner/1/shear");
    assertThat(follow(office, code(base).toLowerCase(java.util.Locale.ROOT)).status())
        .isEqualTo(303);
  }

  @Test
  void aTabletOfOtherStationsIsToldSo() {
    Task base = task("yoghurt-base/harvest-dinner/1/shear");
    assertThat(follow(tablet("Hot", "hot"), code(base)).status()).isEqualTo(403);
  }

  @Test
  void whoIsNotSignedInSignsInAndGoesOn() {
    Task base = task("yoghurt-base/harvest-dinner/1/shear");
    Client stranger = site.stranger();
    Answer door = stranger.get("/q/TARN/" + code(base));
    Answer asked = stranger.get(door.header("Location"));
    assertThat(asked.status()).isEqualTo(303);
    FilledForm form =
        FilledForm.of(stranger.get(asked.header("Location")), "/sign-in")
            .with("name", "carla")
            .with("password", Staff.PASSWORD);
    Answer in = stranger.post("/sign-in", form.fields());
    assertThat(in.header("Location")).isEqualTo("/k/TARN/q/" + code(base));
    assertThat(stranger.get(in.header("Location")).header("Location"))
        .startsWith("/k/TARN/wall/cold?task=");
  }

  @Test
  void aKitchenThatIsNotThereLooksLikeOneOfOthers() {
    Answer none = follow(office, "NONE", "0M9R00000000");
    assertThat(none.status()).isEqualTo(404);
  }

  @Test
  void aCodeOfNothingSaysSo() {
    Answer unknown = follow(office, TaskCode.of(Site.DAY, "no/such/task"));
    assertThat(unknown.status()).isEqualTo(404);
    assertThat(unknown.text()).contains("no plan of that day has it", "Saturday 5 December 2026");
    assertThat(follow(office, "hello").text()).contains("hello is no code");
    assertThat(follow(office, "tub.nix").text()).contains("There is no tub nix");
  }

  @Test
  void paperOfADayThatIsOverSaysSoAndWhereItIsEntered() {
    Task base = task("yoghurt-base/harvest-dinner/1/shear");
    site.setClock(Site.at("09:00").plus(Duration.ofDays(1)));
    Answer old = follow(Staff.signedIn(site, "carla"), code(base));
    assertThat(old.text()).contains("that day is over", "Work from the sheet of today");
    assertThat(old.body()).contains("/k/TARN/paper/entry?station=cold&amp;date=2026-12-05");
    assertThat(follow(office, code(base)).header("Location")).contains("date=2026-12-05");
  }

  @Test
  void aTubsLabelHasACodeThatLeadsToTheTub() {
    String tub = site.wiring().stock().list(site.house()).get(0).lot().code();
    assertThat(office.get("/k/TARN/label?tub=" + tub).body())
        .contains("<svg class=\"qr\"", "dots that lead to " + tub);
    assertThat(follow(office, "tub." + tub).header("Location")).isEqualTo("/k/TARN/stock/" + tub);
    assertThat(follow(tablet("Any"), "tub." + tub).header("Location"))
        .isEqualTo("/k/TARN/label?tub=" + tub);
  }

  private static String code(Task task) {
    return TaskCode.of(Site.DAY, task.id());
  }

  /** Follows a printed address to where it leads first. */
  private static Answer follow(Client client, String code) {
    return follow(client, Site.KITCHEN, code);
  }

  private static Answer follow(Client client, String kitchen, String code) {
    Answer door = client.get("/q/" + kitchen + "/" + code);
    assertThat(door.status()).isEqualTo(303);
    assertThat(door.header("Location")).isEqualTo("/k/" + kitchen + "/q/" + code);
    return client.get(door.header("Location"));
  }

  private static Client tablet(String name, String... stations) {
    Tablets tablets = new Tablets(site.wiring().desk(), site.wiring().signing());
    String code = tablets.offer(site.house(), name, List.of(stations), "test");
    String token = tablets.pair(code, "here").orElseThrow().token();
    return site.stranger().withCookie("tablet", token);
  }

  private static Task task(String beginning) {
    return site.wiring().plans().open(site.house(), Site.DAY, "test").sheet().tasks().stream()
        .filter(task -> task.id().startsWith(beginning))
        .findFirst()
        .orElseThrow();
  }
}
