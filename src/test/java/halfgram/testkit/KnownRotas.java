package halfgram.testkit;

import halfgram.prep.schedule.Budget;
import halfgram.prep.schedule.Rota;
import halfgram.prep.schedule.Scheduler;
import halfgram.prep.schedule.Workday;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Places the same workday once in this process, and searches a sixtieth of what the product does: a
 * plan is all that most tests want, and searching is what they would wait for longest. Tests of the
 * search itself do not come this way, nor does the clock, which only cuts; tests of how good a plan
 * is say {@link Site#searchFully}.
 */
public final class KnownRotas {
  private static final int SHORTER = 60;

  private record Asked(Workday day, int iterations) {}

  private static final Map<Asked, Rota> KNOWN = new ConcurrentHashMap<>();

  private KnownRotas() {}

  public static Rota shortly(Workday day, Budget budget) {
    return fully(day, Budget.of(budget.iterations() / SHORTER, budget.seed()));
  }

  public static Rota fully(Workday day, Budget budget) {
    return KNOWN.computeIfAbsent(
        new Asked(day, budget.iterations()),
        unknown -> Scheduler.place(day, budget.until(() -> false)));
  }
}
