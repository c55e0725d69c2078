package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.desk.Plans;
import halfgram.prep.Begun;
import halfgram.prep.Task;
import halfgram.prep.WeighLine;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;

/** More guests while a batch is on the scale: what is lacking is weighed on top of what is in. */
class TopUpTest extends AtWall {
  TopUpTest() {
    super("hot");
  }

  @Test
  void whatIsLackingIsWeighedOnTopOfWhatIsIn() {
    Task task = onTheScale();
    WeighLine first = task.weigh().get(0).lines().get(0);
    weigh(task, first);
    moreGuests();
    Begun grown = only(proposal().difference().grown(), task);
    assertThat(grown.more().isPositive()).isTrue();
    assertThat(client.get("/k/TARN/").text()).contains("Weigh more into what is on");

    accept();
    Task now = inForce().findTask(task.id()).orElseThrow();
    WeighLine asked = now.weigh().get(0).lines().get(0);
    assertThat(asked.weighing().target()).isGreaterThan(first.weighing().target());
    String hand = opened(now).text();
    assertThat(hand).contains("of it is in", "+");
    weigh(now, asked);
    assertThat(opened(now).text()).doesNotContain("of it is in");
    assertThat(site.wiring().plans().findProposal(site.house(), inForce())).isEmpty();
  }

  @Test
  void whatHandsAreOffAlreadyStandsAndAFreshBatchIsMade() {
    Task task = onTheScale();
    site.passTime(Duration.between(task.start(), task.handsOff()).plusMinutes(2));
    moreGuests();
    assertThat(proposal().difference().grown())
        .noneMatch(of -> of.make().id().equals(task.make().id()));
    assertThat(proposal().sheet().makes())
        .anyMatch(
            make ->
                make.version().formula().equals(task.version().formula())
                    && make.scaled().equals(task.make().scaled()));
  }

  /** A batch for the dinner, of one output, whose first step takes ingredients alone: begun. */
  private Task onTheScale() {
    Task task =
        inForce().sheet().tasks().stream()
            .filter(one -> one.make().event().filter("harvest-dinner"::equals).isPresent())
            .filter(one -> one.version().outputs().size() == 1 && one.fill().count() == 1)
            .filter(one -> one.version().dropping().isEmpty() && !one.weigh().isEmpty())
            .filter(one -> one.start().isAfter(site.wiring().desk().now()))
            .filter(
                one ->
                    one.version().lines().stream()
                        .allMatch(
                            line ->
                                line.item().ingredient().isPresent()
                                    && line.step().equals(one.step().code())))
            .filter(one -> one.step().equals(one.version().steps().get(0)))
            .findFirst()
            .orElseThrow();
    site.setClock(task.start());
    press(task, "START");
    return task;
  }

  private void weigh(Task task, WeighLine line) {
    assertThat(press(task, "WEIGHED", "line", line.path()).status()).isEqualTo(303);
  }

  private void moreGuests() {
    String page = "/k/TARN/slip/harvest-dinner";
    String seen = String.valueOf(site.house().stand().facts());
    client.post(page, "minutes", "0", "covers", "97", "seen", seen, "do", "note");
  }

  private Plans.Proposal proposal() {
    return site.wiring().plans().findProposal(site.house(), inForce()).orElseThrow();
  }

  private static Begun only(List<Begun> grown, Task task) {
    return grown.stream()
        .filter(of -> of.make().id().equals(task.make().id()))
        .findFirst()
        .orElseThrow();
  }
}
