package halfgram.desk;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.db.Tx;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.News;
import halfgram.prep.CrewPlanStore;
import halfgram.prep.crew.CrewPlan;
import halfgram.prep.crew.DayFacts;
import java.time.Duration;
import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;

/** Crew plans as they are kept, each read once. */
final class CrewPlanRows {
  private static final int KEPT = 64;
  private static final String KIND = "lanes";

  /** A crew plan about to be kept. */
  record Draft(InForce inForce, int number, CrewPlan plan, DayFacts facts) {}

  /** What brought it about, as the log says it. */
  record How(String word, String task) {}

  private final Desk desk;
  private final KitchenStore kitchens = new KitchenStore();
  private final CrewPlanStore store = new CrewPlanStore();
  private final LastFew<UUID, CrewInForce> kept = new LastFew<>(KEPT);

  CrewPlanRows(Desk desk) {
    this.desk = desk;
  }

  /** The crew plan in force of a plan, if it has one. */
  Optional<CrewInForce> find(Tx tx, House house, UUID plan) {
    return store.findInForce(tx, house.id(), plan).map(id -> get(tx, house, id));
  }

  private CrewInForce get(Tx tx, House house, UUID id) {
    return kept.get(id, any -> CrewPlanJson.read(store.find(tx, house.id(), any).orElseThrow()));
  }

  /** The last crew plan of a day, of whichever of its plans. */
  Optional<CrewInForce> findLast(Tx tx, House house, LocalDate day) {
    return store.findLast(tx, house.id(), day).map(id -> get(tx, house, id));
  }

  /** Says it in the log; answers the number of the change. */
  long log(Tx tx, House house, Draft draft, How how, String who) {
    LocalDate day = draft.inForce().plan().day();
    String subject = day + "/" + draft.inForce().plan().number() + "/" + draft.number();
    News news = News.note(KIND, subject, detail(draft, how), who);
    return kitchens.change(tx, house.id(), news, desk.now());
  }

  /** Adds the next of a plan; that its number is free was found out under the lock. */
  CrewInForce add(Tx tx, House house, Draft draft, long change, String who) {
    String mark = DayCrew.mark(draft.inForce(), draft.facts());
    CrewPlanStore.Kept row =
        new CrewPlanStore.Kept(
            UUID.randomUUID(),
            draft.inForce().plan().id(),
            draft.number(),
            desk.now(),
            who,
            draft.plan().seed(),
            draft.plan().iterations(),
            CrewPlanJson.write(draft.plan(), draft.facts(), mark),
            change);
    store.add(tx, house.id(), row);
    return CrewPlanJson.read(row);
  }

  private static String detail(Draft draft, How how) {
    ObjectNode detail = JsonNodeFactory.instance.objectNode();
    detail.put("how", how.word());
    detail.put("day", draft.inForce().plan().day().toString());
    detail.put("placed", draft.plan().placed().size());
    detail.put("leftOut", draft.plan().leftOut().size());
    Optional<Duration> more = Optional.ofNullable(draft.facts().more().get(how.task()));
    more.ifPresent(one -> detail.put("minutes", one.toMinutes()));
    if (!how.task().isEmpty()) {
      detail.put("task", how.task());
      Optional<DayFacts.Pin> pin = Optional.ofNullable(draft.facts().pins().get(how.task()));
      pin.ifPresent(
          one -> {
            detail.put("start", one.start().toString());
            one.people().forEach(detail.putArray("people")::add);
          });
    }
    return detail.toString();
  }
}
