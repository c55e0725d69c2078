package halfgram.prep.schedule;

import java.util.SplittableRandom;

/**
 * Takes a few jobs off a plan and looks for places for all of them together: depth first, what is
 * waited for after what waits for it, the cheapest places first. It goes back as soon as what is
 * placed and the least that the rest can cost come to more than is allowed, takes the first answer
 * that does not, and gives up after some looks.
 *
 * <p>Source: A. H. Land, A. G. Doig, Econometrica 28 (1960) 497 (branch and bound), in the
 * neighbourhoods of P. Shaw, CP-98.
 */
final class Refit {
  /** What {@link #change} says when all is as it was. */
  static final long NONE = Long.MAX_VALUE;

  private static final int LOOKS = 400;

  /** Places of a job that are tried, and of one that all cost nothing. */
  private static final int WIDE = 12;

  private static final int WIDE_FREE = 4;

  private final Layout layout;
  private final Costs costs;
  private final Grid grid;
  private final Handful out;
  private final SplittableRandom random;
  private final Around around;
  private final Washing washing;

  /** First slots of the jobs that are out, and the least they cost by themselves. */
  private final int[] first;

  private final long[] least;
  private long leastOfRest;
  private int low;
  private int high;
  private int looks;
  private final long[] starts;
  private final int[][] slots = new int[Handful.MOST][WIDE];
  private final long[][] keys = new long[Handful.MOST][WIDE];

  Refit(Grid grid, Costs costs, Washing washing, Handful out, SplittableRandom random) {
    this.layout = grid.layout;
    this.grid = grid;
    this.costs = costs;
    this.washing = washing;
    this.out = out;
    this.random = random;
    around = new Around(grid, costs);
    starts = new long[(layout.slots >> 6) + 1];
    first = new int[layout.size];
    least = new long[layout.size];
  }

  /**
   * Finds a few jobs other places.
   *
   * @param allowed what the plan may cost more afterwards
   * @return what it costs more, negative: less; {@link #NONE}: nothing was found
   */
  long change(long allowed) {
    out.choose();
    long crew = costs.ofCrew(grid);
    long before = out.cost() + crew;
    out.takeOff();
    out.order();
    looks = 0;
    long most = before - costs.ofCrew(grid) + allowed;
    long more = NONE;
    if (isPossible() && isPlaced(0, 0, most)) {
      more = out.cost() + costs.ofCrew(grid) - before;
    }
    if (more > allowed) {
      out.putBack();
      more = NONE;
    }
    out.clear();
    return more;
  }

  /** First slots and least costs of what is out; false when one has no place at all. */
  private boolean isPossible() {
    leastOfRest = 0;
    for (int i = out.count - 1; i >= 0; i--) {
      int j = out.jobs[i];
      first[j] = layout.head[j];
      for (Between lag : layout.in[j]) {
        int from = lag.from();
        int at = out.isIn[from] ? first(from, i) : grid.start[from];
        if (at >= 0) {
          first[j] = Math.max(first[j], at + layout.length[from] + lag.min());
        }
      }
    }
    for (int i = 0; i < out.count; i++) {
      least[out.jobs[i]] = least(out.jobs[i]);
      if (least[out.jobs[i]] == NONE) {
        return false;
      }
      leastOfRest += least[out.jobs[i]];
    }
    return true;
  }

  /** The first slot of a job that is out, if it is known already: it comes later in the order. */
  private int first(int j, int after) {
    for (int i = after + 1; i < out.count; i++) {
      if (out.jobs[i] == j) {
        return first[j];
      }
    }
    return -1;
  }

  private long least(int j) {
    window(j);
    if (low > high) {
      return NONE;
    }
    long best = NONE;
    if (costs.isFree(j)) {
      return 0;
    }
    grid.markStarts(j, starts);
    for (int t = lastStart(high); t >= low && best > 0; t = lastStart(t - 1)) {
      long cost = costs.ofJob(j, t);
      if (cost < best && fits(j, t)) {
        best = cost;
      }
    }
    return best;
  }

  private void window(int j) {
    low = first[j];
    high = layout.slots - layout.length[j];
    for (Between lag : layout.in[j]) {
      int from = grid.start[lag.from()];
      if (from >= 0) {
        int end = from + layout.length[lag.from()];
        low = Math.max(low, end + lag.min());
        if (layout.isHard(lag)) {
          high = Math.min(high, end + lag.max().getAsInt());
        }
      }
    }
    for (Between lag : layout.out[j]) {
      int to = grid.start[lag.to()];
      if (to >= 0) {
        high = Math.min(high, to - lag.min() - layout.length[j]);
        if (layout.isHard(lag)) {
          low = Math.max(low, to - lag.max().getAsInt() - layout.length[j]);
        }
      }
    }
  }

  private boolean isPlaced(int depth, long cost, long most) {
    if (depth == out.count) {
      return washing.isSettled();
    }
    int j = out.jobs[depth];
    long left = most - cost - (leastOfRest - least[j]);
    int wide = places(depth, j, left);
    leastOfRest -= least[j];
    for (int i = 0; i < wide && ++looks <= LOOKS; i++) {
      grid.place(j, slots[depth][i], random);
      long here = keys[depth][i] / TIES + costs.ofPeople(j, grid.cooks[j]);
      if (here <= left && isPlaced(depth + 1, cost + here, most)) {
        return true;
      }
      grid.remove(j);
    }
    leastOfRest += least[j];
    return false;
  }

  /** Whether a job whose starts are marked can be at one of them. */
  private boolean fits(int j, int t) {
    return (layout.hands[j] < 2 || grid.haveCooks(j, t)) && grid.haveThings(j, t);
  }

  /** The last of the marked slots that is not after one; -1: there is none. */
  private int lastStart(int t) {
    for (int at = t; at >= 0; at = (at | 63) - 64) {
      long before = starts[at >> 6] << (-at - 1);
      if (before != 0) {
        return at - Long.numberOfLeadingZeros(before);
      }
    }
    return -1;
  }

  private static final int TIES = 64;

  /** The cheapest places of a job, ties by chance; how many. */
  private int places(int depth, int j, long left) {
    window(j);
    int[] at = slots[depth];
    long[] key = keys[depth];
    int found = 0;
    around.job(j);
    grid.markStarts(j, starts);
    for (int t = lastStart(high); t >= low; t = lastStart(t - 1)) {
      long cost = around.waiting(t);
      if (around.slope < 0 && (cost > left || (found == WIDE && cost * TIES >= key[WIDE - 1]))) {
        break;
      }
      cost += around.own(t);
      if (cost > left || (found == WIDE && cost * TIES >= key[WIDE - 1])) {
        continue;
      }
      cost += around.rush(t);
      long by = cost * TIES + random.nextInt(TIES);
      if (cost > left || (found == WIDE && by >= key[WIDE - 1]) || !fits(j, t)) {
        continue;
      }
      int i = found < WIDE ? found++ : WIDE - 1;
      for (; i > 0 && key[i - 1] > by; i--) {
        key[i] = key[i - 1];
        at[i] = at[i - 1];
      }
      key[i] = by;
      at[i] = t;
    }
    return found > 0 && key[found - 1] < TIES ? Math.min(found, WIDE_FREE) : found;
  }
}
