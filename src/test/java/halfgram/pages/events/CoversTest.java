package halfgram.pages.events;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.book.BookStore;
import halfgram.desk.Events;
import halfgram.desk.People;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Site;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The covers of an event, changed on its sheet. */
class CoversTest {
  private static final String SHEET = "/k/TARN/events/harvest-dinner";
  private static final String COVERS = SHEET + "/covers";

  private Site site;
  private Client client;

  @BeforeEach
  void open() {
    site = Site.demo();
    client = site.client();
    client.get("/k/TARN/");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void theSheetHasPlatesAllergensCostsAndWhatItUses() {
    Answer page = client.get(SHEET);
    assertThat(page.status()).isEqualTo(200);
    assertThat(page.text())
        .contains("84 covers (final number, 80 expected), made for 93 and 3 spare plates")
        .contains("18:45 First 80", "DAIRY-FREE", "65 % of the guests", "CONTAINS FISH")
        .contains("What it uses");
    for (String why : page.all("class=\"why\" href=\"([^\"]+)\"")) {
      if (why.contains("cost")) {
        assertThat(client.get(why.replace("&amp;", "&")).status()).as(why).isEqualTo(200);
        break;
      }
    }
  }

  @Test
  void coversFarFromThoseBeforeAreAskedAbout() {
    FilledForm form = FilledForm.of(client.get(SHEET), COVERS);
    Answer asked = client.post(COVERS, form.with("/covers/final", "12000").fields());
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text()).contains("Covers go from 84 to 12000 at once.", "It is so");
    assertThat(asked.body()).contains("value=\"12000\"");
    FilledForm sure = FilledForm.of(asked, COVERS).with("sure", mark(asked));
    Answer other = client.post(COVERS, sure.with("/covers/final", "31").fields());
    assertThat(other.text()).as("a yes is to what was asked").contains("from 84 to 31 at once");
    assertThat(client.post(COVERS, sure.fields()).status()).isEqualTo(303);
    assertThat(client.get(SHEET).text()).contains("12000 covers");
  }

  @Test
  void ofCoversThatAreNoneNothingElseIsHeldAgainstThem() {
    FilledForm form = FilledForm.of(client.get(SHEET), COVERS);
    Answer wrong = client.post(COVERS, form.with("/covers/final", "1,5").fields());
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.all("class=\"fault\"[^>]*>([^<]+)<")).hasSize(1);
    assertThat(wrong.body()).contains("value=\"1.5\"");
  }

  private static String mark(Answer asked) {
    return asked.all("name=\"sure\" value=\"([^\"]+)\"").get(0);
  }

  @Test
  void aDayThatIsOverIsAskedAboutAndMayBeSo() {
    String place = SHEET + "/edit";
    FilledForm form = FilledForm.of(client.get(place), place).with("/date", "2026-11-05");
    Answer looked = client.post(place, form.with("do", "look").fields());
    assertThat(looked.text()).contains("The date is over", "It is so");
    Answer asked = client.post(place, form.with("do", "save").fields());
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.body()).contains("value=\"2026-11-05\"");
    FilledForm sure = FilledForm.of(asked, place).with("sure", mark(asked)).with("do", "save");
    assertThat(client.post(place, sure.fields()).status()).isEqualTo(303);
    assertThat(site.house().book().findEvent("harvest-dinner").orElseThrow().date())
        .hasToString("2026-11-05");
    FilledForm after = FilledForm.of(client.get(place), place).with("/name/en", "Past feast");
    assertThat(client.post(place, after.with("do", "save").fields()).status())
        .as("it is over already")
        .isEqualTo(303);
  }

  @Test
  void aFinalNumberIsAFactAtOnceAndTheplanInForceStays() {
    FilledForm form = FilledForm.of(client.get(SHEET), COVERS);
    Answer answer = client.post(COVERS, form.with("/covers/final", "97").fields());
    assertThat(answer.status()).isEqualTo(303);
    assertThat(client.get(SHEET).text())
        .contains("97 covers", "84 → 97 covers", "See what changes on Today");
    assertThat(client.get("/k/TARN/").text())
        .contains("Since this plan was made:", "84 → 97 covers", "Plan 1, in force");
    var change =
        new Events(site.wiring().desk()).listChanges(site.house(), "harvest-dinner").get(0);
    var covers = BookStore.parse(change.detail()).path("covers");
    assertThat(covers.path("name").path("en").asText()).isEqualTo("Harvest dinner");
    assertThat(covers.path("from").asInt()).isEqualTo(84);
    assertThat(covers.path("to").asInt()).isEqualTo(97);
  }

  @Test
  void howManyItIsMadeForIsSaidOfOneThatNoSheetHasYet() {
    FilledForm form =
        FilledForm.of(client.get("/k/TARN/events/new"), "events/new")
            .with("/name/en", "Orchard lunch")
            .with("/date", Site.DAY.plusDays(40).toString())
            .with("/covers/expected", "120")
            .with("/services/0/name", "Lunch")
            .with("/services/0/start", "13:00")
            .with("/services/0/end", "15:00")
            .with("/services/0/courses/0/name", "First")
            .with("/services/0/courses/0/at", "13:15")
            .with("/services/0/courses/0/dishes/0/dish", "kohlrabi-plate")
            .with("do", "save");
    assertThat(client.post("/k/TARN/events/new", form.fields()).status()).isEqualTo(303);
    // A twentieth more above a hundred guests.
    assertThat(client.get("/k/TARN/events/orchard-lunch").text())
        .contains("120 covers (expected; no final number yet), made for 126");
  }

  @Test
  void whoChangedThemIsSaidByTheNameOfWhoIsSignedInNotOfWhoWorksAtTheWall() {
    String person = site.house().book().people().get(0).code();
    People.Draft chef = new People.Draft("ida", "Ida", "chef", person);
    site.wiring().people().add(site.house(), chef, "test");
    client = site.stranger().withCookie("session", site.session("ida"));
    client.get("/k/TARN/wall/cold");
    client.post("/k/TARN/wall/cook", "station", "cold", "person", "lorcan");
    client.post(
        COVERS, FilledForm.of(client.get(SHEET), COVERS).with("/covers/final", "97").fields());
    assertThat(client.get(SHEET).text())
        .contains("Ida, chef", "84 → 97 covers " + site.house().book().personName(person))
        .doesNotContain("covers " + person);
  }

  @Test
  void sendingTwiceChangesOnce() {
    String[] sent = FilledForm.of(client.get(SHEET), COVERS).with("/covers/final", "97").fields();
    client.post(COVERS, sent);
    assertThat(client.post(COVERS, sent).status()).isEqualTo(303);
    assertThat(new Events(site.wiring().desk()).listChanges(site.house(), "harvest-dinner"))
        .hasSize(1);
  }

  @Test
  void whatIsNoNumberIsToldAtItsField() {
    FilledForm form = FilledForm.of(client.get(SHEET), COVERS).with("/covers/final", "many");
    Answer answer = client.post(COVERS, form.fields());
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.body()).contains("id=\"f-covers-final-told\"", "value=\"many\"");
    assertThat(answer.text()).contains("Give a number from 0 to 20000");
    assertThat(client.get(SHEET).text()).contains("84 covers");
  }

  @Test
  void moreGuestsWithDietsThanGuestsIsToldAtTheDiets() {
    FilledForm form = FilledForm.of(client.get(SHEET), COVERS).with("/diets/0/count", "200");
    Answer answer = client.post(COVERS, form.fields());
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.text()).contains("more guests with a diet than guests");
  }

  @Test
  void somebodyElsesNumberIsShownBesideMine() {
    FilledForm mine = FilledForm.of(client.get(SHEET), COVERS).with("/covers/final", "97");
    FilledForm theirs = FilledForm.of(client.get(SHEET), COVERS).with("/covers/final", "90");
    client.post(COVERS, theirs.fields());
    Answer answer = client.post(COVERS, mine.fields());
    assertThat(answer.status()).isEqualTo(409);
    assertThat(answer.text()).contains("What you typed is kept", "now 90");
    assertThat(answer.body()).contains("value=\"97\"");
    assertThat(client.post(COVERS, FilledForm.of(answer, COVERS).fields()).status()).isEqualTo(303);
    assertThat(client.get(SHEET).text()).contains("97 covers");
  }

  @Test
  void anUnknownEventIsNotThere() {
    assertThat(client.get("/k/TARN/events/nothing").status()).isEqualTo(404);
    assertThat(client.post("/k/TARN/events/nothing/covers", "seen", "1").status()).isEqualTo(404);
  }
}
