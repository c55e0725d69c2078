package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.measure.Amount;
import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.testkit.Client.Answer;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A batch that fails at the wall: binned, told, planned again; and all of it taken back. */
class FailedTest extends AtWall {
  private static final String WHY = "split when the oil went in";

  FailedTest() {
    super("cold");
  }

  @Test
  void aProblemOfWhatWaitsHidesNotThatItWaits() {
    Task waits = inForce().findTask("parsnip-puree/lunch.2026-12-05/1/chill").orElseThrow();
    press(waits, "PROBLEM", "note", "no pan");
    assertThat(opened(waits).text()).contains("PROBLEM · WAITS", "no pan", "first: blend");
  }

  @Test
  void whatFailedIsMadeAgainByAPlanThatTheChefAccepts() {
    Task first = base();
    press(first, "DONE");
    Answer told = press(first, "FAILED", "note", WHY);
    assertThat(told.status()).isEqualTo(303);
    assertThat(opened(first).text())
        .contains("FAILED", WHY)
        .doesNotContain("It failed: bin it all");
    assertThat(opened(first).text())
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
    press(first, "START");
    press(first, "FAILED", "note", WHY);
    assertThat(rest).allMatch(task -> state(task) == TaskState.FAILED);
    Answer late = press(rest.get(0), "DONE");
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
    press(first, "DONE");
    List<Amount> before = tubs(first);
    press(first, "FAILED", "note", WHY);
    accept();
    int twice = makes("yoghurt-base").size();
    undo(first);
    assertThat(tubs(first)).isEqualTo(before);
    assertThat(state(first)).isEqualTo(TaskState.DONE);
    accept();
    assertThat(makes("yoghurt-base")).hasSizeLessThan(twice);
  }

  @Test
  void whatWasFilledOutOfItsTubsIsBinnedToo() {
    Task first = base();
    press(first, "DONE");
    String tub = codes(first).get(0);
    assertThat(site.script().post("stock/" + tub + "/split", "{'amount':'500 g'}").status())
        .isEqualTo(200);
    press(first, "FAILED", "note", WHY);
    assertThat(tubs(first)).hasSizeGreaterThan(1).allMatch(left -> !left.isPositive());
  }

  @Test
  void whatIsInATubWithOthersIsThrownAwayBeforeItCanFail() {
    Task first = base();
    press(first, "DONE");
    List<String> codes = codes(first);
    String body = "{'with':['" + codes.get(1) + "']}";
    String together =
        site.script().post("stock/" + codes.get(0) + "/combine", body).body().path("code").asText();
    Answer refused = press(first, "FAILED", "note", WHY);
    assertThat(refused.status()).isEqualTo(409);
    assertThat(refused.text()).contains(together, "throw that away first");
    assertThat(state(first)).isEqualTo(TaskState.DONE);
    site.script().post("stock/" + together + "/bin", "{'reason':'" + WHY + "'}");
    assertThat(press(first, "FAILED", "note", WHY).status()).isEqualTo(303);
  }

  @Test
  void aBatchThatTwoSayHasFailedComesBackOnlyWhenBothAreTakenBackAndIsWasteOnce() {
    List<Task> puree = makes("parsnip-puree");
    Task cook = puree.get(0);
    Task blend =
        puree.stream()
            .filter(task -> task.make().id().equals(cook.make().id()) && !task.equals(cook))
            .findFirst()
            .orElseThrow();
    press(cook, "START");
    String one = failed(cook, 71);
    // The order in which they came counts, not the time that is said.
    site.passTime(Duration.ofMinutes(-1));
    String two = failed(blend, 72);
    assertThat(site.script().get("waste").body().findValuesAsText("reason")).hasSize(1);
    Answer early = press(cook, "UNDO", "undoes", one);
    assertThat(early.status()).isEqualTo(409);
    assertThat(early.text()).contains("another entry says too that this batch failed");
    assertThat(press(blend, "UNDO", "undoes", two).status()).isEqualTo(303);
    assertThat(press(cook, "UNDO", "undoes", one).status()).isEqualTo(303);
    assertThat(state(cook)).isEqualTo(TaskState.ON_IT);
    assertThat(site.script().get("waste").body().findValuesAsText("reason")).isEmpty();
  }

  @Test
  void aBatchThatWasDoneByMistakeAndFailsIsWasteAllTheSame() {
    Task puree = makes("parsnip-puree").get(0);
    press(base(), "DONE");
    undo(base());
    press(base(), "START");
    press(base(), "FAILED", "note", WHY);
    assertThat(site.script().get("waste").body().findValuesAsText("component"))
        .contains("yoghurt-base");
    assertThat(state(puree)).isEqualTo(TaskState.TO_DO);
  }

  @Test
  void whyItFailedHasToBeSaid() {
    Answer refused = press(base(), "FAILED", "note", "  ");
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
    press(base(), "DONE");
    assertThat(client.get("/k/TARN/").text()).doesNotContain("Accept");
    Task other = makes("pea-base").get(0);
    Answer done = press(other, "DONE", "amount", "300 g");
    assertThat(done.status()).isEqualTo(303);
    assertThat(client.get("/k/TARN/").text()).contains("Accept");
  }

  // ---- below their callers ----

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

  /** Says by the API that a task has failed; the id of what was entered. */
  private String failed(Task task, int sequence) {
    site.passTime(Duration.ofSeconds(1));
    String call =
        "{'task':'%s','kind':'failed','cook':'ines','note':'%s','sequence':%d,"
                .formatted(task.id(), WHY, sequence)
            + "'device':'00000000-0000-4000-8000-000000000001'}";
    return site.script().post("ticks", call).body().path("tick").asText();
  }

  private List<String> codes(Task task) {
    return site.wiring().stock().listAll(site.house()).stream()
        .filter(tub -> tub.task().equals(java.util.Optional.of(task.id())))
        .map(tub -> tub.lot().code())
        .toList();
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
