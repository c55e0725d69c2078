package halfgram.prep.schedule.project;

import java.util.Arrays;

/**
 * Serial schedule generation for projects with maximum lags: each activity of a list at its
 * earliest start that the activities scheduled before it and the resources leave. Where a maximum
 * lag leaves none, the activities that set it are pushed later, they and what starts after them are
 * taken out again, and it goes on.
 *
 * <p>Source: B. Franck, K. Neumann, C. Schwindt, Truncated branch-and-bound, schedule-construction
 * and schedule-improvement procedures for resource-constrained project scheduling, OR Spektrum 23
 * (2001).
 */
final class LagGeneration {
  private final int n;
  private final int horizon;
  private final int[] durations;
  private final Timetable timetable;

  /** {@code lags[i][j]}: j at least so long after i; {@code back[i][j]}: the same of j and i. */
  private final int[][] lags;

  private final int[][] back;
  private final int[] floors;
  private final int[] ceilings;
  private final int[][] before;

  private final int[] raised;
  private final int[] least;
  private final int[] most;
  private final boolean[] placed;
  private final boolean[] seen;
  private final int[] list;
  private int failed;

  private LagGeneration(
      Project project, int[][] lags, int[] floors, int[] ceilings, Timetable timetable) {
    n = project.size();
    durations = new int[n];
    for (int i = 0; i < n; i++) {
      durations[i] = project.duration(i);
    }
    horizon = project.horizon();
    this.lags = lags;
    this.floors = floors;
    this.ceilings = ceilings;
    this.timetable = timetable;
    back = new int[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        back[i][j] = lags[j][i];
      }
    }
    before = before();
    raised = new int[n];
    least = new int[n];
    most = new int[n];
    placed = new boolean[n];
    seen = new boolean[n];
    list = new int[n];
  }

  static LagGeneration forward(Project project, Closure closure, Timetable timetable) {
    int n = project.size();
    int[][] lags = new int[n][n];
    int[] floors = new int[n];
    int[] ceilings = new int[n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        lags[i][j] = closure.get(i, j);
      }
      floors[i] = closure.get(0, i);
      int latest = closure.get(i, 0) == Closure.NONE ? project.horizon() : -closure.get(i, 0);
      ceilings[i] = Math.min(latest, project.horizon() - project.duration(i));
    }
    return new LagGeneration(project, lags, floors, ceilings, timetable);
  }

  /** As seen from the end: times count from the end back to an activity's completion. */
  static LagGeneration backward(Project project, Closure closure, Timetable timetable) {
    int n = project.size();
    int[][] lags = new int[n][n];
    int[] floors = new int[n];
    int[] ceilings = new int[n];
    for (int i = 0; i < n; i++) {
      ceilings[i] = project.horizon() - project.duration(i);
      for (int j = 0; j < n; j++) {
        int lag = closure.get(i, j);
        lags[j][i] = Closure.NONE;
        if (lag != Closure.NONE) {
          lags[j][i] = lag + project.duration(j) - project.duration(i);
          floors[i] = Math.max(floors[i], lags[j][i]);
        }
      }
    }
    return new LagGeneration(project, lags, floors, ceilings, timetable);
  }

  /** What comes strictly before each, without what comes before that. */
  private int[][] before() {
    boolean[][] strict = new boolean[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        strict[i][j] = i != j && (lags[i][j] > 0 || (lags[i][j] == 0 && lags[j][i] < 0));
      }
    }
    int[][] before = new int[n][];
    int[] room = new int[n];
    for (int j = 0; j < n; j++) {
      int count = 0;
      for (int i = 0; i < n; i++) {
        if (strict[i][j]) {
          boolean direct = true;
          for (int k = 0; k < n && direct; k++) {
            direct = !(strict[i][k] && strict[k][j]);
          }
          if (direct) {
            room[count++] = i;
          }
        }
      }
      before[j] = Arrays.copyOf(room, count);
    }
    return before;
  }

  int[] floors() {
    return floors.clone();
  }

  /** The activity at which the last attempt ended in vain. */
  int failed() {
    return failed;
  }

  /** Starts by a list; the makespan, or -1 when it came to no end. */
  int decode(int[] order, int[] starts) {
    Arrays.fill(seen, false);
    int done = 0;
    for (int i : order) {
      done = visit(i, done);
    }
    timetable.clear();
    System.arraycopy(floors, 0, raised, 0, n);
    System.arraycopy(floors, 0, least, 0, n);
    System.arraycopy(ceilings, 0, most, 0, n);
    Arrays.fill(placed, false);
    int left = 2 * n;
    int at = 0;
    while (at < n) {
      int j = list[at];
      if (placed[j]) {
        at++;
        continue;
      }
      int start = least[j] <= most[j] ? timetable.earliest(j, least[j], most[j]) : -1;
      if (start >= 0) {
        place(j, start, starts);
        at++;
      } else if (--left < 0 || !unschedule(j, starts)) {
        failed = j;
        return -1;
      } else {
        at = 0;
      }
    }
    int span = 0;
    for (int i = 0; i < n; i++) {
      span = Math.max(span, starts[i] + durations[i]);
    }
    return span;
  }

  private int visit(int activity, int at) {
    if (seen[activity]) {
      return at;
    }
    seen[activity] = true;
    int done = at;
    for (int i : before[activity]) {
      done = visit(i, done);
    }
    list[done] = activity;
    return done + 1;
  }

  private void place(int j, int start, int[] starts) {
    starts[j] = start;
    placed[j] = true;
    timetable.take(j, start);
    narrow(j, start);
  }

  private void narrow(int j, int start) {
    int[] after = lags[j];
    int[] ahead = back[j];
    for (int k = 0; k < n; k++) {
      least[k] = Math.max(least[k], start + after[k]);
      most[k] = Math.min(most[k], start - ahead[k]);
    }
  }

  /** Makes room for an activity that came too late for what was placed before it. */
  private boolean unschedule(int j, int[] starts) {
    int wanted = timetable.earliest(j, least[j], horizon - durations[j]);
    if (wanted < 0 || wanted > ceilings[j]) {
      return false;
    }
    int first = Integer.MAX_VALUE;
    for (int i = 0; i < n; i++) {
      if (placed[i] && starts[i] < wanted + lags[j][i]) {
        first = Math.min(first, starts[i]);
        raised[i] = wanted + lags[j][i];
        if (raised[i] > ceilings[i]) {
          return false;
        }
      }
    }
    for (int i = 0; i < n; i++) {
      if (placed[i] && (starts[i] > first || starts[i] < raised[i])) {
        timetable.give(i, starts[i]);
        placed[i] = false;
      }
    }
    System.arraycopy(raised, 0, least, 0, n);
    System.arraycopy(ceilings, 0, most, 0, n);
    for (int i = 0; i < n; i++) {
      if (placed[i]) {
        narrow(i, starts[i]);
      }
    }
    return true;
  }
}
