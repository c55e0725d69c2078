package halfgram.desk;

import halfgram.db.Tx;
import halfgram.prep.crew.DayFacts;
import halfgram.prep.crew.Pinning;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** What a crew plan is worked out from: the day, the crew plan before, and the pins that hold. */
final class CrewFacts {
  private final Desk desk;
  private final CrewPlanRows rows;
  private final DayCrew crew = new DayCrew();

  CrewFacts(Desk desk, CrewPlanRows rows) {
    this.desk = desk;
    this.rows = rows;
  }

  /** For the first of a plan: as near to the last one of the day as can be. */
  DayFacts first(House house, InForce inForce) {
    Instant now = DayCrew.moment(house, inForce.plan().day(), desk.now());
    return desk.read(
        tx -> {
          Optional<CrewInForce> last = rows.findLast(tx, house, inForce.plan().day());
          DayFacts facts = crew.facts(tx, house, inForce, now);
          return last.map(one -> after(inForce, facts, one)).orElse(facts);
        });
  }

  /** For what would be from now on. */
  DayFacts of(House house, InForce inForce, CrewInForce now) {
    Instant moment = DayCrew.moment(house, inForce.plan().day(), desk.now());
    return desk.read(tx -> of(tx, house, inForce, now, moment));
  }

  DayFacts of(Tx tx, House house, InForce inForce, CrewInForce now, Instant moment) {
    return after(inForce, crew.facts(tx, house, inForce, moment), now);
  }

  /** Facts with a plan before them, and the pins that can still be kept. */
  private static DayFacts after(InForce inForce, DayFacts facts, CrewInForce before) {
    DayFacts known = facts.after(before.plan().placed()).longer(before.more());
    Map<String, DayFacts.Pin> held = new HashMap<>();
    before
        .pins()
        .forEach(
            (id, pin) ->
                inForce
                    .findTask(id)
                    .filter(task -> Pinning.isHeld(inForce.book(), known, task, pin))
                    .ifPresent(task -> held.put(id, pin)));
    return known.pinned(held);
  }
}
