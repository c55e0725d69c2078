package halfgram.prep.schedule.project;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

/** The search, against every schedule of tiny projects and optima known by hand. */
class ProjectScheduleTest {

  static ProjectSchedule.Outcome run(Project project, long seed, int iterations) {
    return ProjectSchedule.of(project, new ProjectSchedule.Budget(seed, iterations, () -> true));
  }

  static ProjectSchedule.Found found(ProjectSchedule.Outcome outcome) {
    return outcome.fold(
        found -> found,
        impossible -> {
          throw new AssertionError("impossible: " + impossible.why());
        },
        open -> {
          throw new AssertionError("open after " + open.iterations());
        });
  }

  private static int span(ProjectSchedule.Outcome outcome) {
    return outcome.fold(ProjectSchedule.Found::makespan, impossible -> -1, open -> -2);
  }

  @Test
  void tinyProjectsWithoutMaximumLagsComeToTheirOptimum() {
    for (int seed = 0; seed < 150; seed++) {
      Project project = TinyProjects.random(seed, false);
      int best = TinyProjects.shortest(project).orElseThrow();
      assertThat(span(run(project, 1, 300))).as("seed %d", seed).isEqualTo(best);
    }
  }

  @Test
  void tinyProjectsWithMaximumLagsComeToTheirOptimumOrToNone() {
    int none = 0;
    int open = 0;
    for (int seed = 0; seed < 300; seed++) {
      Project project = TinyProjects.random(seed, true);
      OptionalInt best = TinyProjects.shortest(project);
      ProjectSchedule.Outcome outcome = run(project, 1, 400);
      if (best.isPresent()) {
        assertThat(span(outcome)).as("seed %d", seed).isEqualTo(best.getAsInt());
        assertThat(found(outcome).bound()).as("bound, %d", seed).isLessThanOrEqualTo(span(outcome));
      } else {
        none++;
        assertThat(span(outcome)).as("seed %d", seed).isNegative();
        open += span(outcome) == -2 ? 1 : 0;
      }
    }
    assertThat(none).isGreaterThan(30);
    assertThat(open).as("not recognised").isLessThanOrEqualTo(0);
  }

  private static Project read(ProjectText.Format format, String text) {
    return ProjectText.read(format, text).project().orElseThrow();
  }

  @Test
  void optimaKnownByHandAreFoundAndProved() {
    ProjectSchedule.Found nine =
        found(run(read(ProjectText.Format.SM, ProjectTexts.NINE_SM), 1, 300));
    assertThat(nine.makespan()).isEqualTo(9);
    assertThat(nine.isOptimal()).isTrue();
    assertThat(new ScheduleChecker(ProjectTexts.NINE_SM, true).wrong(nine.starts(), 9)).isEmpty();
    ProjectSchedule.Found ten =
        found(run(read(ProjectText.Format.SCH, ProjectTexts.TEN_SCH), 1, 300));
    assertThat(ten.makespan()).isEqualTo(10);
    assertThat(ten.isOptimal()).isTrue();
    assertThat(new ScheduleChecker(ProjectTexts.TEN_SCH, false).wrong(ten.starts(), 10)).isEmpty();
  }

  @Test
  void theCheckerSeesWhatIsWrong() {
    ScheduleChecker checker = new ScheduleChecker(ProjectTexts.TEN_SCH, false);
    assertThat(checker.wrong(new int[] {0, 0, 2, 5, 10}, 10)).isEmpty();
    assertThat(checker.wrong(new int[] {0, 0, 2, 4, 10}, 10)).isNotEmpty();
    assertThat(checker.wrong(new int[] {0, 0, 4, 7, 12}, 12)).hasSize(1);
    assertThat(checker.wrong(new int[] {0, 0, 2, 5, 10}, 9)).hasSize(1);
    assertThat(checker.wrong(new int[] {1, 1, 3, 6, 11}, 11)).hasSize(1);
  }

  @Test
  void theSameSeedGivesTheSameStartsAndTheListenerOnlyHearsOfShorterOnes() {
    for (int seed = 0; seed < 6; seed++) {
      Project project = middling(seed, seed % 2 == 0);
      List<Integer> told = new ArrayList<>();
      ProjectSchedule.Found one =
          found(
              ProjectSchedule.of(
                  project,
                  new ProjectSchedule.Budget(seed, 300, () -> true),
                  (makespan, starts) -> told.add(makespan)));
      ProjectSchedule.Found other = found(run(project, seed, 300));
      assertThat(other.starts()).containsExactly(one.starts());
      assertThat(told).isSortedAccordingTo((a, b) -> b - a).doesNotHaveDuplicates();
      assertThat(told.get(told.size() - 1)).isEqualTo(one.makespan());
      assertThat(project.makespan(one.starts())).isEqualTo(one.makespan());
    }
  }

  @Test
  void moreIterationsAreNeverWorse() {
    Project project = middling(3, true);
    int few = span(run(project, 5, 20));
    assertThat(span(run(project, 5, 400))).isLessThanOrEqualTo(few);
  }

  /** Arcs in another order, activities under other numbers: the same optimum. */
  @Test
  void theOrderOfTheInputDoesNotMatterForTheOptimum() {
    for (int seed = 0; seed < 60; seed++) {
      Project project = TinyProjects.random(seed, true);
      assertThat(span(run(turned(project), 1, 400)))
          .as("seed %d", seed)
          .isEqualTo(span(run(project, 1, 400)));
    }
  }

  @Test
  void theGuardStopsItAndABudgetOfOneIsEnough() {
    Project project = middling(1, false);
    AtomicInteger asked = new AtomicInteger();
    ProjectSchedule.Found stopped =
        found(
            ProjectSchedule.of(
                project,
                new ProjectSchedule.Budget(1, 1_000_000, () -> asked.incrementAndGet() < 10)));
    assertThat(stopped.iterations()).isLessThan(15);
    assertThat(found(run(project, 1, 1)).iterations()).isLessThanOrEqualTo(2);
  }

  /** Nine resources of 60,000 need several words; four of eleven at a time make three rounds. */
  @Test
  void manyResourcesAndLargeNumbersAreKept() {
    int n = 12;
    int[] durations = new int[n];
    int[][] demands = new int[n][9];
    int[] capacities = new int[9];
    Arrays.fill(capacities, 60_000);
    for (int i = 1; i < n; i++) {
      durations[i] = 5;
      demands[i][i % 9] = 60_000;
      demands[i][8] = 15_000;
    }
    Project project = new Project(0, durations, demands, capacities, List.of());
    assertThat(span(run(project, 1, 200))).isEqualTo(15);
  }

  /** Activities 1 and on backwards, arcs backwards. */
  private static Project turned(Project project) {
    int n = project.size();
    int[] durations = new int[n];
    int[][] demands = new int[n][project.resources()];
    int[] capacities = new int[project.resources()];
    Arrays.setAll(capacities, project::capacity);
    for (int i = 0; i < n; i++) {
      int from = i;
      durations[turned(i, n)] = project.duration(i);
      Arrays.setAll(demands[turned(i, n)], r -> project.demand(from, r));
    }
    List<Project.Arc> arcs = new ArrayList<>();
    for (Project.Arc arc : project.arcs()) {
      arcs.add(0, new Project.Arc(turned(arc.from(), n), turned(arc.to(), n), arc.length()));
    }
    return new Project(0, durations, demands, capacities, arcs);
  }

  private static int turned(int activity, int n) {
    return activity == 0 ? 0 : n - activity;
  }

  /** Thirty activities, in threes, each three with maximum lags if wanted. */
  private static Project middling(long seed, boolean maximumLags) {
    SplittableRandom random = new SplittableRandom(seed);
    int n = 32;
    int[] durations = new int[n];
    int[][] demands = new int[n][2];
    List<Project.Arc> arcs = new ArrayList<>();
    for (int i = 1; i < n; i++) {
      durations[i] = i == n - 1 ? 0 : 1 + random.nextInt(6);
      demands[i] = i == n - 1 ? demands[i] : new int[] {random.nextInt(4), random.nextInt(4)};
      if (i % 3 != 1 && i < n - 1) {
        arcs.add(new Project.Arc(i - 1, i, durations[i - 1]));
        if (maximumLags) {
          arcs.add(new Project.Arc(i, i - 1, -durations[i - 1] - random.nextInt(4)));
        }
      }
    }
    for (int i = 1; i < n - 1; i++) {
      arcs.add(new Project.Arc(i, n - 1, durations[i]));
    }
    return new Project(0, durations, demands, new int[] {4, 5}, arcs);
  }
}
