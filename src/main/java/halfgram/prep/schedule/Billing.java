package halfgram.prep.schedule;

/** A finished plan's cost by term, reckoned anew. */
final class Billing {
  private Billing() {}

  static Rota.Bill of(Layout layout, int[] start, int[][] cooks) {
    Costs costs = new Costs(layout);
    Prices prices = layout.day.prices();
    Grid grid = new Grid(layout);
    long leftOut = 0;
    long overrun = 0;
    long late = 0;
    long early = 0;
    long slack = 0;
    long waiting = 0;
    long change = 0;
    for (int j = 0; j < layout.size; j++) {
      if (start[j] < 0) {
        leftOut += prices.leftOut();
        continue;
      }
      late += costs.late(j, start[j]);
      early += costs.early(j, start[j]);
      slack += costs.slack(j, start[j]);
      change += costs.moved(j, start[j]) + costs.ofPeople(j, cooks[j]);
      grid.work(j, start[j], cooks[j]);
      for (Between lag : layout.out[j]) {
        if (start[lag.to()] >= 0) {
          waiting += costs.waiting(lag, start[j], start[lag.to()]);
          overrun += costs.overrun(lag, start[j], start[lag.to()]);
        }
      }
    }
    return new Rota.Bill(
        leftOut,
        overrun,
        late,
        early,
        slack,
        prices.rush() * grid.rushes.over(),
        prices.shift() * grid.overShifts(),
        waiting,
        change);
  }
}
