package halfgram.prep.schedule;

/** What a plan on a grid costs, term by term. */
final class Costs {
  private final Layout layout;
  private final Prices prices;

  Costs(Layout layout) {
    this.layout = layout;
    prices = layout.day.prices();
  }

  /** Everything. */
  long of(Grid grid) {
    long sum = ofCrew(grid);
    for (int j = 0; j < layout.size; j++) {
      sum += ofPlaced(j, grid.start[j], grid.cooks[j]);
      if (grid.start[j] < 0) {
        continue;
      }
      for (Between lag : layout.out[j]) {
        if (grid.start[lag.to()] >= 0) {
          sum += ofLag(lag, grid.start[j], grid.start[lag.to()]);
        }
      }
    }
    return sum;
  }

  /** People who work more than is planned of them. */
  long ofCrew(Grid grid) {
    return prices.rush() * grid.rushes.over() + prices.shift() * grid.overShifts();
  }

  /** A job where it is; -1: nowhere. */
  long ofPlaced(int j, int t, int[] people) {
    return t < 0 ? prices.leftOut() : ofJob(j, t) + ofPeople(j, people);
  }

  /** Whether a job costs nothing by itself wherever it is. */
  boolean isFree(int j) {
    return layout.due[j] == Layout.NEVER && layout.before[j] < 0;
  }

  /** A job at a slot, whoever does it. */
  long ofJob(int j, int t) {
    return late(j, t) + early(j, t) + slack(j, t) + moved(j, t);
  }

  long late(int j, int t) {
    return prices.late() * layout.weight[j] * Math.max(0, t + layout.length[j] - layout.due[j]);
  }

  long early(int j, int t) {
    return layout.fresh[j] == Layout.NEVER
        ? 0
        : prices.early() * Math.max(0, layout.due[j] - layout.fresh[j] - t - layout.length[j]);
  }

  long slack(int j, int t) {
    return prices.slack() * Math.max(0, t + layout.length[j] - layout.due[j] + layout.slack[j]);
  }

  long moved(int j, int t) {
    int before = layout.before[j];
    if (before < 0 || before == t || layout.isFixed(j)) {
      return 0;
    }
    return prices.moved() + (Math.abs(before - t) > prices.near() ? prices.far() : 0);
  }

  long ofPeople(int j, int[] cooks) {
    if (layout.before[j] < 0 || layout.isFixed(j) || layout.cooksBefore[j].length == 0) {
      return 0;
    }
    for (int c : cooks) {
      if (!layout.isCookBefore(j, c)) {
        return prices.other();
      }
    }
    return 0;
  }

  /** What waits between two jobs, and how far beyond its longest time. */
  long ofLag(Between lag, int from, int to) {
    return waiting(lag, from, to) + overrun(lag, from, to);
  }

  long waiting(Between lag, int from, int to) {
    int apart = to - from - layout.length[lag.from()];
    return (long) lag.dear() * Math.max(0, apart - lag.min());
  }

  long overrun(Between lag, int from, int to) {
    int apart = to - from - layout.length[lag.from()];
    return lag.max().isPresent() ? prices.overrun() * Math.max(0, apart - lag.max().getAsInt()) : 0;
  }

  /** A job at a slot with what waits between it and everything placed. */
  long around(Grid grid, int j, int t) {
    long sum = ofJob(j, t);
    for (Between lag : layout.out[j]) {
      if (grid.start[lag.to()] >= 0) {
        sum += ofLag(lag, t, grid.start[lag.to()]);
      }
    }
    for (Between lag : layout.in[j]) {
      if (grid.start[lag.from()] >= 0) {
        sum += ofLag(lag, grid.start[lag.from()], t);
      }
    }
    return sum;
  }
}
