package halfgram.prep.schedule;

/**
 * What a job costs at the slots of its window, given what is placed: where every lag is kept, what
 * waits before and after it is a straight line.
 */
final class Around {
  private final Layout layout;
  private final Costs costs;
  private final Grid grid;
  private int job;
  private long flat;

  /** What each slot later costs, of what waits alone. */
  long slope;

  Around(Grid grid, Costs costs) {
    this.layout = grid.layout;
    this.grid = grid;
    this.costs = costs;
  }

  void job(int j) {
    job = j;
    flat = 0;
    slope = 0;
    for (Between lag : layout.in[j]) {
      int from = grid.start[lag.from()];
      if (from >= 0) {
        flat -= (long) lag.dear() * (from + layout.length[lag.from()] + lag.min());
        slope += lag.dear();
      }
    }
    for (Between lag : layout.out[j]) {
      int to = grid.start[lag.to()];
      if (to >= 0) {
        flat += (long) lag.dear() * (to - layout.length[j] - lag.min());
        slope -= lag.dear();
      }
    }
  }

  /** What waits around the job at a slot. */
  long waiting(int t) {
    return flat + slope * t;
  }

  /** The job at a slot by itself, with what it makes others stand too long. */
  long own(int t) {
    long sum = costs.isFree(job) ? 0 : costs.ofJob(job, t);
    if (layout.yielding) {
      for (Between lag : layout.in[job]) {
        int from = grid.start[lag.from()];
        sum += from < 0 ? 0 : costs.overrun(lag, from, t);
      }
      for (Between lag : layout.out[job]) {
        int to = grid.start[lag.to()];
        sum += to < 0 ? 0 : costs.overrun(lag, t, to);
      }
    }
    return sum;
  }

  /** What its hands at a slot take out of a rush. */
  long rush(int t) {
    return layout.hands[job] == 0 ? 0 : layout.day.prices().rush() * grid.rushes.added(job, t);
  }
}
