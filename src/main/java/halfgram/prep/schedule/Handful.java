package halfgram.prep.schedule;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/** A few jobs that are off a plan together: which, in which order they go back, where they were. */
final class Handful {
  static final int MOST = 14;

  /** How many links of what goes into a dish come out with it, less one, at most. */
  private static final int DEPTH = 5;

  /** Slots between dishes whose work is about the same time. */
  private static final int ABOUT = 40;

  private final Layout layout;
  private final Blocks blocks;
  private final Costs costs;
  private final Grid grid;
  private final Ruin ruin;
  private final SplittableRandom random;
  private final int[] movable;

  /** Jobs that should have ended at some time. */
  private final int[] finals;

  /** The jobs in their order; those from {@link #count} on mean nothing. */
  final int[] jobs = new int[MOST];

  int count;
  final boolean[] isIn;
  private final int[] oldStart = new int[MOST];
  private final int[][] oldCooks = new int[MOST][];
  private final int[][] oldUnits = new int[MOST][];

  /**
   * @param movable blocks of which something can move
   */
  Handful(
      Grid grid, Blocks blocks, Costs costs, Ruin ruin, int[] movable, SplittableRandom random) {
    this.layout = grid.layout;
    this.grid = grid;
    this.blocks = blocks;
    this.costs = costs;
    this.ruin = ruin;
    this.movable = movable;
    this.random = random;
    int[] due =
        IntStream.range(0, layout.size)
            .filter(j -> layout.due[j] != Layout.NEVER && !layout.isFixed(j))
            .toArray();
    finals =
        due.length > 0
            ? due
            : Arrays.stream(movable).map(b -> blocks.jobs[b][blocks.jobs[b].length - 1]).toArray();
    isIn = new boolean[layout.size];
  }

  /** Takes them off. */
  void takeOff() {
    for (int i = 0; i < count; i++) {
      int j = jobs[i];
      oldStart[i] = grid.start[j];
      oldCooks[i] = grid.cooks[j];
      oldUnits[i] = grid.units[j];
      if (grid.start[j] >= 0) {
        grid.remove(j);
      }
    }
  }

  /** No jobs. */
  void clear() {
    for (int i = 0; i < count; i++) {
      isIn[jobs[i]] = false;
    }
    count = 0;
  }

  /** Dishes about one time with what goes in; or what a ruin would take out. */
  void choose() {
    if (random.nextInt(4) == 0) {
      for (int b : ruin.choose(movable, false)) {
        for (int j : blocks.jobs[b]) {
          add(j);
        }
      }
      return;
    }
    int dish = aFinal();
    if (random.nextBoolean()) {
      int other = aFinal();
      dish = costOf(other) > costOf(dish) ? other : dish;
    }
    dish(dish, random.nextInt(DEPTH));
    for (int more = random.nextInt(3); more > 0; more--) {
      int other = aFinal();
      if (Math.abs(grid.start[other] - grid.start[dish]) < ABOUT) {
        dish(other, random.nextInt(DEPTH));
      }
    }
    for (int more = count == 0 ? 0 : random.nextInt(4); more > 0; more--) {
      beside(jobs[random.nextInt(count)]);
    }
  }

  private int aFinal() {
    return finals[random.nextInt(finals.length)];
  }

  private long costOf(int j) {
    return grid.start[j] < 0 ? layout.day.prices().leftOut() : costs.around(grid, j, grid.start[j]);
  }

  private void add(int j) {
    if (count < MOST && !isIn[j] && !layout.isFixed(j)) {
      isIn[j] = true;
      jobs[count++] = j;
    }
  }

  private void dish(int j, int depth) {
    add(j);
    if (depth == 0 || count == MOST) {
      return;
    }
    for (Between lag : layout.in[j]) {
      if (random.nextInt(5) > 0) {
        dish(lag.from(), depth - 1);
      }
    }
  }

  /** The nearest in time of a few by chance. */
  private void beside(int j) {
    int nearest = -1;
    for (int i = 0; i < 8; i++) {
      int other = random.nextInt(layout.size);
      if (!isIn[other]
          && grid.start[other] >= 0
          && (nearest < 0 || apart(other, j) < apart(nearest, j))) {
        nearest = other;
      }
    }
    if (nearest >= 0) {
      add(nearest);
    }
  }

  private int apart(int a, int b) {
    return Math.abs(grid.start[a] - grid.start[b]);
  }

  /** By chance, or the latest first, or dish by dish; what waits for a job always before it. */
  void order() {
    for (int i = count - 1; i > 0; i--) {
      swap(i, random.nextInt(i + 1));
    }
    int by = random.nextInt(3);
    for (int i = 0; by == 0 && i < count; i++) {
      for (int k = i; k > 0 && layout.target[jobs[k]] > layout.target[jobs[k - 1]]; k--) {
        swap(k, k - 1);
      }
    }
    for (int done = 0; done < count; done++) {
      int next = next(done, by == 1);
      for (int k = next; k > done; k--) {
        swap(k, k - 1);
      }
    }
  }

  private void swap(int i, int k) {
    int job = jobs[i];
    jobs[i] = jobs[k];
    jobs[k] = job;
    int start = oldStart[i];
    oldStart[i] = oldStart[k];
    oldStart[k] = start;
    int[] cooks = oldCooks[i];
    oldCooks[i] = oldCooks[k];
    oldCooks[k] = cooks;
    int[] units = oldUnits[i];
    oldUnits[i] = oldUnits[k];
    oldUnits[k] = units;
  }

  /** Place of the next job, after those that have theirs; the first when all wait for another. */
  private int next(int done, boolean related) {
    int ready = -1;
    for (int i = done; i < count; i++) {
      int waiting = waiting(jobs[i], done, count);
      if (waiting == 0 && (ready < 0 || (related && waiting(jobs[i], 0, done) > 0))) {
        ready = i;
        if (!related || waiting(jobs[i], 0, done) > 0) {
          break;
        }
      }
    }
    return Math.max(ready, done);
  }

  /** How many of the jobs out, from one place to another, wait for a job. */
  private int waiting(int j, int from, int to) {
    int found = 0;
    for (Between lag : layout.out[j]) {
      for (int i = from; isIn[lag.to()] && i < to; i++) {
        found += jobs[i] == lag.to() ? 1 : 0;
      }
    }
    return found;
  }

  /** What they cost, with what waits between them and the rest. */
  long cost() {
    long sum = 0;
    for (int i = 0; i < count; i++) {
      int j = jobs[i];
      sum += costs.ofPlaced(j, grid.start[j], grid.cooks[j]);
      if (grid.start[j] < 0) {
        continue;
      }
      for (Between lag : layout.out[j]) {
        if (grid.start[lag.to()] >= 0) {
          sum += costs.ofLag(lag, grid.start[j], grid.start[lag.to()]);
        }
      }
      for (Between lag : layout.in[j]) {
        if (!isIn[lag.from()] && grid.start[lag.from()] >= 0) {
          sum += costs.ofLag(lag, grid.start[lag.from()], grid.start[j]);
        }
      }
    }
    return sum;
  }

  /** Everything as it was. */
  void putBack() {
    for (int i = 0; i < count; i++) {
      if (grid.start[jobs[i]] >= 0) {
        grid.remove(jobs[i]);
      }
    }
    for (int i = 0; i < count; i++) {
      if (oldStart[i] >= 0) {
        grid.put(jobs[i], oldStart[i], oldCooks[i], oldUnits[i]);
      }
    }
  }
}
