package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.prep.Tick;
import halfgram.testkit.Client.Answer;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** What is taken back at the wall while others still rest on it, and what is taken back twice. */
class TakenBackTest extends AtWall {

  TakenBackTest() {
    super("cold");
  }

  @Test
  void whatIsTakenBackTwiceComesBackOnce() {
    Task takes = takesOutOfTubs();
    Map<String, Amount> before = stock();
    press(takes, "DONE", "sure", "yes");
    assertThat(stock()).isNotEqualTo(before);
    String tick = last(takes);
    assertThat(press(takes, "UNDO", "undoes", tick).status()).isEqualTo(303);
    assertThat(stock()).isEqualTo(before);
    Answer again = press(takes, "UNDO", "undoes", tick);
    assertThat(again.status()).isEqualTo(409);
    assertThat(again.text()).contains("it has been undone already");
    assertThat(stock()).isEqualTo(before);
  }

  @Test
  void aSecondDoneIsTakenBackBeforeTheFirst() {
    Task base = firstOf("yoghurt-base");
    press(base, "DONE", "sure", "yes");
    String first = last(base);
    press(base, "DONE", "sure", "yes");
    Answer refused = press(base, "UNDO", "undoes", first);
    assertThat(refused.status()).isEqualTo(409);
    assertThat(refused.text()).contains("undo the later entry first");
    assertThat(inForce().progress(base).state()).isEqualTo(TaskState.DONE);
    assertThat(fullTubs(base)).isPositive();
    assertThat(undo(base).status()).isEqualTo(303);
    assertThat(fullTubs(base)).isPositive();
    assertThat(undo(base).status()).isEqualTo(303);
    assertThat(inForce().progress(base).state()).isEqualTo(TaskState.TO_DO);
    assertThat(fullTubs(base)).isZero();
  }

  @Test
  void whatIsSaidToBeDoneAgainKeepsTheDateOfTheFirstTime() {
    Task base = firstOf("fish-brine");
    press(base, "DONE", "sure", "yes");
    Instant first = useBy(base);
    site.passTime(Duration.ofMinutes(70));
    undo(base);
    site.passTime(Duration.ofMinutes(1));
    press(base, "DONE", "sure", "yes");
    assertThat(useBy(base)).as("no label wins time by taking back").isEqualTo(first);
  }

  @Test
  void whatWasASlipOfTheHandCountsFromWhenItIsDone() {
    Task base = firstOf("fish-brine");
    press(base, "DONE", "sure", "yes");
    Instant first = useBy(base);
    site.passTime(Duration.ofSeconds(20));
    undo(base);
    site.passTime(Duration.ofMinutes(70));
    press(base, "DONE", "sure", "yes");
    assertThat(useBy(base)).isAfter(first);
  }

  private Instant useBy(Task task) {
    return site.wiring().stock().list(site.house()).stream()
        .filter(tub -> tub.task().equals(Optional.of(task.id())))
        .map(tub -> tub.lot().useBy())
        .findFirst()
        .orElseThrow();
  }

  @Test
  void aProblemIsNotOpenAgainUnderWhatWasDoneSince() {
    Task base = firstOf("yoghurt-base");
    press(base, "PROBLEM", "note", "too warm");
    press(base, "SOLVED");
    String solved = last(base);
    press(base, "DONE", "sure", "yes");
    Answer refused = press(base, "UNDO", "undoes", solved);
    assertThat(refused.status()).isEqualTo(409);
    assertThat(inForce().progress(base).state()).isEqualTo(TaskState.DONE);
    assertThat(undo(base).status()).isEqualTo(303);
    assertThat(press(base, "UNDO", "undoes", solved).status()).isEqualTo(303);
    assertThat(inForce().progress(base).state()).isEqualTo(TaskState.PROBLEM);
  }

  @Test
  void whatWentInStaysUsedWhileItsBatchHasFailed() {
    Task takes = takesOutOfTubs();
    press(takes, "DONE", "sure", "yes");
    String done = last(takes);
    Map<String, Amount> after = stock();
    press(takes, "FAILED", "note", "dropped");
    Answer refused = press(takes, "UNDO", "undoes", done);
    assertThat(refused.status()).isEqualTo(409);
    assertThat(refused.text()).contains("it failed; undo that first");
    assertThat(stock()).isEqualTo(after);
  }

  @Test
  void whatNobodyBeganIsNoWasteWhenItIsNotMadeAnyMore() {
    Task base = firstOf("yoghurt-base");
    press(base, "FAILED", "note", "its service is over");
    assertThat(wasted()).isEmpty();
    undo(base);
    press(base, "PROBLEM", "note", "no pan");
    press(base, "FAILED", "note", "its service is over");
    assertThat(wasted()).isEmpty();
  }

  @Test
  void whatFailedBeforeAnybodyWasOnItHasTakenNothing() {
    Task takes = takesOutOfTubs();
    Map<String, Amount> before = stock();
    press(takes, "PROBLEM", "note", "the tub smells");
    press(takes, "FAILED", "note", "not begun");
    assertThat(stock()).isEqualTo(before);
  }

  private List<String> wasted() {
    return site.script().get("waste").body().findValuesAsText("component");
  }

  private Task takesOutOfTubs() {
    return inForce().sheet().tasks().stream()
        .filter(task -> task.stored().isEmpty() && task.kind() == Task.Kind.STEP)
        .filter(
            task ->
                task.weigh().stream()
                    .flatMap(group -> group.lines().stream())
                    .anyMatch(line -> !line.tubs().isEmpty()))
        .findFirst()
        .orElseThrow();
  }

  private Map<String, Amount> stock() {
    Map<String, Amount> left = new TreeMap<>();
    for (Tub tub : site.wiring().stock().listAll(site.house())) {
      left.put(tub.lot().code(), tub.lot().left());
    }
    return left;
  }

  private String last(Task task) {
    return inForce().progress(task).last().map(Tick::id).orElseThrow().toString();
  }
}
