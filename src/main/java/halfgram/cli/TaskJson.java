package halfgram.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.formula.Instruction;
import halfgram.formula.MachineUse;
import halfgram.ingredient.Weighing;
import halfgram.measure.Exact;
import halfgram.measure.Mass;
import halfgram.prep.Awaited;
import halfgram.prep.Contact;
import halfgram.prep.Paths;
import halfgram.prep.Stored;
import halfgram.prep.Task;
import halfgram.prep.WeighGroup;
import halfgram.prep.WeighLine;
import halfgram.words.Messages;
import java.time.Duration;
import java.util.List;
import java.util.Locale;

/** One task as JSON, with everything a scheduler or a wall needs. */
final class TaskJson {
  private final Json json;
  private final Messages messages;

  TaskJson(Json json, Messages messages) {
    this.json = json;
    this.messages = messages;
  }

  void write(ObjectNode node, Task task, List<Awaited> awaited, List<Contact> contacts) {
    node.put("task", task.id());
    node.put("kind", word(task.kind()));
    node.put("make", task.make().id());
    node.put("formula", task.version().formula());
    node.put("step", task.step().code());
    node.put("station", task.station());
    node.put("instruction", messages.text(task.step().instruction()));
    if (task.kind() == Task.Kind.STEP) {
      ArrayNode method = node.putArray("method");
      task.step().method().forEach(one -> sentence(method.addObject(), one));
    }
    task.note().ifPresent(note -> node.put("note", messages.say(note)));
    node.set("start", json.at(Paths.task(task.id(), "start"), task.start()));
    node.set("handsOff", json.at(Paths.task(task.id(), "hands-off"), task.handsOff()));
    node.set("end", json.at(Paths.task(task.id(), "end"), task.end()));
    node.set("handsOn", json.minutes(Paths.task(task.id(), "hands-on"), task.handsOn()));
    node.set("unattended", json.minutes(Paths.task(task.id(), "unattended"), task.unattended()));
    if (!task.step().unload().isZero()) {
      node.put("unload", task.step().unload().toString());
    }
    if (task.step().dry()) {
      node.put("dry", true);
    }
    node.set("hands", json.count(Paths.task(task.id(), "hands"), task.hands()));
    if (!task.late().isZero()) {
      node.set("late", json.minutes(Paths.task(task.id(), "late"), task.late()));
    }
    awaited.forEach(one -> awaited(node.withArray("deliveries").addObject(), one));
    contacts.forEach(one -> contact(node.withArray("kit").addObject(), one));
    node.put("tonight", task.tonight());
    json.words(node, "serves", task.serves());
    json.words(node, "contains", task.allergens());
    json.words(node, "cautions", task.cautions());
    if (!task.reminders().isEmpty()) {
      json.words(node, "reminders", task.reminders().stream().map(messages::say).toList());
    }
    task.step().check().ifPresent(check -> node.put("check", word(check)));
    node.set("fills", json.count(Paths.task(task.id(), "fills"), task.fill().count()));
    node.set("fillMass", json.mass(Paths.task(task.id(), "fill-mass"), task.fill().each()));
    node.set("readyBy", json.at(Paths.make(task.make(), "ready-by"), task.make().readyBy()));
    ArrayNode machines = node.putArray("machines");
    task.machines().forEach(use -> machine(machines.addObject(), use));
    ArrayNode weigh = node.putArray("weigh");
    task.weigh().forEach(group -> group(weigh.addObject(), task, group));
    ArrayNode stored = node.putArray("stored");
    task.stored().forEach(put -> stored(stored.addObject(), task, put));
    ArrayNode links = node.putArray("links");
    task.links().forEach(link -> link(links.addObject(), link));
  }

  private void sentence(ObjectNode node, Instruction one) {
    node.put("said", messages.text(one.text()));
    one.vessel().ifPresent(vessel -> node.put("vessel", vessel));
    json.words(node, "lines", one.lines());
  }

  /** Work that leaves in a thing of the kit what this task has to be free from. */
  private void contact(ObjectNode node, Contact contact) {
    node.put("thing", contact.thing());
    json.words(node, "allergens", contact.allergens());
    node.put("with", contact.soils().id());
    node.put("first", contact.isFirst());
    contact
        .startBy()
        .ifPresent(start -> node.set("startBy", json.at(Paths.freeFirst(contact), start)));
  }

  /** A delivery that a task waits for; without a time when it was turned away. */
  private void awaited(ObjectNode node, Awaited awaited) {
    node.put("delivery", awaited.delivery().code());
    node.put("supplier", awaited.delivery().supplier());
    json.words(node, "ingredients", awaited.ingredients());
    awaited
        .from()
        .ifPresent(from -> node.set("notBefore", json.at(Paths.notBefore(awaited), from)));
  }

  /** A machine as the formula and the book say; entered, so in words and not asked why. */
  private static void machine(ObjectNode node, MachineUse use) {
    node.put("use", use.equipment());
    node.put("units", String.valueOf(use.units()));
    use.limits().min().ifPresent(min -> node.put("min", grams(min)));
    use.limits().max().ifPresent(max -> node.put("max", grams(max)));
    use.limits().step().ifPresent(step -> node.put("step", grams(step)));
    node.put("perFill", use.perFill().toString());
    if (use.during() != MachineUse.During.STEP) {
      node.put("during", word(use.during()));
    }
  }

  private static String grams(Mass mass) {
    return Exact.plain(mass.grams(), 6) + " g";
  }

  private void group(ObjectNode node, Task task, WeighGroup group) {
    group.vessel().ifPresent(vessel -> node.put("vessel", vessel.code()));
    node.set("vessels", json.count(group.path(), group.count()));
    ArrayNode lines = node.putArray("lines");
    group.lines().forEach(line -> line(lines.addObject(), task, line));
  }

  private void line(ObjectNode node, Task task, WeighLine line) {
    Weighing weighing = line.weighing();
    node.put("line", line.line().code());
    node.put("item", line.line().item().code());
    node.put("name", messages.text(line.name()));
    node.set("mass", json.mass(line.path(), weighing.target()));
    node.set("shown", json.mass(path(task, line, "shown"), weighing.shown()));
    weighing.scale().ifPresent(scale -> node.put("scale", scale.code()));
    node.put("apart", line.apart());
    node.set("parts", json.count(path(task, line, "parts"), weighing.parts()));
    node.set("heldBack", json.mass(path(task, line, "held-back"), line.heldBack()));
    line.atLeast()
        .ifPresent(from -> node.set("atLeast", json.mass(path(task, line, "at-least"), from)));
    line.line().dose().stopWhen().ifPresent(sign -> node.put("stopWhen", sign.toString()));
    line.counted()
        .ifPresent(
            count ->
                node.set(
                    "counted",
                    json.number(path(task, line, "counted"), count.number(), count.unit())));
    node.set("pulled", json.mass(path(task, line, "pulled"), line.pulled()));
    weighing
        .dilution()
        .ifPresent(dilution -> dilution(node.putObject("dilution"), task, line, dilution));
    ArrayNode others = node.putArray("lookAlikes");
    line.lookAlikes().forEach(other -> others.add(messages.text(other)));
    ArrayNode tubs = node.putArray("tubs");
    line.tubs()
        .forEach(
            draw -> {
              ObjectNode tub = tubs.addObject().put(SheetJson.from(draw), draw.lot().code());
              tub.set("used", json.amount(Paths.tub(draw), draw.amount()));
            });
  }

  private void dilution(ObjectNode node, Task task, WeighLine line, Weighing.Dilution dilution) {
    line.carrier().ifPresent(carrier -> node.put("carrierLine", carrier));
    node.set("oneIn", json.count(path(task, line, "one-in"), dilution.oneIn()));
    node.set("substance", json.mass(path(task, line, "substance"), dilution.substance()));
    node.set("carrier", json.mass(path(task, line, "carrier"), dilution.carrier()));
    node.set("take", json.mass(path(task, line, "take"), dilution.take()));
  }

  private static String path(Task task, WeighLine line, String field) {
    return Paths.weigh(task.make(), task.step(), line.line(), field);
  }

  private void stored(ObjectNode node, Task task, Stored stored) {
    node.put("output", stored.output().code());
    node.set("made", json.amount(stored.path(), stored.made()));
    node.set(
        "needed",
        json.amount(Paths.store(task.make(), stored.output(), "needed"), stored.needed()));
    stored.container().ifPresent(container -> node.put("container", container.code()));
    ArrayNode fills = node.putArray("fills");
    for (int i = 0; i < stored.fills().size(); i++) {
      String path = Paths.store(task.make(), stored.output(), "fill-" + (i + 1));
      fills.add(json.amount(path, stored.fills().get(i)));
    }
    node.set("useBy", json.at(Paths.store(task.make(), stored.output(), "use-by"), stored.useBy()));
    stored.useByOf().ifPresent(of -> node.put("dateOf", of));
    node.put("place", stored.output().hold().place());
    stored.output().hold().at().ifPresent(at -> node.put("at", at.toString()));
    node.put("why", word(stored.output().hold().reason().kind()));
    node.put("source", stored.output().hold().reason().source());
    node.put("rest", stored.output().rest().min().toString());
  }

  private static void link(ObjectNode node, Task.Link link) {
    node.put("task", link.task());
    node.put("min", link.min().toString());
    link.max().map(Duration::toString).ifPresent(max -> node.put("max", max));
    node.put("why", word(link.reason().kind()));
    node.put("source", link.reason().source());
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
