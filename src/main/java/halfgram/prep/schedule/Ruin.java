package halfgram.prep.schedule;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Which blocks are taken out together, so that room comes up where it is used. */
final class Ruin {
  private static final int MOST_OUT = 7;
  private static final int NEAR = 12;

  private final Layout layout;
  private final Blocks blocks;
  private final Costs costs;
  private final Grid grid;
  private final SplittableRandom random;

  /** Slots of hands and of machines that a block takes. */
  private final int[] work;

  Ruin(Grid grid, Blocks blocks, Costs costs, SplittableRandom random) {
    this.layout = grid.layout;
    this.grid = grid;
    this.blocks = blocks;
    this.costs = costs;
    this.random = random;
    work = new int[blocks.jobs.length];
    for (int j = 0; j < layout.size; j++) {
      work[blocks.of[j]] +=
          layout.hands[j] * layout.handsOn[j] + layout.length[j] - layout.handsOn[j];
    }
  }

  /**
   * Some blocks to take out: one by its cost or by chance; with it what is tied to it by lags, or
   * what its cooks and machines do about the time it wants, so that room comes up where it is used.
   */
  List<Integer> choose(int[] movable, boolean incomplete) {
    int most = 1 + random.nextInt(MOST_OUT);
    int seed = seed(movable, incomplete);
    List<Integer> out = new ArrayList<>(List.of(seed));
    int kind = random.nextInt(4);
    if (kind == 0 || (kind == 1 && random.nextBoolean())) {
      chain(out, most);
    } else if (kind == 1) {
      int centre = middle(seed);
      for (int i = 0; i < 2 * most && out.size() < most; i++) {
        add(out, near(movable, centre));
      }
    } else {
      if (random.nextInt(3) == 0) {
        chain(out, 1 + most / 2);
      }
      int from = random.nextInt(out.size());
      rivals(out, out.get(from), most);
    }
    sort(out);
    return out;
  }

  private void add(List<Integer> out, int b) {
    if (b >= 0 && !out.contains(b) && !blocks.isFixed(b)) {
      out.add(b);
    }
  }

  private void chain(List<Integer> out, int most) {
    for (int i = 0; i < 3 * most && out.size() < most; i++) {
      add(out, linked(out));
    }
  }

  /** What the cooks or machines that a block needs do about the time it wants. */
  private void rivals(List<Integer> out, int b, int most) {
    int[] jobs = blocks.jobs[b];
    int j = jobs[random.nextInt(jobs.length)];
    int wanted = layout.target[j] - layout.length[j];
    int at = grid.start[j] < 0 || random.nextInt(3) == 0 ? wanted : grid.start[j];
    int times = 1 + random.nextInt(2);
    for (int i = 0; i < times; i++) {
      if (layout.hands[j] > 0
          && layout.able[j].length > 0
          && (layout.uses[j].length == 0 || random.nextBoolean())) {
        int cook = layout.able[j][random.nextInt(layout.able[j].length)];
        nearest(out, cook, -1, at, out.size() + 1 + random.nextInt(most));
      } else if (layout.uses[j].length > 0) {
        int machine = layout.uses[j][random.nextInt(layout.uses[j].length)].machine();
        nearest(out, -1, machine, at, out.size() + 1 + random.nextInt(most));
      }
    }
  }

  /** Adds the blocks with the jobs of a cook, or on a machine, that are nearest to a slot. */
  private void nearest(List<Integer> out, int cook, int machine, int at, int until) {
    while (out.size() < until) {
      int best = -1;
      int distance = Integer.MAX_VALUE;
      for (int j = 0; j < layout.size; j++) {
        int t = grid.start[j];
        if (t < 0 || layout.isFixed(j)) {
          continue;
        }
        int off = t > at ? t - at : Math.max(0, at - t - layout.length[j]);
        if (off < distance
            && (cook >= 0 ? does(cook, j) : uses(machine, j))
            && !out.contains(blocks.of[j])) {
          distance = off;
          best = blocks.of[j];
        }
      }
      if (best < 0) {
        return;
      }
      out.add(best);
    }
  }

  private boolean does(int cook, int j) {
    for (int c : grid.cooks[j]) {
      if (c == cook) {
        return true;
      }
    }
    return false;
  }

  private boolean uses(int machine, int j) {
    for (Job.Use use : layout.uses[j]) {
      if (use.machine() == machine) {
        return true;
      }
    }
    return false;
  }

  private int seed(int[] movable, boolean incomplete) {
    if (incomplete && random.nextBoolean()) {
      int from = random.nextInt(movable.length);
      for (int i = 0; i < movable.length; i++) {
        int b = movable[(from + i) % movable.length];
        if (!grid.isPlaced(blocks.jobs[b])) {
          return b;
        }
      }
    }
    if (random.nextInt(4) == 0) {
      return movable[random.nextInt(movable.length)];
    }
    int chosen = movable[random.nextInt(movable.length)];
    long worst = -1;
    int looks = 2 + random.nextInt(8);
    for (int i = 0; i < looks; i++) {
      int b = movable[random.nextInt(movable.length)];
      long cost = 0;
      for (int j : blocks.jobs[b]) {
        cost += grid.start[j] < 0 ? 0 : costs.around(grid, j, grid.start[j]);
      }
      if (cost > worst) {
        worst = cost;
        chosen = b;
      }
    }
    return chosen;
  }

  private int middle(int b) {
    for (int j : blocks.jobs[b]) {
      if (grid.start[j] >= 0) {
        return grid.start[j];
      }
    }
    return layout.target[blocks.jobs[b][0]];
  }

  /** A block tied by a lag to one of those already chosen; -1: none. */
  private int linked(List<Integer> out) {
    int b = out.get(random.nextInt(out.size()));
    int[] jobs = blocks.jobs[b];
    int j = jobs[random.nextInt(jobs.length)];
    Between[] lags = random.nextBoolean() ? layout.in[j] : layout.out[j];
    if (lags.length == 0) {
      return -1;
    }
    Between lag = lags[random.nextInt(lags.length)];
    int other = blocks.of[lag.from() == j ? lag.to() : lag.from()];
    return other == b ? -1 : other;
  }

  private int near(int[] movable, int centre) {
    for (int i = 0; i < 8; i++) {
      int b = movable[random.nextInt(movable.length)];
      if (Math.abs(middle(b) - centre) <= NEAR) {
        return b;
      }
    }
    return -1;
  }

  /** The order to put blocks back in: by chance, users first, the largest first. */
  private void sort(List<Integer> out) {
    for (int i = out.size() - 1; i > 0; i--) {
      int k = random.nextInt(i + 1);
      Integer other = out.get(k);
      out.set(k, out.get(i));
      out.set(i, other);
    }
    int by = random.nextInt(8);
    if (by < 3) {
      out.sort((a, b) -> layout.target[last(b)] - layout.target[last(a)]);
    } else if (by == 3) {
      out.sort((a, b) -> work[b] - work[a]);
    } else if (by == 5) {
      out.sort((a, b) -> blocks.room[a] - blocks.room[b]);
    } else if (by == 4) {
      out.sort((a, b) -> layout.target[last(a)] - layout.target[last(b)]);
    }
  }

  private int last(int b) {
    return blocks.jobs[b][blocks.jobs[b].length - 1];
  }

  /** Blocks placed without which there may be room for one: what is tied to it, else others. */
  List<Integer> inTheWay(int b) {
    List<Integer> out = after(b);
    if (out.isEmpty()) {
      out = earlier(b);
    }
    return out.isEmpty() ? besides(b) : out;
  }

  /** Blocks placed that a longest time ties to what comes after. */
  private List<Integer> earlier(int b) {
    List<Integer> found = new ArrayList<>();
    for (int j : blocks.jobs[b]) {
      for (Between lag : layout.in[j]) {
        int other = blocks.of[lag.from()];
        if (layout.isHard(lag)
            && other != b
            && grid.start[lag.from()] >= 0
            && !found.contains(other)
            && !blocks.isFixed(other)) {
          found.add(other);
        }
      }
    }
    return found;
  }

  /** Blocks placed that wait for one, and whatever waits for those. */
  private List<Integer> after(int b) {
    List<Integer> found = new ArrayList<>();
    List<Integer> todo = new ArrayList<>(List.of(b));
    while (!todo.isEmpty()) {
      int at = todo.remove(todo.size() - 1);
      for (int j : blocks.jobs[at]) {
        for (Between lag : layout.out[j]) {
          int other = blocks.of[lag.to()];
          if (other != at
              && other != b
              && !found.contains(other)
              && !blocks.isFixed(other)
              && grid.isAnyPlaced(blocks.jobs[other])) {
            found.add(other);
            todo.add(other);
          }
        }
      }
    }
    return found;
  }

  /** Blocks with whose cooks and machines there would be room for one, most likely. */
  private List<Integer> besides(int b) {
    List<Integer> out = new ArrayList<>(List.of(b));
    rivals(out, b, MOST_OUT);
    out.remove(0);
    out.removeIf(other -> !grid.isAnyPlaced(blocks.jobs[other]));
    return out;
  }
}
