package halfgram.desk;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.prep.Begun;
import halfgram.prep.Make;
import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.testkit.Site;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What is to be made anew is to do, whatever was ticked on a batch before it. */
class SpentIdsTest {
  private Site site;
  private Kitchenful at;

  @BeforeEach
  void open() {
    site = Site.demo();
    at = new Kitchenful(site);
    at.inForce();
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void whatIsMadeAgainAfterItsFirstBatchWasEatenIsToDo() {
    site.setClock(Site.at("10:30"));
    at.done("slip/harvest-dinner?accept=yes", "{'covers':120}");
    at.work("16:35");
    at.done("slip/harvest-dinner?accept=yes", "{'covers':400}");
    List<Task> again = fresh("pea-stock/");
    assertThat(again).as("more guests want more stock").isNotEmpty();
    assertThat(again).extracting(at::state).containsOnly(TaskState.TO_DO);
    assertThat(fresh("")).extracting(at::state).containsOnly(TaskState.TO_DO);
    InForce inForce = at.inForce();
    assertThat(site.wiring().plans().propose(site.house(), inForce).difference().isEmpty())
        .as("planned again in the same minute it is the same")
        .isTrue();
    at.replays();
  }

  @Test
  void whatIsMadeAgainForAnEventThatIsHeldOnAnotherDayIsToDo() {
    at.work("17:30");
    ObjectNode event = (ObjectNode) at.json("events/harvest-dinner").path("event").deepCopy();
    String seen = "?seen=" + at.json("events/harvest-dinner").path("change").asLong();
    event.put("date", "2026-12-06");
    assertThat(at.script.put("events/harvest-dinner" + seen, event.toString()).status())
        .isEqualTo(200);
    at.accept();
    site.setClock(Site.at("23:30").plusSeconds(8 * 3600));
    List<Task> again = fresh("");
    assertThat(again).isNotEmpty();
    assertThat(again).extracting(at::state).containsOnly(TaskState.TO_DO);
  }

  /** Tasks of makes that the plan in force begins anew. */
  private List<Task> fresh(String prefix) {
    InForce inForce = at.inForce();
    Set<String> begun =
        inForce.sheet().begun().stream().map(Begun::make).map(Make::id).collect(Collectors.toSet());
    return inForce.sheet().tasks().stream()
        .filter(task -> task.id().startsWith(prefix) && task.kind() != Task.Kind.THAW)
        .filter(task -> !begun.contains(task.make().id()))
        .toList();
  }
}
