package halfgram.prep.schedule.project;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * A project without maximum lags, seen from its start or from its end: what comes before each
 * activity and by how much. Seen from the end, an activity's time counts from the end of the whole
 * back to its completion, so that scheduling early is scheduling late.
 */
final class Direction {
  private final int size;
  private final int[] head;
  private final int[] before;
  private final int[] lag;

  /** All activities, each after everything that comes before it. */
  private final int[] base;

  /** Whether every lag is at least a duration, so that starts and completions sort well. */
  private final boolean followsTime;

  private final int[] room;
  private final boolean[] seen;

  private Direction(int size, int[] head, int[] before, int[] lag, boolean followsTime) {
    this.size = size;
    this.followsTime = followsTime;
    this.room = new int[size];
    this.seen = new boolean[size];
    this.head = head;
    this.before = before;
    this.lag = lag;
    this.base = sorted();
  }

  /**
   * From the start; nothing for a project with maximum lags, or whose arcs come back to where they
   * begin.
   */
  static Optional<Direction> forward(Project project) {
    return project.arcs().stream().anyMatch(arc -> arc.length() < 0)
        ? Optional.empty()
        : some(of(project, arcs(project)));
  }

  /** From the end. */
  static Optional<Direction> backward(Project project) {
    return some(
        of(
            project,
            arcs(project).stream()
                .map(
                    arc ->
                        new Project.Arc(
                            arc.to(),
                            arc.from(),
                            arc.length()
                                + project.duration(arc.to())
                                - project.duration(arc.from())))
                .toList()));
  }

  /** The project's arcs, and that what no arc goes to does not start before activity 0. */
  private static List<Project.Arc> arcs(Project project) {
    boolean[] reached = new boolean[project.size()];
    project.arcs().forEach(arc -> reached[arc.to()] = true);
    return Stream.concat(
            project.arcs().stream(),
            IntStream.range(0, project.size())
                .filter(i -> i == 0 ? reached[0] : !reached[i])
                .mapToObj(i -> new Project.Arc(0, i, 0)))
        .toList();
  }

  private static Optional<Direction> some(Direction direction) {
    return direction.base.length == direction.size ? Optional.of(direction) : Optional.empty();
  }

  private static Direction of(Project project, List<Project.Arc> arcs) {
    int n = project.size();
    int[] head = new int[n + 1];
    arcs.forEach(arc -> head[arc.to() + 1]++);
    for (int i = 0; i < n; i++) {
      head[i + 1] += head[i];
    }
    int[] next = Arrays.copyOf(head, n);
    int[] before = new int[arcs.size()];
    int[] lag = new int[arcs.size()];
    for (Project.Arc arc : arcs) {
      int at = next[arc.to()]++;
      before[at] = arc.from();
      lag[at] = arc.length();
    }
    boolean followsTime =
        arcs.stream().allMatch(arc -> arc.length() >= project.duration(arc.from()));
    return new Direction(n, head, before, lag, followsTime);
  }

  /** A topological order as far as there is one. */
  private int[] sorted() {
    int[] open = new int[size];
    int[][] after = new int[size][];
    int[] count = new int[size];
    for (int k = 0; k < before.length; k++) {
      count[before[k]]++;
    }
    Arrays.setAll(after, i -> new int[count[i]]);
    for (int i = 0; i < size; i++) {
      open[i] = head[i + 1] - head[i];
      for (int k = head[i]; k < head[i + 1]; k++) {
        after[before[k]][--count[before[k]]] = i;
      }
    }
    Deque<Integer> ready = new ArrayDeque<>();
    for (int i = 0; i < size; i++) {
      if (open[i] == 0) {
        ready.add(i);
      }
    }
    int[] order = new int[size];
    int done = 0;
    while (!ready.isEmpty()) {
      int i = ready.remove();
      order[done++] = i;
      for (int j : after[i]) {
        if (--open[j] == 0) {
          ready.add(j);
        }
      }
    }
    return Arrays.copyOf(order, done);
  }

  int[] base() {
    return base.clone();
  }

  /** The earliest start by what came before, which has to have its start already. */
  int floor(int activity, int[] starts) {
    int floor = 0;
    for (int k = head[activity]; k < head[activity + 1]; k++) {
      floor = Math.max(floor, starts[before[k]] + lag[k]);
    }
    return floor;
  }

  /** Earliest starts without regard to resources. */
  int[] floors() {
    int[] starts = new int[size];
    for (int i : base) {
      starts[i] = floor(i, starts);
    }
    return starts;
  }

  /** {@link #repair}, where lags shorter than durations make it necessary. */
  void repairIfNeeded(int[] order) {
    if (!followsTime) {
      repair(order);
    }
  }

  /** Puts what comes before an activity right before it, where it does not stand before already. */
  void repair(int[] order) {
    Arrays.fill(seen, false);
    int done = 0;
    for (int i : order) {
      done = visit(i, done);
    }
    System.arraycopy(room, 0, order, 0, size);
  }

  private int visit(int activity, int at) {
    if (seen[activity]) {
      return at;
    }
    seen[activity] = true;
    int done = at;
    for (int k = head[activity]; k < head[activity + 1]; k++) {
      done = visit(before[k], done);
    }
    room[done] = activity;
    return done + 1;
  }
}
