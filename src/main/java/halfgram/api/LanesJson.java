package halfgram.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.CrewPlans;
import halfgram.prep.crew.Adrift;
import halfgram.prep.crew.CrewDifference;
import halfgram.prep.crew.CrewPlan;
import halfgram.prep.crew.Placed;
import halfgram.prep.crew.Plated;
import halfgram.prep.crew.Washed;
import java.time.ZoneId;
import java.util.Set;

/** Who does what when, as JSON. */
public final class LanesJson {
  private LanesJson() {}

  /**
   * A crew plan.
   *
   * @param pinned ids of the tasks that are where the chef wants them
   */
  public static void plan(ObjectNode node, CrewPlan plan, Set<String> pinned, ZoneId zone) {
    node.put("cut", plan.cut());
    node.put("yielding", plan.yielding());
    node.put("roomy", plan.roomy());
    ArrayNode placed = node.putArray("tasks");
    for (Placed one : plan.placed().values()) {
      ObjectNode task = placed.addObject();
      place(task, one, zone);
      task.put("pinned", pinned.contains(one.task()));
    }
    ArrayNode washes = node.putArray("washes");
    plan.washes().forEach(one -> wash(washes.addObject(), one, zone));
    ArrayNode platings = node.putArray("platings");
    plan.platings().forEach(one -> plating(platings.addObject(), one, zone));
    plan.leftOut().forEach(node.putArray("leftOut")::add);
  }

  static void proposal(ObjectNode node, CrewPlans.Proposal proposal, ZoneId zone) {
    CrewDifference by = proposal.difference();
    node.put("number", proposal.seen().number());
    node.put("mark", proposal.seen().mark());
    ArrayNode moved = node.putArray("moved");
    by.moved().forEach(one -> change(moved.addObject(), one, zone));
    ArrayNode given = node.putArray("given");
    by.given().forEach(one -> change(given.addObject(), one, zone));
    ArrayNode added = node.putArray("added");
    by.added().forEach(one -> place(added.addObject(), one, zone));
    by.leftOut().forEach(node.putArray("leftOut")::add);
    by.waiting().forEach(node.putArray("waiting")::add);
    ArrayNode plated = node.putArray("platings");
    by.plated().forEach(one -> plating(plated.addObject(), one, zone));
    ArrayNode over = node.putArray("over");
    by.over().forEach(one -> over(over.addObject(), one));
  }

  private static void change(ObjectNode node, CrewDifference.Change change, ZoneId zone) {
    node.put("task", change.task());
    planned(node.putObject("was"), change.was(), zone);
    planned(node.putObject("is"), change.is(), zone);
  }

  static void adrift(ObjectNode node, Adrift adrift) {
    node.put("task", adrift.task());
    node.put("why", Call.word(adrift.kind()));
    if (!adrift.what().isEmpty()) {
      node.put("what", adrift.what());
    }
    node.put("minutes", adrift.by().toMinutes());
  }

  static void over(ObjectNode node, CrewDifference.Over over) {
    node.put("task", over.task());
    over.user().ifPresent(user -> node.put("user", user));
    node.put("minutes", over.by().toMinutes());
    node.put("safety", over.reason().isSafety());
  }

  static void place(ObjectNode node, Placed placed, ZoneId zone) {
    node.put("task", placed.task());
    planned(node, placed, zone);
    node.put("handsOff", Answers.moment(placed.handsOff(), zone));
    node.put("end", Answers.moment(placed.end(), zone));
    if (placed.turns().size() > 1) {
      ArrayNode turns = node.putArray("turns");
      placed.turns().forEach(one -> hands(turns.addObject(), one, zone));
    }
    placed.unload().ifPresent(out -> hands(node.putObject("unload"), out, zone));
  }

  private static void hands(ObjectNode node, Placed.Hands hands, ZoneId zone) {
    node.put("from", Answers.moment(hands.from(), zone));
    node.put("to", Answers.moment(hands.to(), zone));
    hands.people().forEach(node.putArray("people")::add);
  }

  private static void wash(ObjectNode node, Washed wash, ZoneId zone) {
    node.put("machine", wash.unit().equipment());
    node.put("number", wash.unit().number());
    node.put("from", Answers.moment(wash.from(), zone));
    node.put("to", Answers.moment(wash.to(), zone));
    node.put("person", wash.person());
    node.put("after", wash.after());
    node.put("before", wash.before());
  }

  static void plating(ObjectNode node, Plated line, ZoneId zone) {
    node.put("id", line.id());
    node.put("service", line.run());
    node.put("fire", line.fire());
    node.put("dish", line.dish());
    node.put("from", Answers.moment(line.from(), zone));
    node.put("to", Answers.moment(line.to(), zone));
    node.put("needed", line.needed());
    line.people().forEach(node.putArray("people")::add);
  }

  /** When, by whom and on what. */
  static void planned(ObjectNode node, Placed placed, ZoneId zone) {
    node.put("start", Answers.moment(placed.start(), zone));
    placed.people().forEach(node.putArray("people")::add);
    ArrayNode machines = node.putArray("machines");
    for (Placed.Unit unit : placed.machines()) {
      machines.addObject().put("machine", unit.equipment()).put("number", unit.number());
    }
  }
}
