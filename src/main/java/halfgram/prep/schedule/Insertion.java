package halfgram.prep.schedule;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * Puts a block on a grid: times for its last job in the order of what they cost; for each, the
 * others from the end backwards, latest first, going back over a choice where it leads nowhere.
 */
final class Insertion {
  private static final int SUCCESSES = 3;
  private static final int CHOICES = 3;

  /** Slots that would cost more than what was found, after which no better is expected. */
  private static final int DEARER = 16;

  private final Layout layout;
  private final Blocks blocks;
  private final Costs costs;
  private final Grid grid;
  private final SplittableRandom random;
  private final Around around;
  private final Washing washing;

  private int block;
  private int[] jobs = {};
  private int[] low = {};
  private int[] high = {};
  private int[] sequence = {};
  private int backtracks;
  private int allowed = 12;
  private int anchors = 24;

  Insertion(Grid grid, Blocks blocks, Costs costs, Washing washing, SplittableRandom random) {
    this.layout = grid.layout;
    this.grid = grid;
    this.blocks = blocks;
    this.costs = costs;
    this.washing = washing;
    this.random = random;
    around = new Around(grid, costs);
  }

  /** Looks further before it gives up. */
  void patience(int times) {
    allowed = 12 * times;
    anchors = 24 * times;
  }

  /** Puts a block where it costs least of what was tried; false, and nothing put, if nowhere. */
  boolean insert(int b) {
    block = b;
    jobs = blocks.jobs[b];
    if (!windows()) {
      return false;
    }
    order();
    int anchor = sequence[0];
    int j = jobs[anchor];
    long best = Long.MAX_VALUE;
    long crew = costs.ofCrew(grid);
    int[] starts = new int[jobs.length];
    int[][] cooks = new int[jobs.length][];
    int[][] units = new int[jobs.length][];
    int successes = 0;
    int tries = 0;
    int dearer = 0;
    Outward times = new Outward(j, low[anchor], high[anchor]);
    for (int t = times.next(); t >= 0; t = times.next()) {
      if (times.cost() >= best - crew) {
        if (++dearer > DEARER) {
          break;
        }
        continue;
      }
      if (blink() || !grid.fits(j, t)) {
        continue;
      }
      if (tries++ == anchors) {
        break;
      }
      grid.place(j, t, random);
      backtracks = 0;
      if (others(1)) {
        boolean washed = washing.isSettled();
        long cost = washed ? cost() + costs.ofCrew(grid) : Long.MAX_VALUE;
        if (cost < best) {
          best = cost;
          for (int i = 0; i < jobs.length; i++) {
            starts[i] = grid.start[jobs[i]];
            cooks[i] = grid.cooks[jobs[i]];
            units[i] = grid.units[jobs[i]];
          }
        }
        for (int i = 0; i < jobs.length; i++) {
          if (!layout.isFixed(jobs[i])) {
            grid.remove(jobs[i]);
          }
        }
        if (washed && ++successes == SUCCESSES) {
          break;
        }
      } else {
        grid.remove(j);
      }
    }
    if (successes == 0) {
      return false;
    }
    for (int i = 0; i < jobs.length; i++) {
      if (!layout.isFixed(jobs[i])) {
        grid.put(jobs[i], starts[i], cooks[i], units[i]);
      }
    }
    return true;
  }

  /** Now and then a slot is passed over, so that not always the same is tried. */
  private boolean blink() {
    return random.nextInt(BLINK) == 0;
  }

  private static final int BLINK = 30;

  /** From when to when each job may start: by what is placed, and by the others of its block. */
  private boolean windows() {
    int n = jobs.length;
    low = new int[n];
    high = new int[n];
    for (int i = 0; i < n; i++) {
      int j = jobs[i];
      if (layout.isFixed(j)) {
        low[i] = layout.fixed[j];
        high[i] = layout.fixed[j];
        continue;
      }
      low[i] = layout.head[j];
      high[i] = layout.slots - layout.length[j];
      for (Between lag : layout.in[j]) {
        int from = grid.start[lag.from()];
        if (from >= 0) {
          int end = from + layout.length[lag.from()];
          low[i] = Math.max(low[i], end + lag.min());
          if (layout.isHard(lag)) {
            high[i] = Math.min(high[i], end + lag.max().getAsInt());
          }
        }
      }
      for (Between lag : layout.out[j]) {
        int to = grid.start[lag.to()];
        if (to >= 0) {
          high[i] = Math.min(high[i], to - lag.min() - layout.length[j]);
          if (layout.isHard(lag)) {
            low[i] = Math.max(low[i], to - lag.max().getAsInt() - layout.length[j]);
          }
        }
      }
    }
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < n; k++) {
        if (!layout.isFixed(jobs[k])) {
          low[k] = Math.max(low[k], low[i] + blocks.gap(block, i, k));
        }
        if (!layout.isFixed(jobs[i])) {
          high[i] = Math.min(high[i], high[k] - blocks.gap(block, i, k));
        }
      }
    }
    for (int i = 0; i < n; i++) {
      if (low[i] > high[i]) {
        return false;
      }
    }
    return true;
  }

  /** The last job first, then backwards; those that do not move are already there. */
  private void order() {
    sequence = new int[jobs.length];
    int count = 0;
    for (int i = jobs.length - 1; i >= 0; i--) {
      if (!layout.isFixed(jobs[i])) {
        sequence[count++] = i;
      }
    }
    sequence = Arrays.copyOf(sequence, count);
  }

  private boolean others(int depth) {
    if (depth == sequence.length) {
      return true;
    }
    int i = sequence[depth];
    int j = jobs[i];
    int first = low[i];
    int last = high[i];
    for (int d = 0; d < depth; d++) {
      int k = sequence[d];
      int at = grid.start[jobs[k]];
      first = Math.max(first, at + blocks.gap(block, k, i));
      last = Math.min(last, at - blocks.gap(block, i, k));
    }
    int before = layout.before[j];
    int choices = 0;
    if (before >= first && before <= last && grid.fits(j, before)) {
      if (tryAt(j, before, depth)) {
        return true;
      }
      choices++;
    } else {
      before = -1;
    }
    int from = last;
    if (last > first && random.nextInt(6) == 0) {
      from = first + random.nextInt(last - first + 1);
    }
    for (int pass = from == last ? 1 : 0; pass < 2; pass++) {
      int top = pass == 0 ? from : last;
      int bottom = pass == 1 && from < last ? from + 1 : first;
      for (int t = top; t >= bottom; t--) {
        if (t != before && grid.fits(j, t)) {
          if (tryAt(j, t, depth)) {
            return true;
          }
          if (++choices >= CHOICES || backtracks > allowed) {
            return false;
          }
        }
      }
    }
    return false;
  }

  private boolean tryAt(int j, int t, int depth) {
    grid.place(j, t, random);
    if (others(depth + 1)) {
      return true;
    }
    grid.remove(j);
    backtracks++;
    return false;
  }

  /** What the first job costs at a slot, with the hands it takes out of a rush. */
  private long at(int t) {
    return around.waiting(t) + around.own(t) + around.rush(t);
  }

  /** What the block costs where it is, with what waits between it and the rest. */
  private long cost() {
    long sum = 0;
    for (int j : jobs) {
      sum += costs.ofJob(j, grid.start[j]) + costs.ofPeople(j, grid.cooks[j]);
      for (Between lag : layout.out[j]) {
        if (grid.start[lag.to()] >= 0) {
          sum += costs.ofLag(lag, grid.start[j], grid.start[lag.to()]);
        }
      }
      for (Between lag : layout.in[j]) {
        if (blocks.of[lag.from()] != block && grid.start[lag.from()] >= 0) {
          sum += costs.ofLag(lag, grid.start[lag.from()], grid.start[j]);
        }
      }
    }
    return sum;
  }

  /** Slots of a window, those that cost a job least first; from the latest good one outwards. */
  private final class Outward {
    private final int j;
    private final int first;
    private final int last;
    private int down;
    private int up;
    private boolean before;
    private long cost;
    private long lower = -1;
    private long upper = -1;

    Outward(int j, int first, int last) {
      this.j = j;
      around.job(j);
      this.first = first;
      this.last = last;
      int wanted = Math.max(first, Math.min(last, layout.target[j] - layout.length[j]));
      if (last > first && random.nextInt(6) == 0) {
        wanted = first + random.nextInt(last - first + 1);
      }
      down = wanted;
      up = wanted + 1;
      before = layout.before[j] >= first && layout.before[j] <= last;
    }

    /** The cost of the slot last given, by itself. */
    long cost() {
      return cost;
    }

    int next() {
      if (before) {
        before = false;
        cost = at(layout.before[j]);
        return layout.before[j];
      }
      if (down < first && up > last) {
        return -1;
      }
      if (lower < 0) {
        lower = down < first ? Long.MAX_VALUE : at(down);
      }
      if (upper < 0) {
        upper = up > last ? Long.MAX_VALUE : at(up);
      }
      cost = Math.min(lower, upper);
      if (lower <= upper) {
        lower = -1;
        return down--;
      }
      upper = -1;
      return up++;
    }
  }
}
