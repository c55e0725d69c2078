package halfgram.desk;

import halfgram.db.Tx;
import halfgram.prep.PlanStore;
import halfgram.prep.PrepSheet;
import halfgram.prep.ServiceRun;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * The sheets by which the services of a day have been served.
 *
 * <p>A plan that comes while a service runs says only what that is still to take. What it took
 * until then, it took as the plans before said, back to the one that was there when it began.
 */
final class EarlierSheets {
  /** Of so many plans in one service the first hardly count any more. */
  private static final int MOST = 12;

  private EarlierSheets() {}

  /** The sheet in force and those before it, as far as they count; the newest first. */
  static List<PrepSheet> of(Tx tx, House house, Plans plans, InForce inForce) {
    PlanStore store = new PlanStore();
    List<ServiceRun> runs = Services.runs(house.book(), inForce.plan().day());
    List<PrepSheet> sheets = new ArrayList<>(List.of(inForce.sheet()));
    PlanStore.Accepted plan = inForce.plan();
    while (plan.number() > 1
        && sheets.size() < MOST
        && runs.stream().anyMatch(isRunning(plan.asOf()))) {
      Optional<PlanStore.Accepted> before =
          plan.previous().flatMap(id -> store.find(tx, house.id(), id));
      if (before.isEmpty()) {
        break;
      }
      plan = before.get();
      sheets.add(plans.computed(tx, house, plan).sheet());
    }
    return sheets;
  }

  private static Predicate<ServiceRun> isRunning(Instant moment) {
    return run -> run.window().start().isBefore(moment) && !run.isOver(moment);
  }
}
