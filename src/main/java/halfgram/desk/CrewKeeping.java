package halfgram.desk;

import halfgram.desk.CrewPlanRows.Draft;
import halfgram.desk.CrewPlanRows.How;
import halfgram.kitchen.KitchenStore;
import halfgram.prep.PlanStore;
import halfgram.prep.crew.DayFacts;
import java.time.LocalDate;
import java.util.Optional;

/** Keeps the next crew plan of a day. */
final class CrewKeeping {
  private final Desk desk;
  private final Plans plans;
  private final CrewPlanRows rows;
  private final CrewFacts known;
  private final KitchenStore kitchens = new KitchenStore();

  CrewKeeping(Desk desk, Plans plans, CrewPlanRows rows, CrewFacts known) {
    this.desk = desk;
    this.plans = plans;
    this.rows = rows;
    this.known = known;
  }

  /** Keeps a draft unless the day has moved on since it was looked at. */
  Optional<CrewInForce> put(House house, Draft draft, CrewPlans.Seen seen, How how, String who) {
    LocalDate day = draft.inForce().plan().day();
    return desk.write(
        house,
        tx -> {
          KitchenStore.Stand stand = kitchens.lock(tx, house.id());
          House locked = desk.open(tx, stand);
          Optional<PlanStore.Accepted> latest =
              plans
                  .inForce(tx, locked, day)
                  .filter(plan -> plan.id().equals(draft.inForce().plan().id()));
          Optional<CrewInForce> last = latest.flatMap(plan -> rows.find(tx, house, plan.id()));
          if (last.isEmpty() || last.get().number() != seen.number()) {
            return Optional.empty();
          }
          InForce again = plans.inForce(tx, locked, latest.get());
          DayFacts facts = known.of(tx, locked, again, last.get(), draft.facts().now());
          return DayCrew.mark(again, facts).equals(seen.mark())
              ? Optional.of(rows.add(tx, house, draft, rows.log(tx, house, draft, how, who), who))
              : Optional.empty();
        });
  }
}
