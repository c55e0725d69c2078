package halfgram.pages.lanes;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.desk.InForce;
import halfgram.prep.crew.CrewPlan;
import halfgram.prep.crew.Placed;
import halfgram.testkit.Client;
import halfgram.testkit.Site;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Work that one hands over to another says so wherever it is planned. */
class ReliefTest {
  private static final String LANES = "/k/TARN/lanes";

  @Test
  void whoRelievesWhomIsSaidWhereverWorkIsPlanned() {
    assertThat(IntStream.range(5, 15).anyMatch(ReliefTest::isReliefSaidFrom)).isTrue();
  }

  /** False when nobody relieves anybody in the day as it is planned at an hour. */
  private static boolean isReliefSaidFrom(int hour) {
    try (Site own = Site.demo()) {
      own.setClock(Site.at("%02d:00".formatted(hour)));
      return isReliefSaid(own, own.client());
    }
  }

  private static boolean isReliefSaid(Site at, Client client) {
    client.get(LANES);
    InForce inForce = at.wiring().plans().find(at.house(), Site.DAY).orElseThrow();
    CrewPlan plan = at.wiring().crewPlans().find(at.house(), inForce).orElseThrow().plan();
    Optional<Placed> some =
        plan.placed().values().stream()
            .filter(one -> one.people().size() > 1 && one.turns().size() > 1)
            .filter(one -> !one.turns().get(0).people().equals(one.turns().get(1).people()))
            .findFirst();
    if (some.isEmpty()) {
      return false;
    }
    Placed shared = some.get();
    Placed.Hands second = shared.turns().get(1);
    String said =
        ", "
            + name(at, second.people().get(0))
            + " from "
            + LocalTime.ofInstant(second.from(), ZoneId.of("Europe/Copenhagen"));
    String station = inForce.findTask(shared.task()).orElseThrow().station();
    String id = Client.encoded(shared.task());
    for (String page :
        List.of(
            LANES,
            LANES + "/task?id=" + id,
            "/k/TARN/",
            "/k/TARN/task?date=" + Site.DAY + "&id=" + id,
            "/k/TARN/wall/" + station + "?task=" + id)) {
      assertThat(client.get(page).text()).as(page).contains(said);
    }
    return true;
  }

  private static String name(Site at, String code) {
    return at.house().book().people().stream()
        .filter(one -> one.code().equals(code))
        .findFirst()
        .orElseThrow()
        .name();
  }
}
