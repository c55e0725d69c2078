package halfgram.prep.schedule;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;

/**
 * Places a workday. The same workday and budget give the same plan, on any machine, in whatever
 * order its jobs and people are named.
 *
 * <p>Rules. Longest times hold, unless nothing can be placed with them: then those that yield do,
 * each slot at a price. What has begun and what is pinned stays, whatever it costs. What cannot be
 * placed at all is left out and said.
 */
public final class Scheduler {
  /** Between the seeds of searches side by side, and of those one after the other: odd numbers. */
  private static final long STEP = 0x9E3779B97F4A7C15L;

  private static final long TURN = 0xD1B54A32D192ED03L;

  /** After so many iterations for each job a search begins anew: the best of a few is better. */
  private static final int ENOUGH = 135;

  private Scheduler() {}

  public static Rota place(Workday asked, Budget budget) {
    InOrder sorted = new InOrder(asked);
    return sorted.back(placed(sorted.day, budget));
  }

  private static Rota placed(Workday day, Budget budget) {
    Rota strict = place(day, budget, false);
    if (strict.isComplete() || day.lags().stream().noneMatch(Scheduler::mayYield)) {
      return strict;
    }
    Rota yielding = place(day, budget, true);
    return yielding.bill().total() < strict.bill().total() ? yielding : strict;
  }

  private static boolean mayYield(Between lag) {
    return lag.yields() && lag.max().isPresent();
  }

  private static Rota place(Workday day, Budget budget, boolean yielding) {
    Layout layout = new Layout(day, yielding);
    Blocks blocks = new Blocks(layout);
    List<CompletableFuture<Rota>> others = new ArrayList<>();
    for (int i = 1; i < budget.searches(); i++) {
      long seed = budget.seed() + i * STEP;
      others.add(CompletableFuture.supplyAsync(() -> search(layout, blocks, seed, budget)));
    }
    Rota best = search(layout, blocks, budget.seed(), budget);
    for (CompletableFuture<Rota> other : others) {
      best = best.or(other.join());
    }
    return best;
  }

  /** One search after the other, each with its share of the iterations; the best plan. */
  private static Rota search(Layout layout, Blocks blocks, long seed, Budget budget) {
    int runs = Math.max(1, budget.iterations() / (ENOUGH * Math.max(1, layout.size)));
    Budget share =
        new Budget(budget.iterations() / runs, budget.seed(), budget.searches(), budget.stop());
    Rota best = new Search(layout, blocks, seed).run(share);
    for (int i = 1; i < runs && !best.cut() && best.bill().total() > 0; i++) {
      best = best.or(new Search(layout, blocks, seed ^ (i * TURN)).run(share));
    }
    return best;
  }
}
