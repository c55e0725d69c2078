package halfgram.testkit;

import halfgram.prep.schedule.Budget;
import halfgram.prep.schedule.Rota;
import halfgram.prep.schedule.Scheduler;
import halfgram.prep.schedule.Workday;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Places the same workday once in this process: nearly every test begins with the demo's Saturday
 * at nine, and searching is what it would wait for longest. Tests of the search itself do not come
 * this way.
 */
final class KnownRotas {
  private static final Map<Workday, Rota> KNOWN = new ConcurrentHashMap<>();

  private KnownRotas() {}

  static Rota place(Workday day, Budget budget) {
    return KNOWN.computeIfAbsent(day, unknown -> Scheduler.place(unknown, budget));
  }
}
