package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A plan comes into force without the task that lies open on the wall. */
class WithdrawnTest {
  private static final String MIX = "croquette-mix/terrace/1/mix";
  private static final String WALL = "/k/TARN/wall/hot?task=" + Client.encoded(MIX);

  private Site site;
  private Client client;

  @BeforeEach
  void open() {
    site = Site.demo();
    site.setClock(Site.at("11:00"));
    client = site.client();
    client.get("/k/TARN/wall/hot");
    client.post("/k/TARN/wall/cook", "station", "hot", "person", "marit");
    assertThat(client.get(WALL).text()).contains("Celeriac croquette, mix");
    site.setClock(Site.at("11:04"));
    Script script = site.script();
    long seen = script.get("events/terrace").body().path("change").asLong();
    assertThat(script.delete("events/terrace?seen=" + seen).status()).isLessThan(300);
    site.wiring().plans().accept(site.house(), Site.DAY, site.house().stand().facts(), "chef");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void staysOpenAndTheCookIsToldWhatToDoWithWhatIsInTheBowl() {
    Answer open = client.get(WALL);
    assertThat(open.status()).isEqualTo(200);
    assertThat(open.text())
        .contains("Since 11:04 this task is no longer on the sheet.", "Nothing in the bowl yet")
        .contains("Celeriac croquette, mix mix WAITS");
    assertThat(tick("START").text()).contains("ON IT · Marit", "Throw nothing away");
  }

  @Test
  void staysInHandWhenWhatHasChangedIsSeen() {
    Answer open = client.get(WALL);
    assertThat(open.text()).contains("Terrace reception: gone");
    Answer seen = client.post("/k/TARN/wall/seen", FilledForm.of(open, "wall/seen").fields());
    assertThat(seen.status()).isEqualTo(303);
    Answer then = client.get(seen.header("Location"));
    assertThat(then.text())
        .contains("this task is no longer on the sheet")
        .doesNotContain("Terrace reception: gone");
  }

  @Test
  void whatIsMadeAllTheSameIsATubAndCanBeTakenBack() {
    Answer wrong = tick("DONE", "amount", "plenty");
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.text()).contains("no longer on the sheet", "Type an amount like");
    assertThat(wrong.body()).contains("value=\"plenty\"");
    Answer asked = tick("DONE", "amount", "900 g");
    assertThat(asked.text()).contains("Celeriac, baked, chill is not entered as done");
    String sure = asked.all("name=\"sure\" value=\"([^\"]+)\"").get(0);
    Answer done = tick("DONE", "amount", "900 g", "sure", sure);
    assertThat(done.text()).contains("Done: Celeriac croquette, mix", "label 1205-1");
    String undone = done.all("name=\"undoes\" value=\"([^\"]+)\"").get(0);
    assertThat(client.get(WALL).text()).contains("There is nothing more to do about it");
    assertThat(tick("UNDO", "undoes", undone).text()).contains("Nothing in the bowl yet");
  }

  @Test
  void aChefWhoIsWantedThereIsWantedOnEveryWallAndInTheOffice() {
    tick("START");
    tick("PROBLEM", "note", "too stiff");
    tick("CALLED", "note", "what now?");
    String wanted = "Chef wanted at Hot";
    assertThat(client.get("/k/TARN/wall/cold").text()).contains(wanted, "mix, mix: what now?");
    Answer day = client.get("/k/TARN/");
    assertThat(day.text()).contains(wanted, "mix, mix: what now?", "too stiff");
    assertThat(day.body()).contains("wall/hot?task=" + Client.encoded(MIX));
    tick("ANSWERED");
    assertThat(client.get("/k/TARN/wall/cold").text()).doesNotContain(wanted);
    tick("SOLVED");
    assertThat(client.get("/k/TARN/").text()).doesNotContain("too stiff");
  }

  @Test
  void whatNoPlanHadIsNotThere() {
    assertThat(client.get(WALL + "-not").text()).contains("that was asked for is not of today");
  }

  private Answer tick(String kind, String... more) {
    String[] fields = {
      "station", "hot", "task", MIX, "kind", kind, "sequence", String.valueOf(Site.sequence())
    };
    String[] all = java.util.Arrays.copyOf(fields, fields.length + more.length);
    System.arraycopy(more, 0, all, fields.length, more.length);
    return client.postAndFollow("/k/TARN/tick", all);
  }
}
