package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.desk.InForce;
import halfgram.desk.Plans;
import halfgram.measure.Amount;
import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A batch that fails at the wall: binned, told, planned again; and all of it taken back. */
class FailedTest {
  private static final String WALL = "/k/TARN/wall/cold";
  private static final String WHY = "split when the oil went in";

  private Site site;
  private Client client;

  @BeforeEach
  void open() {
    site = Site.demo();
    client = site.client();
    client.get(WALL);
    client.post("/k/TARN/wall/cook", "station", "cold", "person", "ines");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void whatFailedIsMadeAgainByAPlanThatTheChefAccepts() {
    Task first = base();
    press(first, "DONE", "");
    Answer told = press(first, "FAILED", WHY);
    assertThat(told.status()).isEqualTo(303);
    assertThat(client.get(WALL + "?task=" + Client.encoded(first.id())).text())
        .contains("FAILED", WHY)
        .doesNotContain("It failed: bin it all");
    assertThat(client.get(WALL + "?task=" + Client.encoded(first.id())).text())
        .contains("Second go, as soon as the chef accepts the plan", "start by");
    assertThat(tubs(first)).isNotEmpty().allMatch(left -> !left.isPositive());
    assertThat(client.get("/k/TARN/").text()).contains("Sheep-yoghurt base", "Accept");

    accept();
    List<Task> again = makes("yoghurt-base");
    assertThat(again).extracting(task -> task.make().id()).contains(first.make().id());
    Task remake =
        again.stream()
            .filter(task -> !task.make().id().equals(first.make().id()))
            .filter(task -> state(task) == TaskState.TO_DO)
            .findFirst()
            .orElseThrow();
    assertThat(remake.stored().get(0).made()).isEqualByComparingTo(first.stored().get(0).made());
    assertThat(client.get("/k/TARN/").text()).doesNotContain("Accept");
    assertThat(client.get("/k/TARN/log").text()).contains(WHY);
  }

  @Test
  void theRestOfABatchIsLostWithTheStepThatFailed() {
    List<Task> puree = makes("parsnip-puree");
    Task first = puree.get(0);
    List<Task> rest =
        puree.stream()
            .filter(task -> task.make().id().equals(first.make().id()) && !task.equals(first))
            .toList();
    assertThat(rest).isNotEmpty();
    press(first, "START", "");
    press(first, "FAILED", WHY);
    assertThat(rest).allMatch(task -> state(task) == TaskState.FAILED);
    Answer late = press(rest.get(0), "DONE", "");
    assertThat(late.status()).isEqualTo(409);
    assertThat(late.text()).contains("another task of this batch has failed");
    accept();
    List<String> ids = makes("parsnip-puree").stream().map(Task::id).toList();
    assertThat(ids).contains(first.id());
    rest.forEach(task -> assertThat(ids).doesNotContain(task.id()));
  }

  @Test
  void undoBringsTheTubsBackAndTheSecondGoIsNoLongerPlanned() {
    Task first = base();
    press(first, "DONE", "");
    List<Amount> before = tubs(first);
    press(first, "FAILED", WHY);
    accept();
    int twice = makes("yoghurt-base").size();
    String tick =
        client
            .get(WALL + "?task=" + Client.encoded(first.id()))
            .all("name=\"undoes\" value=\"([0-9a-f-]{36})\"")
            .get(0);
    send(first, "UNDO", "undoes", tick);
    assertThat(tubs(first)).isEqualTo(before);
    assertThat(state(first)).isEqualTo(TaskState.DONE);
    accept();
    assertThat(makes("yoghurt-base")).hasSizeLessThan(twice);
  }

  @Test
  void whyItFailedHasToBeSaid() {
    Answer refused = press(base(), "FAILED", "  ");
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.text()).contains("Say why it failed");
    assertThat(state(base())).isEqualTo(TaskState.TO_DO);
    String call =
        "{'task':'"
            + base().id()
            + "','kind':'failed','cook':'ines','sequence':1,"
            + "'device':'00000000-0000-4000-8000-000000000001'}";
    assertThat(site.script().post("ticks", call).problems()).containsExactly("$.note");
  }

  @Test
  void doneWithLessThanPlannedMakesThePlanWorthALook() {
    press(base(), "DONE", "");
    assertThat(client.get("/k/TARN/").text()).doesNotContain("Accept");
    Task other = makes("pea-base").get(0);
    Answer done = send(other, "DONE", "amount", "100 g");
    assertThat(done.status()).isEqualTo(303);
    assertThat(client.get("/k/TARN/").text()).contains("Accept");
  }

  // ---- below their callers ----

  private InForce inForce() {
    return site.wiring().plans().open(site.house(), Site.DAY, "test");
  }

  private Task base() {
    return makes("yoghurt-base").get(0);
  }

  private List<Task> makes(String formula) {
    return inForce().sheet().tasks().stream()
        .filter(task -> task.version().formula().equals(formula))
        .toList();
  }

  private TaskState state(Task task) {
    return inForce().progress(task).state();
  }

  private void accept() {
    assertThat(
            site.wiring()
                .plans()
                .accept(site.house(), Site.DAY, site.house().stand().facts(), "chef"))
        .isEqualTo(Plans.Accepting.IN_FORCE);
  }

  private Answer press(Task task, String kind, String note) {
    return send(task, kind, "note", note);
  }

  private Answer send(Task task, String kind, String field, String value) {
    return client.post(
        "/k/TARN/tick",
        "station",
        "cold",
        "task",
        task.id(),
        "kind",
        kind,
        field,
        value,
        "sequence",
        String.valueOf(Site.sequence()));
  }

  /** What is left in the tubs that a task has filled. */
  private List<Amount> tubs(Task task) {
    List<Amount> left = new ArrayList<>();
    site.wiring().stock().listAll(site.house()).stream()
        .filter(tub -> tub.task().equals(java.util.Optional.of(task.id())))
        .forEach(tub -> left.add(tub.lot().left()));
    return left;
  }
}
