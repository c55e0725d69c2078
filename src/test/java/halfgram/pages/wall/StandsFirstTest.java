package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What stands by itself is ready when it has stood, unless a cook says that it has. */
class StandsFirstTest {
  private Site site;
  private Client client;
  private int sequence;

  @BeforeEach
  void open() {
    site = Site.demo();
    client = site.client();
    client.get("/k/TARN/wall/hot");
    client.post("/k/TARN/wall/cook", "station", "hot", "person", "marit");
    site.setClock(Site.at("09:00"));
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void fishIsNotBrinedTheMinuteItsBrineIsStirred() {
    tick("fish-brine", "stir", "'kind':'done'");
    Answer asked = press(page("char-portions", "brine"));
    assertThat(asked.status()).isEqualTo(409);
    assertThat(asked.text())
        .contains("it stands for 20 min by itself, and has just begun")
        .contains("Yes, it is so");
    assertThat(state("char-portions", "brine")).isEqualTo(TaskState.TO_DO);
    assertThat(press(asked).status()).isEqualTo(303);
    assertThat(state("char-portions", "brine")).isEqualTo(TaskState.DONE);
  }

  @Test
  void nobodyIsAskedWhenItCanHaveStoodThoughNobodySaidWhenItBegan() {
    tick("fish-brine", "stir", "'kind':'done'");
    site.setClock(Site.at("09:18"));
    assertThat(press(page("char-portions", "brine")).status())
        .as("a tenth short of twenty minutes")
        .isEqualTo(303);
  }

  @Test
  void itIsCountedFromTheStartAndFromWhenSomebodySaysThatItStands() {
    tick("fish-brine", "stir", "'kind':'done'");
    site.setClock(Site.at("10:00"));
    tick("char-portions", "brine", "'kind':'start'");
    site.setClock(Site.at("10:10"));
    assertThat(press(page("char-portions", "brine")).text()).contains("began 10 min ago");
    tick("char-portions", "brine", "'kind':'timed','line':'stands','minutes':8");
    site.setClock(Site.at("10:14"));
    assertThat(press(page("char-portions", "brine")).text())
        .contains("it stands for 8 min by itself, and began 4 min ago");
    site.setClock(Site.at("10:18"));
    assertThat(press(page("char-portions", "brine")).status()).isEqualTo(303);
  }

  @Test
  void aNightIsAskedAboutThoughNothingOfItIsKnown() {
    Script.Answer asked = tick("dill-oil", "drip", "'kind':'done'");
    assertThat(asked.status()).isEqualTo(409);
    assertThat(asked.kind()).isEqualTo("unsure");
    assertThat(asked.body().path("said").asText())
        .endsWith("it stands for 9\u00a0h by itself, and nobody has said when it began");
    assertThat(tick("dill-oil", "drip", "'kind':'done','sure':true").status()).isEqualTo(201);
  }

  @Test
  void nothingIsDoneWithoutAQuestionOfWhichThePartsAreNot() {
    Answer asked = press(page("parsnip-puree", "blend"));
    assertThat(asked.status()).isEqualTo(409);
    assertThat(asked.text())
        .contains("Parsnip purée, cook is not entered as done", "Yes, it is so");
    assertThat(state("parsnip-puree", "blend")).isEqualTo(TaskState.TO_DO);
    Script.Answer script = tick("parsnip-puree", "blend", "'kind':'done'");
    assertThat(script.status()).isEqualTo(409);
    assertThat(script.kind()).isEqualTo("unsure");
    assertThat(press(asked).status()).isEqualTo(303);
    assertThat(state("parsnip-puree", "blend")).isEqualTo(TaskState.DONE);
  }

  @Test
  void partOfWhatItTakesIsEnoughToBeDone() {
    tick("parsnip-puree", "cook", "'kind':'part-done'");
    assertThat(press(page("parsnip-puree", "blend")).status()).isEqualTo(303);
  }

  @Test
  void alsoOfATaskThatThePlanInForceNoLongerHasThePartsAreAskedFor() {
    String drop = task("yoghurt-spheres", "drop").id();
    String sheet = "/k/TARN/events/harvest-dinner";
    client.post(sheet + "/remove", FilledForm.of(client.get(sheet), "/remove").fields());
    House house = site.house();
    site.wiring().plans().accept(house, Site.DAY, house.stand().facts(), "test");
    assertThat(inForce().findTask(drop)).as("withdrawn").isEmpty();
    Script.Answer asked = tick(drop, "'kind':'done'");
    assertThat(asked.kind()).isEqualTo("unsure");
    assertThat(asked.body().path("said").asText()).contains("is not entered as done");
  }

  // ---- below their callers ----

  private Task task(String formula, String step) {
    return inForce().sheet().tasks().stream()
        .filter(one -> one.make().version().formula().equals(formula))
        .filter(one -> one.id().endsWith("/" + step))
        .findFirst()
        .orElseThrow();
  }

  private InForce inForce() {
    return site.wiring().plans().find(site.house(), Site.DAY).orElseThrow();
  }

  private TaskState state(String formula, String step) {
    return inForce().progress(task(formula, step)).state();
  }

  private Answer page(String formula, String step) {
    return client.get("/k/TARN/wall/hot?task=" + Client.encoded(task(formula, step).id()));
  }

  private Answer press(Answer page) {
    FilledForm done =
        FilledForm.posted(page).stream()
            .filter(posted -> posted.action().endsWith("/tick"))
            .map(FilledForm.Posted::form)
            .filter(form -> form.names().contains("kind") && form.value("kind").equals("DONE"))
            .findFirst()
            .orElseThrow();
    return client.post("/k/TARN/tick", done.fields());
  }

  private Script.Answer tick(String formula, String step, String what) {
    return tick(task(formula, step).id(), what);
  }

  private Script.Answer tick(String task, String what) {
    String rest =
        ",'task':'%s','cook':'marit','device':'00000000-0000-4000-8000-0000000000af','sequence':%d}"
            .formatted(task, ++sequence);
    return site.script().post("ticks", "{" + what + rest);
  }
}
