package halfgram.desk;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.measure.Because;
import halfgram.prep.PlanStore;
import halfgram.prep.Task;
import halfgram.testkit.Site;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Plans after a restart, in a kitchen in which something always stands over night. */
class AgainTest {
  private static final int DAYS = 14;

  @Test
  void todaysPlanIsAsItWasKeptAndNeedsThoseOfAFewDays() {
    try (Site site = Site.demo()) {
      Kitchenful at = new Kitchenful(site);
      List<PlanStore.Accepted> plans = new ArrayList<>();
      for (int day = 0; day < DAYS; day++) {
        site.setClock(Site.at("21:00").plus(Duration.ofDays(day)));
        InForce inForce = at.inForce();
        plans.add(inForce.plan());
        inForce.sheet().tasks().stream()
            .filter(task -> task.kind() == Task.Kind.STEP)
            .skip(1)
            .limit(6)
            .forEach(task -> at.tick(task, "start", "ines", ",'sure':true"));
      }
      assertThat(plans.stream().filter(plan -> BegunJson.carries(plan.begun())))
          .as("days that carry something of the one before")
          .hasSizeGreaterThan(DAYS / 2);
      Plans restarted = new Plans(site.wiring().desk(), site.wiring()::result);
      PlanStore.Accepted last = plans.get(DAYS - 1);
      site.wiring()
          .desk()
          .read(
              tx -> {
                Plans.Computation again =
                    restarted.recompute(tx, site.house(), last, Because.NOT_ASKED);
                String json = site.wiring().result(again.book(), again.sheet());
                assertThat(Hash.of(json))
                    .isEqualTo(new PlanStore().result(tx, site.house().id(), last.id()).hash());
                return null;
              });
      assertThat(plans.subList(0, DAYS - 10))
          .as("plans of long ago need not be computed")
          .allMatch(plan -> restarted.findComputed(plan.id()).isEmpty());
    }
  }
}
