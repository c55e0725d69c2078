package halfgram.prep.schedule;

import java.util.SplittableRandom;

/** Moves single jobs of a plan to where they cost least, as long as one gains by it. */
final class Polish {
  private static final int ROUNDS = 8;

  private final Layout layout;
  private final Costs costs;
  private final Grid grid;
  private final Washing washing;
  private final SplittableRandom random;

  Polish(Grid grid, Costs costs, Washing washing, SplittableRandom random) {
    this.layout = grid.layout;
    this.grid = grid;
    this.costs = costs;
    this.washing = washing;
    this.random = random;
  }

  void all() {
    boolean moved = true;
    for (int round = 0; moved && round < ROUNDS; round++) {
      moved = false;
      for (int j = layout.size - 1; j >= 0; j--) {
        if (!layout.isFixed(j) && grid.start[j] >= 0) {
          moved |= one(j);
        }
      }
    }
  }

  private boolean one(int j) {
    int was = grid.start[j];
    long before = costs.around(grid, j, was);
    if (before == 0) {
      return false;
    }
    int[] people = grid.cooks[j];
    int[] machines = grid.units[j];
    long crew = costs.ofCrew(grid);
    long own = before + costs.ofPeople(j, people);
    grid.remove(j);
    int best = was;
    long least = before;
    for (int t = layout.head[j]; t + layout.length[j] <= layout.slots; t++) {
      if (t != was && grid.inLags(j, t)) {
        long cost = costs.around(grid, j, t);
        if (cost < least && grid.fits(j, t)) {
          best = t;
          least = cost;
        }
      }
    }
    if (best != was) {
      grid.place(j, best, random);
      long now = least + costs.ofPeople(j, grid.cooks[j]) + costs.ofCrew(grid);
      if (now < own + crew && washing.isSettled()) {
        return true;
      }
      grid.remove(j);
    }
    grid.put(j, was, people, machines);
    return false;
  }
}
