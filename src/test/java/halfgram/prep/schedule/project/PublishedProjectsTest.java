package halfgram.prep.schedule.project;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The published sets, where they are: with few iterations, so that the time is no matter. */
class PublishedProjectsTest {

  @ParameterizedTest
  @ValueSource(strings = {"ubo10", "ubo20", "ubo50", "sm_j10", "sm_j20"})
  void whatHasNoScheduleIsRecognisedAndNothingElse(String set) {
    int missed = 0;
    for (PublishedProjects.One one : PublishedProjects.of(set)) {
      boolean refused = ForcedOrders.of(one.project()).refusal().isPresent();
      if (one.best().isPresent()) {
        assertThat(refused).as("%s %s has a schedule", set, one.name()).isFalse();
      } else if (!refused) {
        missed++;
      }
    }
    assertThat(missed).as("missed of %s", set).isLessThanOrEqualTo(set.startsWith("sm") ? 2 : 0);
  }

  @Test
  void schedulesOfProjectsWithoutMaximumLagsAreRightAndShort() {
    assertMeanGap(PublishedProjects.of("j30"), 300, 0.5);
  }

  @Test
  void schedulesOfProjectsWithMaximumLagsAreRightAndShort() {
    List<PublishedProjects.One> feasible =
        PublishedProjects.of("ubo20").stream().filter(one -> one.best().isPresent()).toList();
    assertMeanGap(feasible, 300, 0.5);
  }

  /** All are found, none is wrong, and the mean is not much above the best known. */
  private static void assertMeanGap(
      List<PublishedProjects.One> projects, int iterations, double most) {
    double percent = 0;
    for (PublishedProjects.One one : projects) {
      ProjectSchedule.Found found =
          ProjectScheduleTest.found(ProjectScheduleTest.run(one.project(), 1, iterations));
      assertThat(one.checker().wrong(found.starts(), found.makespan())).as(one.name()).isEmpty();
      int best = one.best().orElseThrow();
      assertThat(found.bound()).as("bound of %s", one.name()).isLessThanOrEqualTo(best);
      percent += 100.0 * (found.makespan() - best) / best;
    }
    assertThat(percent).isLessThanOrEqualTo(most * projects.size());
  }
}
