package halfgram.desk;

import halfgram.kitchen.KitchenStore;
import halfgram.lot.Lot;
import halfgram.prep.KitchenBook;
import halfgram.prep.PlanRequest;
import halfgram.prep.PrepSheet;
import halfgram.prep.crew.CrewPlan;
import halfgram.prep.crew.Crewing;
import halfgram.prep.crew.DayFacts;
import halfgram.prep.schedule.Budget;
import halfgram.prep.schedule.Placing;
import java.lang.System.Logger.Level;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executor;
import java.util.function.Function;

/**
 * Days ahead on people and machines: each is placed once as long as nothing changes, so that every
 * page says the same of it. Who does not wait has it placed behind the page, and every page that
 * shows that it is looked for is told when it is found, as with {@link FirstCrew}.
 */
public final class AheadCrew {
  private static final System.Logger LOG = System.getLogger(AheadCrew.class.getName());
  private static final int KEPT = 16;

  /**
   * What a day ahead is placed from.
   *
   * @param known who is said to be in or not, and what is said to be broken, on that day
   */
  private record Key(
      UUID kitchen, long facts, PlanRequest request, List<Lot> lots, DayFacts known) {}

  private final Desk desk;
  private final Placing placing;
  private final Executor later;
  private final DayCrew crew = new DayCrew();
  private final KitchenStore kitchens = new KitchenStore();
  private final LastFew<Key, WhatIf.Day> known = new LastFew<>(KEPT);
  private final Set<Key> running = ConcurrentHashMap.newKeySet();
  private final Set<Key> shown = ConcurrentHashMap.newKeySet();

  /**
   * @param placing what places a workday
   * @param later runs what pages do not wait for
   */
  public AheadCrew(Desk desk, Placing placing, Executor later) {
    this.desk = desk;
    this.placing = placing;
    this.later = later;
  }

  /** The tasks of a sheet that is not in force, on the people and machines that are there. */
  CrewPlan plan(KitchenBook book, PrepSheet sheet, DayFacts facts, Budget budget) {
    return Crewing.plan(book, sheet, facts, budget, placing);
  }

  /** The day of a preview, placed now unless it is known. */
  WhatIf.Day get(House house, Plans.Proposal ahead, Function<DayFacts, WhatIf.Day> work) {
    return known.get(key(house, ahead), key -> work.apply(key.known()));
  }

  /** The same when it is known; else it is looked for from now on. */
  Optional<WhatIf.Day> find(
      House house, Plans.Proposal ahead, Function<DayFacts, WhatIf.Day> work) {
    Key key = key(house, ahead);
    if (known.find(key).isEmpty() && running.add(key)) {
      later.execute(() -> place(house, key, work));
    }
    if (known.find(key).isEmpty()) {
      shown.add(key);
    }
    Optional<WhatIf.Day> there = known.find(key);
    there.ifPresent(any -> shown.remove(key));
    return there;
  }

  private Key key(House house, Plans.Proposal ahead) {
    PlanRequest request = ahead.sheet().request();
    DayFacts said = desk.read(tx -> crew.ahead(tx, house, ahead.book(), request.from()));
    return new Key(house.id(), ahead.facts(), request, ahead.book().lots(), said);
  }

  private void place(House house, Key key, Function<DayFacts, WhatIf.Day> work) {
    try {
      known.get(key, any -> work.apply(key.known()));
      if (shown.remove(key)) {
        desk.write(house, tx -> kitchens.next(tx, kitchens.lock(tx, house.id())), number -> number);
      }
    } catch (RuntimeException e) {
      // The next page that is looked at begins anew.
      LOG.log(Level.WARNING, "a day ahead was not laid out", e);
    } finally {
      running.remove(key);
    }
  }
}
