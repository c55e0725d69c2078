package halfgram.prep.schedule;

import halfgram.prep.schedule.project.ProjectSchedule;
import halfgram.prep.schedule.project.PublishedProjects;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * A published set of projects, one second each with both threads: how many got a schedule, and how
 * far it is above the best known after 0.2 s and after 1 s. Every schedule is held against its text
 * by the checker, which shares nothing with the engine, before it counts; a wrong one ends the run.
 * What is known to have no schedule must be recognised, and nothing else.
 *
 * <p>The sets lie where {@link PublishedProjects} says; a set that is not there is not measured.
 * Seconds are wall time: the iterations printed say how much of it the machine gave.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(1)
@Warmup(iterations = 0)
@Measurement(iterations = 1)
public class ProjectBench {
  private static final double[] SECONDS = {0.2, 1};
  private static final int WARMED_BY = 4;

  @Param({"j30", "j60", "ubo10", "ubo20", "ubo50", "sm_j10", "sm_j20"})
  public String set;

  private List<PublishedProjects.One> projects = List.of();

  @Setup
  public void read() {
    projects = PublishedProjects.of(set);
    projects.stream().limit(WARMED_BY).forEach(one -> new Run(one).measure());
  }

  @Benchmark
  public int measured() {
    List<Run> runs = projects.stream().map(Run::new).toList();
    runs.forEach(Run::measure);
    List<Run> feasible = runs.stream().filter(run -> run.one.best().isPresent()).toList();
    List<Run> infeasible = runs.stream().filter(run -> run.one.best().isEmpty()).toList();
    StringBuilder said = new StringBuilder();
    said.append("%n%s: %d projects with a schedule".formatted(set, feasible.size()));
    for (int k = 0; k < SECONDS.length; k++) {
      int at = k;
      List<Run> solved =
          feasible.stream().filter(run -> run.spans[at] < Integer.MAX_VALUE).toList();
      said.append(
          "; after %.1f s %d solved, mean gap %.2f %%"
              .formatted(
                  SECONDS[k],
                  solved.size(),
                  solved.stream().mapToDouble(run -> run.gap(at)).average().orElse(0)));
    }
    said.append(
        ("; %d as good as known or better, %d proved, %d refused (false alarms);"
                + " %.0f iterations each")
            .formatted(
                feasible.stream().filter(run -> run.gap(SECONDS.length - 1) <= 0).count(),
                feasible.stream().filter(run -> run.isProved).count(),
                feasible.stream().filter(run -> run.isRefused).count(),
                feasible.stream().mapToLong(run -> run.iterations).average().orElse(0)));
    said.append(
        "; without a schedule %d, recognised %d"
            .formatted(
                infeasible.size(), infeasible.stream().filter(run -> run.isRefused).count()));
    System.out.println(said);
    feasible.stream()
        .filter(run -> run.gap(SECONDS.length - 1) != 0)
        .forEach(run -> System.out.println("  " + run));
    return runs.size();
  }

  /** One project measured. */
  private static final class Run {
    private final PublishedProjects.One one;
    private final int[] spans = new int[SECONDS.length];
    private final List<int[]> found = new ArrayList<>();
    private boolean isProved;
    private boolean isRefused;
    private long iterations;

    Run(PublishedProjects.One one) {
      this.one = one;
      Arrays.fill(spans, Integer.MAX_VALUE);
    }

    void measure() {
      var project = one.project();
      long begin = System.nanoTime();
      long end = begin + (long) (SECONDS[SECONDS.length - 1] * 1e9);
      ProjectSchedule.of(
              project,
              new ProjectSchedule.Budget(1, Long.MAX_VALUE, () -> System.nanoTime() < end),
              (makespan, starts) -> {
                double seconds = (System.nanoTime() - begin) / 1e9;
                for (int k = 0; k < SECONDS.length; k++) {
                  spans[k] = seconds <= SECONDS[k] ? makespan : spans[k];
                }
                found.add(starts);
              })
          .<Boolean>fold(
              best -> {
                isProved = best.isOptimal();
                iterations = best.iterations();
                return true;
              },
              impossible -> isRefused = true,
              open -> false);
      for (int[] starts : found) {
        List<String> wrong = one.checker().wrong(starts, project.makespan(starts));
        if (!wrong.isEmpty()) {
          throw new IllegalStateException(one.name() + ": " + wrong);
        }
      }
    }

    double gap(int k) {
      int best = one.best().orElseThrow();
      return 100.0 * (spans[k] - best) / best;
    }

    @Override
    public String toString() {
      return "%s: best known %d, found %s, %d iterations"
          .formatted(one.name(), one.best().orElseThrow(), Arrays.toString(spans), iterations);
    }
  }
}
