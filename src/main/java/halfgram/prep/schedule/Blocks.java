package halfgram.prep.schedule;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Jobs that go in together: those that a short longest time ties to each other. A longest time with
 * much room (a batch that keeps for days) is a window from what is placed, so that a batch for
 * several dishes does not glue them into one block.
 */
final class Blocks {
  /** A longest time with more room than this does not tie. */
  static final int ROOM = 18;

  private static final int APART = Integer.MIN_VALUE / 4;

  /** Jobs of each block, what comes first first. */
  final int[][] jobs;

  /** The block of each job. */
  final int[] of;

  /** Blocks in the order in which a first plan puts them: earliest due first, users first. */
  final int[] order;

  /** Slots that a block can move at most between what it waits for and what waits for it. */
  final int[] room;

  /** With less room than this a block goes in before the others. */
  private static final int TIGHT = 24;

  /** From start to start at least, by block, by place in the block. */
  private final int[][][] gap;

  private final Layout layout;

  Blocks(Layout layout) {
    this.layout = layout;
    of = new int[layout.size];
    int[] root = new int[layout.size];
    for (int j = 0; j < root.length; j++) {
      root[j] = j;
    }
    for (Between lag : layout.day.lags()) {
      if (ties(lag)) {
        int a = find(root, lag.from());
        int b = find(root, lag.to());
        root[Math.max(a, b)] = Math.min(a, b);
      }
    }
    List<List<Integer>> found = new ArrayList<>();
    int[] number = new int[layout.size];
    Arrays.fill(number, -1);
    for (int j = 0; j < root.length; j++) {
      int top = find(root, j);
      if (number[top] < 0) {
        number[top] = found.size();
        found.add(new ArrayList<>());
      }
      of[j] = number[top];
      found.get(of[j]).add(j);
    }
    jobs = new int[found.size()][];
    gap = new int[jobs.length][][];
    for (int b = 0; b < jobs.length; b++) {
      jobs[b] = inOrder(found.get(b));
      gap[b] = gaps(jobs[b]);
    }
    room = new int[jobs.length];
    order = order();
  }

  static boolean ties(Between lag) {
    return lag.max().isPresent() && lag.max().getAsInt() - lag.min() <= ROOM;
  }

  private static int find(int[] root, int j) {
    int at = j;
    while (root[at] != at) {
      root[at] = root[root[at]];
      at = root[at];
    }
    return at;
  }

  private int[] inOrder(List<Integer> some) {
    return some.stream()
        .sorted(
            Comparator.<Integer>comparingInt(j -> layout.head[j])
                .thenComparingInt(j -> layout.head[j] + layout.length[j])
                .thenComparing(Comparator.naturalOrder()))
        .mapToInt(Integer::intValue)
        .toArray();
  }

  /** Longest paths from start to start within a block. */
  private int[][] gaps(int[] some) {
    int n = some.length;
    int[][] d = new int[n][n];
    for (int i = 0; i < n; i++) {
      Arrays.fill(d[i], APART);
      d[i][i] = 0;
      for (Between lag : layout.out[some[i]]) {
        for (int k = 0; k < n; k++) {
          if (some[k] == lag.to()) {
            d[i][k] = Math.max(d[i][k], layout.length[some[i]] + lag.min());
          }
        }
      }
    }
    for (int i = 0; i < n; i++) {
      for (Between lag : layout.out[some[i]]) {
        if (layout.isHard(lag)) {
          for (int k = 0; k < n; k++) {
            if (some[k] == lag.to()) {
              d[k][i] = Math.max(d[k][i], -layout.length[some[i]] - lag.max().getAsInt());
            }
          }
        }
      }
    }
    for (int k = 0; k < n; k++) {
      for (int i = 0; i < n; i++) {
        for (int j = 0; d[i][k] > APART && j < n; j++) {
          if (d[k][j] > APART) {
            d[i][j] = Math.max(d[i][j], d[i][k] + d[k][j]);
          }
        }
      }
    }
    return d;
  }

  /** At least so many slots from the start of one job of a block to that of another; or hardly. */
  int gap(int block, int from, int to) {
    return gap[block][from][to];
  }

  /** Whether lags within a block contradict each other. */
  boolean isContradictory(int block) {
    for (int i = 0; i < jobs[block].length; i++) {
      if (gap[block][i][i] > 0) {
        return true;
      }
    }
    return false;
  }

  private int[] order() {
    int[] due = new int[jobs.length];
    int[] last = new int[jobs.length];
    for (int b = 0; b < jobs.length; b++) {
      due[b] = Layout.NEVER;
      room[b] = Layout.NEVER;
      for (int j : jobs[b]) {
        due[b] = Math.min(due[b], servedBy(j));
        last[b] = Math.max(last[b], layout.target[j]);
        room[b] = Math.min(room[b], layout.target[j] - layout.head[j] - layout.length[j]);
      }
    }
    return java.util.stream.IntStream.range(0, jobs.length)
        .boxed()
        .sorted(
            Comparator.<Integer>comparingInt(b -> hasFixed(b) ? 0 : 1)
                .thenComparingInt(b -> room[b] < TIGHT ? 0 : 1)
                .thenComparingInt(b -> due[b])
                .thenComparingInt(b -> -last[b])
                .thenComparingInt(b -> -jobs[b].length)
                .thenComparing(Comparator.naturalOrder()))
        .mapToInt(Integer::intValue)
        .toArray();
  }

  /** The first due time that waits for a job. */
  private int servedBy(int j) {
    int[] seen = dues();
    return seen[j];
  }

  private int[] known = {};

  private int[] dues() {
    if (known.length == layout.size) {
      return known;
    }
    known = layout.due.clone();
    boolean moved = true;
    for (int round = 0; moved && round <= layout.size; round++) {
      moved = false;
      for (Between lag : layout.day.lags()) {
        if (known[lag.to()] < known[lag.from()]) {
          known[lag.from()] = known[lag.to()];
          moved = true;
        }
      }
    }
    return known;
  }

  /** Whether nothing of a block can move. */
  boolean isFixed(int block) {
    for (int j : jobs[block]) {
      if (!layout.isFixed(j)) {
        return false;
      }
    }
    return true;
  }

  boolean hasFixed(int block) {
    for (int j : jobs[block]) {
      if (layout.isFixed(j)) {
        return true;
      }
    }
    return false;
  }
}
