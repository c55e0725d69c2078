package halfgram.prep.schedule.project;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.SplittableRandom;

/** Random projects so small that every schedule of them can be looked at. */
final class TinyProjects {
  private TinyProjects() {}

  /** Four or five activities between a start and an end, as arcs and numbers. */
  static Project random(long seed, boolean maximumLags) {
    SplittableRandom random = new SplittableRandom(seed);
    int n = 6 + random.nextInt(2);
    int resources = 1 + random.nextInt(2);
    int[] durations = new int[n];
    int[][] demands = new int[n][resources];
    int[] capacities = new int[resources];
    Arrays.setAll(capacities, r -> 2 + random.nextInt(3));
    List<Project.Arc> arcs = new ArrayList<>();
    for (int i = 1; i < n - 1; i++) {
      durations[i] = 1 + random.nextInt(3);
      for (int r = 0; r < resources; r++) {
        demands[i][r] = random.nextInt(capacities[r] + 1);
      }
      arcs.add(new Project.Arc(0, i, random.nextInt(6) == 0 ? 1 : 0));
      arcs.add(new Project.Arc(i, n - 1, durations[i]));
      for (int j = i + 1; j < n - 1; j++) {
        if (random.nextInt(3) == 0) {
          int lag = maximumLags ? random.nextInt(4) : durations[i];
          arcs.add(new Project.Arc(i, j, lag));
        }
        if (maximumLags && random.nextInt(4) == 0) {
          arcs.add(new Project.Arc(j, i, -random.nextInt(5)));
        }
      }
    }
    return new Project(0, durations, demands, capacities, arcs);
  }

  /** The shortest makespan of all schedules there are; nothing when there is none. */
  static OptionalInt shortest(Project project) {
    int end = 0;
    for (int i = 0; i < project.size(); i++) {
      int longest = project.duration(i);
      for (Project.Arc arc : project.arcs()) {
        longest = arc.from() == i ? Math.max(longest, arc.length()) : longest;
      }
      end += longest;
    }
    int best = place(project, new int[project.size()], 0, 0, end + 1);
    return best > end ? OptionalInt.empty() : OptionalInt.of(best);
  }

  /** Tries every start of activity {@code next} and on; below {@code best}, or that. */
  private static int place(Project project, int[] starts, int next, int end, int best) {
    if (next == project.size()) {
      return end;
    }
    int shortest = best;
    int last = next == 0 ? 0 : best - 1 - project.duration(next);
    for (int start = 0; start <= last && start + project.duration(next) < shortest; start++) {
      starts[next] = start;
      if (fits(project, starts, next)) {
        int after = Math.max(end, start + project.duration(next));
        shortest = Math.min(shortest, place(project, starts, next + 1, after, shortest));
      }
    }
    return shortest;
  }

  /** Whether an activity suits those before it. */
  private static boolean fits(Project project, int[] starts, int last) {
    for (Project.Arc arc : project.arcs()) {
      if (Math.max(arc.from(), arc.to()) == last
          && starts[arc.to()] < starts[arc.from()] + arc.length()) {
        return false;
      }
    }
    for (int t = starts[last]; t < starts[last] + project.duration(last); t++) {
      for (int r = 0; r < project.resources(); r++) {
        int used = 0;
        for (int i = 0; i <= last; i++) {
          if (starts[i] <= t && t < starts[i] + project.duration(i)) {
            used += project.demand(i, r);
          }
        }
        if (used > project.capacity(r)) {
          return false;
        }
      }
    }
    return true;
  }
}
