package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.measure.Amount;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Who is on a task is taken off it by somebody else only when they say so. */
class TakingOverTest extends OnPaper {
  private int sequence;

  @BeforeEach
  void inTheAfternoon() {
    site.setClock(Site.at("14:42"));
    client.get("/k/TARN/wall/cold");
  }

  @Test
  void doneByAnotherAsksWhoIsOnItAndOneMorePressTakesItAsTyped() {
    begin();
    Answer asked = press(page("ines"), "DONE", "amount", "5.9 kg");
    assertThat(asked.status()).isEqualTo(409);
    assertThat(asked.text()).contains("Lorcan has been on it since 14:42", "Done: it was 5.9 kg");
    assertThat(form(asked, "DONE").value("amount")).isEqualTo("5.9 kg");
    assertThat(progress().onIt())
        .hasValueSatisfying(on -> assertThat(on.cook()).isEqualTo("lorcan"));
    assertThat(press(asked, "DONE").status()).isEqualTo(303);
    assertThat(progress().amount().orElseThrow()).isEqualByComparingTo(Amount.grams(5900));
    assertThat(progress().dones().get(0).cook()).isEqualTo("ines");
  }

  @Test
  void everythingThatIsAskedIsAskedAtOnce() {
    begin();
    Answer asked = press(page("ines"), "DONE", "amount", "1 kg");
    assertThat(asked.text()).contains("Lorcan has been on it", "A slip of the hand");
    assertThat(press(asked, "DONE", "amount", "0.9 kg").status())
        .as("what was not asked about")
        .isEqualTo(409);
    assertThat(press(asked, "DONE").status()).isEqualTo(303);
  }

  @Test
  void asPlannedOnlyWhoDidItIsAsked() {
    begin();
    Answer asked = press(page("ines"), "DONE");
    assertThat(asked.text()).contains("Yes, it is so");
    assertThat(press(asked, "DONE").status()).isEqualTo(303);
    assertThat(progress().state()).isEqualTo(TaskState.DONE);
  }

  @Test
  void aStartFromAPageThatIsBehindAsksAndTakingOverIsOnePress() {
    Answer behind = page("ines");
    script("lorcan", "'kind':'start'");
    Answer asked = press(behind, "START");
    assertThat(asked.status()).isEqualTo(409);
    assertThat(asked.text()).contains("Lorcan has been on it since 14:42", "Take over from Lorcan");
    assertThat(press(asked, "START").status()).isEqualTo(303);
    assertThat(progress().onIt()).hasValueSatisfying(on -> assertThat(on.cook()).isEqualTo("ines"));
  }

  @Test
  void whoIsOnItIsNotAsked() {
    begin();
    assertThat(press(page("lorcan"), "DONE").status()).isEqualTo(303);
  }

  @Test
  void partDoneByAnotherAsksTooAndLessThanBeforeIsAskedAbout() {
    begin();
    Answer asked = press(page("ines"), "PART_DONE", "amount", "4 kg");
    assertThat(asked.text()).contains("Lorcan has been on it since 14:42", "Part done: it is 4 kg");
    assertThat(press(asked, "PART_DONE").status()).isEqualTo(303);
    Answer less = press(page("ines"), "PART_DONE", "amount", "2 kg");
    assertThat(less.status()).isEqualTo(409);
    assertThat(less.text()).contains("4000 g so far was entered before");
    assertThat(progress().amount().orElseThrow()).isEqualByComparingTo(Amount.grams(4000));
    assertThat(press(less, "PART_DONE").status()).isEqualTo(303);
    assertThat(progress().amount().orElseThrow()).isEqualByComparingTo(Amount.grams(2000));
    assertThat(press(page("ines"), "PART_DONE", "amount", "5 kg").status()).isEqualTo(303);
    assertThat(press(page("ines"), "DONE", "amount", "4.5 kg").text())
        .contains("5000 g so far was entered before");
  }

  @Test
  void aScriptIsAskedAndSaysThatItIsSure() {
    begin();
    Script.Answer asked = script("ines", "'kind':'done'");
    assertThat(asked.status()).isEqualTo(409);
    assertThat(asked.kind()).isEqualTo("unsure");
    assertThat(asked.body().path("said").asText()).contains("Lorcan has been on it since 14:42");
    assertThat(script("ines", "'kind':'start'").kind()).isEqualTo("unsure");
    assertThat(script("ines", "'kind':'done','sure':true").status()).isEqualTo(201);
  }

  @Test
  void whatIsEnteredFromPaperSaysWhoDidItAndIsNotAsked() {
    begin();
    site.setClock(Site.at("17:40"));
    FilledForm form = row(form("cold"), base(), "done", "17:20", "who", "ines");
    assertThat(send(form).status()).isEqualTo(303);
    assertThat(progress().dones().get(0).cook()).isEqualTo("ines");
  }

  @Test
  void lessThanBeforeIsAskedAboutOnPaperToo() {
    script("ines", "'kind':'part-done','amount':'4 kg'");
    site.setClock(Site.at("17:40"));
    FilledForm form = row(form("cold"), base(), "done", "17:20", "came", "PART_DONE");
    form = row(form, base(), "made", "2 kg", "who", "ines");
    Answer asked = send(form);
    assertThat(asked.text()).contains("4000 g so far was entered before");
    assertThat(send(row(form, base(), "sure", "yes")).status()).isEqualTo(303);
    assertThat(progress().amount().orElseThrow()).isEqualByComparingTo(Amount.grams(2000));
  }

  // ---- below their callers ----

  private void begin() {
    assertThat(script("lorcan", "'kind':'start'").status()).isEqualTo(201);
  }

  private Answer page(String cook) {
    client.post("/k/TARN/wall/cook", "station", "cold", "person", cook);
    return client.get("/k/TARN/wall/cold?task=" + halfgram.testkit.Client.encoded(base().id()));
  }

  private FilledForm form(Answer page, String kind) {
    return FilledForm.posted(page).stream()
        .filter(posted -> posted.action().endsWith("/tick"))
        .map(FilledForm.Posted::form)
        .filter(form -> form.names().contains("kind") && form.value("kind").equals(kind))
        .filter(form -> form.value("task").equals(base().id()))
        .findFirst()
        .orElseThrow();
  }

  private Answer press(Answer page, String kind, String... typed) {
    FilledForm form = form(page, kind);
    for (int i = 0; i < typed.length; i += 2) {
      form = form.with(typed[i], typed[i + 1]);
    }
    return client.post("/k/TARN/tick", form.fields());
  }

  private Script.Answer script(String cook, String what) {
    return site.script()
        .post(
            "ticks",
            "{"
                + what
                + ",'task':'"
                + base().id()
                + "','cook':'"
                + cook
                + "','device':'00000000-0000-4000-8000-0000000000af','sequence':"
                + ++sequence
                + "}");
  }

  private TaskProgress progress() {
    return inForce().progress(base());
  }
}
