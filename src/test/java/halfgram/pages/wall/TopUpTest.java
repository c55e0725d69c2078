package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.desk.InForce;
import halfgram.desk.Plans;
import halfgram.prep.Begun;
import halfgram.prep.Task;
import halfgram.prep.WeighLine;
import halfgram.testkit.Client;
import halfgram.testkit.Site;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** More guests while a batch is on the scale: what is lacking is weighed on top of what is in. */
class TopUpTest {
  private Site site;
  private Client client;

  @BeforeEach
  void open() {
    site = Site.demo();
    client = site.client();
    client.get("/k/TARN/wall/hot");
    client.post("/k/TARN/wall/cook", "station", "hot", "person", "ines");
  }

  @AfterEach
  void close() {
    site.close();
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
    String hand = hand(now);
    assertThat(hand).contains("of it is in", "+");
    weigh(now, asked);
    assertThat(hand(now)).doesNotContain("of it is in");
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
    press(task, "START", "");
    return task;
  }

  private void weigh(Task task, WeighLine line) {
    press(task, "WEIGHED", line.path());
  }

  private void press(Task task, String kind, String line) {
    assertThat(
            client
                .post(
                    "/k/TARN/tick",
                    "station",
                    task.station(),
                    "task",
                    task.id(),
                    "kind",
                    kind,
                    "line",
                    line,
                    "sequence",
                    String.valueOf(Site.sequence()))
                .status())
        .isEqualTo(303);
  }

  private String hand(Task task) {
    return client
        .get("/k/TARN/wall/" + task.station() + "?task=" + Client.encoded(task.id()))
        .text();
  }

  private void moreGuests() {
    String page = "/k/TARN/slip/harvest-dinner";
    String seen = String.valueOf(site.house().stand().facts());
    client.post(page, "minutes", "0", "covers", "97", "seen", seen, "do", "note");
  }

  private void accept() {
    long facts = site.house().stand().facts();
    site.wiring().plans().accept(site.house(), Site.DAY, facts, "test");
  }

  private InForce inForce() {
    return site.wiring().plans().find(site.house(), Site.DAY).orElseThrow();
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
