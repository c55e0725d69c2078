package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.prep.CrewPlanStore;
import halfgram.prep.crew.CrewPlan;
import halfgram.prep.crew.DayFacts;
import halfgram.prep.crew.Placed;
import halfgram.prep.crew.Plated;
import halfgram.prep.crew.Washed;
import halfgram.prep.schedule.Rota;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** A crew plan as it is kept: the tasks placed and pinned, what is left out, and what it costs. */
final class CrewPlanJson {
  private CrewPlanJson() {}

  /**
   * A crew plan with the pins it keeps.
   *
   * @param facts with the pins, and with what takes longer
   * @param mark of what it was worked out from
   */
  static String write(CrewPlan plan, DayFacts facts, String mark) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("from", plan.from().toString());
    node.put("mark", mark);
    ArrayNode placed = node.putArray("placed");
    plan.placed().values().forEach(one -> write(placed.addObject(), one));
    ArrayNode washes = node.putArray("washes");
    plan.washes().forEach(one -> write(washes.addObject(), one));
    ArrayNode platings = node.putArray("platings");
    plan.platings().forEach(one -> write(platings.addObject(), one));
    ArrayNode leftOut = node.putArray("leftOut");
    plan.leftOut().forEach(leftOut::add);
    ArrayNode pinned = node.putArray("pins");
    new TreeMap<>(facts.pins())
        .forEach(
            (task, pin) -> {
              ObjectNode one = pinned.addObject();
              one.put("task", task);
              one.put("start", pin.start().toString());
              pin.people().forEach(one.putArray("people")::add);
            });
    ArrayNode more = node.putArray("more");
    new TreeMap<>(facts.more())
        .forEach((task, by) -> more.addObject().put("task", task).put("minutes", by.toMinutes()));
    write(node.putObject("bill"), plan.bill());
    node.put("cut", plan.cut());
    node.put("yielding", plan.yielding());
    node.put("roomy", plan.roomy());
    return node.toString();
  }

  private static void write(ObjectNode node, Placed one) {
    node.put("task", one.task());
    node.put("start", one.start().toString());
    node.put("handsOff", one.handsOff().toString());
    node.put("end", one.end().toString());
    one.people().forEach(node.putArray("people")::add);
    ArrayNode machines = node.putArray("machines");
    for (Placed.Unit unit : one.machines()) {
      machines.addObject().put("machine", unit.equipment()).put("number", unit.number());
    }
    one.unload().ifPresent(out -> write(node.putObject("unload"), out));
    if (one.spells().size() > 1) {
      ArrayNode spells = node.putArray("spells");
      one.spells().forEach(spell -> write(spells.addObject(), spell));
    }
  }

  private static void write(ObjectNode node, Placed.Hands hands) {
    node.put("from", hands.from().toString());
    node.put("to", hands.to().toString());
    hands.people().forEach(node.putArray("people")::add);
  }

  private static void write(ObjectNode node, Washed one) {
    node.put("machine", one.unit().equipment());
    node.put("number", one.unit().number());
    node.put("from", one.from().toString());
    node.put("to", one.to().toString());
    node.put("person", one.person());
    node.put("after", one.after());
    node.put("before", one.before());
  }

  private static void write(ObjectNode node, Plated one) {
    node.put("run", one.run());
    node.put("fire", one.fire());
    node.put("dish", one.dish());
    one.station().ifPresent(station -> node.put("station", station));
    node.put("from", one.from().toString());
    node.put("to", one.to().toString());
    node.put("needed", one.needed());
    one.people().forEach(node.putArray("people")::add);
  }

  private static Plated plated(JsonNode node) {
    return new Plated(
        node.path("run").asText(),
        node.path("fire").asText(),
        node.path("dish").asText(),
        node.has("station") ? Optional.of(node.path("station").asText()) : Optional.empty(),
        moment(node, "from"),
        moment(node, "to"),
        node.path("needed").asInt(),
        words(node.path("people")));
  }

  private static Washed washed(JsonNode node) {
    return new Washed(
        new Placed.Unit(node.path("machine").asText(), node.path("number").asInt()),
        moment(node, "from"),
        moment(node, "to"),
        node.path("person").asText(),
        node.path("after").asText(),
        node.path("before").asText());
  }

  private static void write(ObjectNode node, Rota.Bill bill) {
    node.put("leftOut", bill.leftOut());
    node.put("overrun", bill.overrun());
    node.put("late", bill.late());
    node.put("early", bill.early());
    node.put("slack", bill.slack());
    node.put("rush", bill.rush());
    node.put("shift", bill.shift());
    node.put("waiting", bill.waiting());
    node.put("change", bill.change());
  }

  /** A crew plan of the store. */
  static CrewInForce read(CrewPlanStore.Kept kept) {
    JsonNode node = BookStore.parse(kept.body());
    Map<String, Placed> placed = new LinkedHashMap<>();
    node.path("placed").forEach(one -> placed.put(one.path("task").asText(), placed(one)));
    List<Washed> washes = new ArrayList<>();
    node.path("washes").forEach(one -> washes.add(washed(one)));
    List<Plated> platings = new ArrayList<>();
    node.path("platings").forEach(one -> platings.add(plated(one)));
    List<String> leftOut = words(node.path("leftOut"));
    Map<String, DayFacts.Pin> pins = new LinkedHashMap<>();
    node.path("pins")
        .forEach(
            one ->
                pins.put(
                    one.path("task").asText(),
                    new DayFacts.Pin(moment(one, "start"), words(one.path("people")))));
    Map<String, Duration> more = new LinkedHashMap<>();
    node.path("more")
        .forEach(
            one ->
                more.put(
                    one.path("task").asText(), Duration.ofMinutes(one.path("minutes").asLong())));
    CrewPlan plan =
        new CrewPlan(
            moment(node, "from"),
            placed,
            washes,
            platings,
            leftOut,
            bill(node.path("bill")),
            kept.seed(),
            kept.iterations(),
            node.path("cut").asBoolean(),
            node.path("yielding").asBoolean(),
            node.path("roomy").asBoolean());
    return new CrewInForce(
        kept.id(),
        kept.plan(),
        kept.number(),
        kept.at(),
        kept.who(),
        plan,
        pins,
        more,
        node.path("mark").asText());
  }

  private static Placed placed(JsonNode node) {
    List<Placed.Unit> machines = new ArrayList<>();
    node.path("machines")
        .forEach(
            one ->
                machines.add(
                    new Placed.Unit(one.path("machine").asText(), one.path("number").asInt())));
    List<Placed.Hands> spells = new ArrayList<>();
    node.path("spells").forEach(one -> spells.add(hands(one)));
    return new Placed(
        node.path("task").asText(),
        moment(node, "start"),
        moment(node, "handsOff"),
        moment(node, "end"),
        words(node.path("people")),
        machines,
        Optional.of(node.path("unload")).filter(JsonNode::isObject).map(CrewPlanJson::hands),
        spells);
  }

  private static Placed.Hands hands(JsonNode node) {
    return new Placed.Hands(moment(node, "from"), moment(node, "to"), words(node.path("people")));
  }

  private static Rota.Bill bill(JsonNode node) {
    return new Rota.Bill(
        node.path("leftOut").asLong(),
        node.path("overrun").asLong(),
        node.path("late").asLong(),
        node.path("early").asLong(),
        node.path("slack").asLong(),
        node.path("rush").asLong(),
        node.path("shift").asLong(),
        node.path("waiting").asLong(),
        node.path("change").asLong());
  }

  private static Instant moment(JsonNode node, String key) {
    return Instant.parse(node.path(key).asText());
  }

  private static List<String> words(JsonNode list) {
    List<String> words = new ArrayList<>();
    list.forEach(word -> words.add(word.asText()));
    return words;
  }
}
