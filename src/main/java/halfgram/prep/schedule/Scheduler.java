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
  private static final long STEP = 0x9E3779B97F4A7C15L;

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
      others.add(CompletableFuture.supplyAsync(() -> new Search(layout, blocks, seed).run(budget)));
    }
    Rota best = new Search(layout, blocks, budget.seed()).run(budget);
    for (CompletableFuture<Rota> other : others) {
      Rota rota = other.join();
      best = rota.bill().total() < best.bill().total() ? rota : best;
    }
    return best;
  }
}
