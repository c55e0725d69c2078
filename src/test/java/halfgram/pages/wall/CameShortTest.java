package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.measure.Amount;
import halfgram.prep.Task;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Site;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A batch of which less comes than is to be taken of it: who goes without is told at once. */
class CameShortTest extends AtWall {
  private static final String SAID = "Sheep-yoghurt base: 2000 g came of ";

  CameShortTest() {
    super("cold");
  }

  @Test
  void whoeverPressesDoneIsToldAndSoAreTheOfficeAndWhoTakesOfIt() {
    Task base = base();
    Answer done = press(base, "DONE", "amount", "2 kg");
    assertThat(client.get(done.header("location")).text())
        .contains("Done: ", SAID, "lacking for Yoghurt spheres");
    assertThat(client.get("/k/TARN/").text()).contains(SAID);
    assertThat(opened(base).text()).contains(SAID);
    assertThat(opened(taker(base)).text()).contains(SAID);
    JsonNode one = site.script().get("today").body().path("short").path(0);
    assertThat(one.path("task").asText()).isEqualTo(base.id());
    assertThat(one.path("came").path("value").asInt()).isEqualTo(2000);
    assertThat(one.path("without").toString()).contains(taker(base).make().id());
  }

  @Test
  void asMuchAsIsTakenOfItIsNotShortThoughLessThanWasPlannedCame() {
    press(base(), "DONE", "amount", "6.09 kg");
    assertNothingIsShort();
  }

  @Test
  void howMuchThereIsOfItStandsBesideItsStateOnceSomebodySaidSo() {
    press(base(), "PART_DONE", "amount", "4 kg");
    assertThat(opened(base()).text())
        .containsPattern("PART DONE · by \\d\\d:\\d\\d · 4000 g so far");
    press(base(), "DONE", "amount", "6.09 kg");
    assertThat(opened(base()).text()).containsPattern("DONE · Ines · \\d\\d:\\d\\d · made 6090 g");
  }

  @Test
  void anAmountFarFromThePlannedOneIsAskedAboutAndTakenWhenItWasSo() {
    Task base = base();
    for (String typed : List.of("28 kg", "600 g")) {
      Answer asked = press(base, "DONE", "amount", typed);
      assertThat(asked.status()).isEqualTo(409);
      assertThat(asked.text()).contains(typed + " of 6.098 kg planned?", "Done: it was " + typed);
      assertThat(FilledForm.sending(asked, "DONE").value("amount")).isEqualTo(typed);
    }
    FilledForm asked = FilledForm.sending(press(base, "DONE", "amount", "28 kg"), "DONE");
    Answer other = client.post("/k/TARN/tick", asked.with("amount", "29 kg").fields());
    assertThat(other.text()).as("what is typed anew").contains("29 kg of 6.098 kg planned?");
    assertThat(client.post("/k/TARN/tick", asked.fields()).status()).isEqualTo(303);
    assertThat(inForce().progress(base).dones().get(0).amount().orElseThrow())
        .isEqualByComparingTo(Amount.grams(28_000));
  }

  @Test
  void tenTimesWhatIsPlannedIsASlipOfTheHandForScriptsToo() {
    String tick =
        "{'task':'%s','kind':'done','cook':'ines','amount':'%s','sequence':%d,"
            + "'device':'00000000-0000-4000-8000-00000000000b'}";
    var refused = site.script().post("ticks", tick.formatted(base().id(), "61 kg", 1));
    assertThat(refused.status()).isEqualTo(409);
    assertThat(refused.body().toString()).contains("more than ten times what is planned");
    assertThat(site.script().post("ticks", tick.formatted(base().id(), "60 kg", 2)).status())
        .isEqualTo(201);
  }

  @Test
  void whatIsTakenBackIsNoLongerShort() {
    Task base = base();
    press(base, "DONE", "amount", "2 kg");
    undo(base);
    assertNothingIsShort();
  }

  @Test
  void aPlanThatMakesWhatIsLackingEndsIt() {
    press(base(), "DONE", "amount", "2 kg");
    accept();
    assertNothingIsShort();
  }

  @Test
  void ofOneThatFailedAllIsLackingUntilItIsPlannedAgain() {
    Task base = base();
    press(base, "FAILED", "note", "split");
    assertThat(client.get("/k/TARN/").text()).contains("Sheep-yoghurt base failed: ");
  }

  @Test
  void nobodyMissesWhatWasToBeUsedBefore() {
    press(base(), "DONE", "amount", "2 kg");
    site.setClock(Site.at("23:50"));
    assertNothingIsShort();
  }

  private void assertNothingIsShort() {
    assertThat(site.script().get("today").body().path("short").size()).isZero();
    assertThat(client.get("/k/TARN/").text()).doesNotContain(" lacking for ");
  }

  /** The one task of the yoghurt base that puts it away. */
  private Task base() {
    return inForce().sheet().tasks().stream()
        .filter(task -> task.version().formula().equals("yoghurt-base"))
        .filter(task -> !task.stored().isEmpty())
        .findFirst()
        .orElseThrow();
  }

  /** Who weighs it in. */
  private Task taker(Task base) {
    return inForce().sheet().tasks().stream()
        .filter(task -> base.make().served().get(0).user().equals(task.make().id()))
        .filter(task -> !task.weigh().isEmpty())
        .findFirst()
        .orElseThrow();
  }
}
