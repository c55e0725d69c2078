package halfgram.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.Desk;
import halfgram.desk.Dipped;
import halfgram.desk.House;
import halfgram.desk.Plans;
import halfgram.desk.Stock;
import halfgram.lot.Frozen;
import halfgram.lot.Lot;
import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.measure.Exact;
import halfgram.measure.Money;
import halfgram.prep.Components;
import halfgram.prep.Resting;
import halfgram.web.Visit;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Collection;

/** Tubs and what happened to them, as answers say it. */
final class TubJson {
  private final Desk desk;
  private final Plans plans;
  private final Dipped dipped;

  TubJson(Desk desk, Plans plans) {
    this.desk = desk;
    this.plans = plans;
    this.dipped = new Dipped(desk);
  }

  /** A tub, what happened to it, what was taken of what it keeps, and its way from tub to tub. */
  ObjectNode life(Visit visit, House house, Stock.Life life) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    tub(node, house, life.tub(), desk.now(), visit);
    ArrayNode moves = node.putArray("movements");
    life.movements().forEach(movement -> movement(moves.addObject(), house, life, movement));
    ArrayNode taken = node.putArray("taken");
    dipped.list(house, plans.find(house, house.day(desk.now()))).stream()
        .filter(dip -> dip.tub().id().equals(life.tub().id()))
        .forEach(dip -> dip(taken.addObject(), house, dip));
    codes(node.putArray("madeOf"), life.madeOf());
    codes(node.putArray("wentInto"), life.wentInto());
    return node;
  }

  private static void codes(ArrayNode codes, Collection<Tub> tubs) {
    tubs.forEach(tub -> codes.add(tub.lot().code()));
  }

  static void tub(ObjectNode node, House house, Tub tub, Instant now, Visit visit) {
    Lot lot = tub.lot();
    ZoneId zone = Answers.zone(house);
    node.put("code", lot.code());
    node.put(
        "name", visit.words().text(Components.name(house.book().formulary(), lot.component())));
    node.put("component", lot.component().formula());
    lot.component().output().ifPresent(output -> node.put("output", output));
    lot.component().version().ifPresent(version -> node.put("version", version));
    Answers.amount(node, "left", lot.left());
    node.put("made", Answers.moment(lot.made(), zone));
    node.put("useBy", Answers.moment(lot.useBy(), zone));
    Resting.notBefore(house.book().formulary(), lot, now)
        .ifPresent(at -> node.put("notBefore", Answers.moment(at, zone)));
    lot.frozen().ifPresent(ice -> frozen(node.putObject("frozen"), lot, ice, zone));
    lot.thawed().ifPresent(at -> node.put("thawed", Answers.moment(at, zone)));
    node.put("assumed", tub.assumed());
    if (!lot.place().isEmpty()) {
      node.put("place", lot.place());
    }
    lot.container().ifPresent(container -> node.put("container", container));
    tub.task().ifPresent(task -> node.put("task", task));
    ArrayNode reserved = node.putArray("reserved");
    lot.reserved()
        .forEach(
            one ->
                Answers.amount(
                    reserved.addObject().put("event", one.event()), "amount", one.amount()));
  }

  private static void frozen(ObjectNode node, Lot lot, Frozen ice, ZoneId zone) {
    node.put("since", Answers.moment(ice.since(), zone));
    node.put("keepUntil", Answers.moment(lot.useBy(), zone));
    node.put("lifeMinutes", ice.life().toMinutes());
    ice.days().ifPresent(days -> node.put("days", days));
  }

  private static void movement(ObjectNode node, House house, Stock.Life life, Movement movement) {
    ZoneId zone = Answers.zone(house);
    node.put("kind", Call.word(movement.kind()));
    node.put("change", movement.change());
    Answers.amount(node, "amount", movement.amount());
    movement.stated().ifPresent(stated -> Answers.amount(node, "stated", stated));
    movement.event().ifPresent(event -> node.put("event", event));
    movement.reason().ifPresent(reason -> node.put("reason", reason));
    life.into(movement).forEach(code -> node.withArray("into").add(code));
    node.put("who", movement.who());
    node.put("at", Answers.moment(movement.at(), zone));
    movement.turn().place().ifPresent(place -> node.put("place", place));
    movement.turn().useBy().ifPresent(at -> node.put("useBy", Answers.moment(at, zone)));
    movement.undoes().ifPresent(change -> node.put("undoes", change));
    movement
        .loss()
        .ifPresent(loss -> cost(node.putObject("cost"), house, loss.cost(), loss.unpriced()));
  }

  /** What was lost had cost: no number where a price was missing. */
  static void cost(ObjectNode node, House house, Money cost, Collection<String> unpriced) {
    node.put("standing", "computed");
    if (cost.complete() || cost.number().signum() > 0) {
      node.put("value", new BigDecimal(Exact.plain(cost.number(), 6)));
      node.put("unit", house.book().kitchen().currency());
    }
    node.put("complete", cost.complete() && unpriced.isEmpty());
    unpriced.forEach(node.putArray("unpriced")::add);
  }

  /** What somebody took of what is kept for an event. */
  static void dip(ObjectNode node, House house, Dipped.Dip dip) {
    node.put("tub", dip.tub().lot().code());
    node.put("event", dip.event());
    Answers.amount(node, "amount", dip.amount());
    dip.movement().reason().ifPresent(by -> node.put("by", by.toLowerCase(java.util.Locale.ROOT)));
    node.put("who", dip.movement().who());
    node.put("at", Answers.moment(dip.movement().at(), Answers.zone(house)));
    node.put("change", dip.change());
  }
}
