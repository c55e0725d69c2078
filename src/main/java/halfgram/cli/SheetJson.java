package halfgram.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.api.LanesJson;
import halfgram.formula.Cost;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Output;
import halfgram.measure.Money;
import halfgram.prep.Begun;
import halfgram.prep.Components;
import halfgram.prep.KitchenBook;
import halfgram.prep.Make;
import halfgram.prep.Misfit;
import halfgram.prep.Paths;
import halfgram.prep.Plated;
import halfgram.prep.PlatingLine;
import halfgram.prep.PrepSheet;
import halfgram.prep.ServiceRun;
import halfgram.prep.Task;
import halfgram.prep.Thaw;
import halfgram.prep.crew.DayFacts;
import halfgram.prep.crew.NoFit;
import halfgram.prep.crew.Outlook;
import halfgram.prep.crew.Reasons;
import halfgram.prep.netting.Draw;
import halfgram.technique.bath.BathDay;
import halfgram.words.Messages;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/**
 * A prep sheet as JSON. Every number is an object {"id", "value", "unit"} or {"id", "at"} whose id
 * can be asked why; codes of things have keys of their own, never "id".
 */
public final class SheetJson {
  private final KitchenBook book;
  private final PrepSheet sheet;
  private final Messages messages;
  private final Json json;
  private final Cost cost;

  public SheetJson(KitchenBook book, PrepSheet sheet, Messages messages) {
    this.book = book;
    this.sheet = sheet;
    this.messages = messages.at(book.kitchen());
    this.cost = book.cost();
    this.json =
        new Json(sheet.request().prefix(book.kitchen().clock()), book.kitchen().clock().zone());
  }

  /** On one line. */
  public String write() {
    return json.text(root());
  }

  /** Laid out for reading. */
  public String writeIndented() {
    return json.indented(root());
  }

  /** Laid out for reading, with who does what when. */
  String writeIndented(Outlook outlook, DayFacts facts) {
    ObjectNode root = root();
    ObjectNode crew = root.putObject("crew");
    crew.put("fits", outlook.fits());
    LanesJson.plan(crew, outlook.crew(), facts.pins().keySet(), book.kitchen().clock().zone());
    ArrayNode why = crew.putArray("why");
    Reasons.of(book, sheet, facts, outlook.crew()).forEach(one -> reason(why.addObject(), one));
    return json.indented(root);
  }

  private void reason(ObjectNode node, NoFit reason) {
    node.put("kind", reason.kind().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    node.put("what", messages.say(reason.what()));
    node.put("minutesShort", reason.shortBy().toMinutes());
    ArrayNode chain = node.putArray("chain");
    reason.chain().forEach(one -> chain.add(messages.say(one)));
    ArrayNode canDo = node.putArray("canDo");
    reason.levers().forEach(one -> canDo.add(messages.say(one)));
    reason.tasks().forEach(node.putArray("tasks")::add);
  }

  private ObjectNode root() {
    ObjectNode root = json.object();
    root.put("kitchen", book.kitchen().code());
    root.put("from", sheet.request().from().toString());
    root.put("through", sheet.request().last().toString());
    root.put("asOf", json.time(sheet.request().asOf()));
    root.put("fits", sheet.fits());
    sheet.misfits().forEach(misfit -> misfit(root.withArray("misfits").addObject(), misfit));
    ArrayNode warnings = root.putArray("warnings");
    sheet.warnings().forEach(warning -> warnings.add(messages.say(warning)));
    ArrayNode services = root.putArray("services");
    sheet.services().forEach(run -> service(services.addObject(), run));
    ArrayNode makes = root.putArray("makes");
    sheet.makes().forEach(make -> make(makes.addObject(), make));
    ArrayNode tasks = root.putArray("tasks");
    TaskJson taskJson = new TaskJson(json, messages);
    sheet.tasks().forEach(task -> writeTask(taskJson, tasks.addObject(), task));
    ArrayNode tonight = root.putArray("tonight");
    sheet.tonight().forEach(task -> tonight.add(task.id()));
    ArrayNode tubs = root.putArray("tubs");
    sheet.draws().forEach(draw -> tub(tubs.addObject(), draw));
    ArrayNode runs = root.putArray("runs");
    sheet.runs().forEach(run -> run(runs.addObject(), run));
    ArrayNode baths = root.putArray("baths");
    sheet.baths().forEach(bath -> bath(baths, bath));
    ArrayNode pulls = root.putArray("pulls");
    sheet
        .pulls()
        .forEach(
            (code, mass) -> {
              ObjectNode pull = pulls.addObject().put("ingredient", code);
              pull.set("mass", json.amount(Paths.pull(code), mass));
            });
    ArrayNode loads = root.putArray("loads");
    sheet
        .loads(book)
        .forEach(
            (station, load) -> {
              ObjectNode node = loads.addObject().put("station", station);
              node.set("handsOn", json.minutes(Paths.load(station), load));
            });
    return root;
  }

  private void writeTask(TaskJson json, ObjectNode node, Task task) {
    json.write(node, task, sheet.awaited(task), sheet.contacts(task));
    sheet.findThaw(task).ifPresent(thaw -> thaw(node.putObject("thaw"), thaw));
  }

  private static void thaw(ObjectNode node, Thaw thaw) {
    node.put("tub", thaw.tub().code());
    node.put("from", thaw.tub().place());
    node.put("to", thaw.output().hold().place());
    node.put("takes", thaw.time().toString());
  }

  private void misfit(ObjectNode node, Misfit misfit) {
    node.put("what", messages.say(misfit.what()));
    node.put("safety", misfit.safety());
    node.set("shortBy", json.minutes(misfit.path(), misfit.shortBy()));
    ArrayNode chain = node.putArray("chain");
    misfit.chain().forEach(step -> chain.add(messages.say(step)));
  }

  private void service(ObjectNode node, ServiceRun run) {
    node.put("service", run.id());
    node.put("name", messages.text(run.name()));
    node.put("date", run.date().toString());
    node.put("start", json.time(run.window().start()));
    node.put("end", json.time(run.window().end()));
    run.covers()
        .ifPresent(covers -> node.set("covers", json.count(Paths.covers(run, "counted"), covers)));
    run.prepared()
        .ifPresent(
            covers -> node.set("prepared", json.count(Paths.covers(run, "prepared"), covers)));
    ArrayNode plates = node.putArray("plates");
    for (ServiceRun.Plates of : run.plates()) {
      ObjectNode plate = plates.addObject();
      plate.put("course", of.course());
      plate.put("dish", of.dish().code());
      json.words(plate, "diets", of.diets());
      plate.set("count", json.count(Paths.plates(run, of), of.count()));
      json.words(plate, "contains", Plated.allergens(book, of.items()));
      Money spent = Plated.cost(cost, of.items());
      plate.set("cost", json.number(Paths.cost(of), spent.number(), book.kitchen().currency()));
      plate.put("costComplete", spent.complete());
    }
    ArrayNode plating = node.putArray("plating");
    PlatingLine.list(book, run).forEach(line -> plating(plating.addObject(), run, line));
    needs(node.putArray("needs"), run);
  }

  private void plating(ObjectNode node, ServiceRun run, PlatingLine line) {
    node.put("course", line.fire().code());
    node.put("dish", line.dish().code());
    line.plating().station().ifPresent(station -> node.put("station", station));
    node.set("plates", json.count(Paths.plating(run, line, "plates"), line.plates()));
    line.trays()
        .ifPresent(
            trays -> node.set("trays", json.count(Paths.plating(run, line, "trays"), trays)));
    node.set("start", json.at(Paths.plating(run, line, "start"), line.start()));
    node.put("fire", json.time(line.fire().at()));
  }

  private void needs(ArrayNode needs, ServiceRun run) {
    Map<String, ServiceRun.Use> sums = new LinkedHashMap<>();
    for (ServiceRun.Use use : run.uses()) {
      sums.merge(
          Components.word(book.formulary(), use.version(), use.output()),
          use,
          (a, b) ->
              new ServiceRun.Use(
                  a.version(), a.output(), a.amount().plus(b.amount()), a.window(), a.pickUps()));
    }
    sums.forEach(
        (word, use) -> {
          ObjectNode need = needs.addObject().put("component", word);
          String path = Paths.need(run.id(), word, use.amount().dimension());
          need.set("amount", json.amount(path, use.amount()));
        });
  }

  private void make(ObjectNode node, Make make) {
    FormulaVersion version = make.version();
    node.put("make", make.id());
    node.put("formula", version.formula());
    node.put("version", String.valueOf(version.number()));
    node.set("wanted", json.amount(Paths.make(make, "wanted"), make.wanted()));
    node.set("basis", json.amount(Paths.make(make, "basis"), make.scaled().basis()));
    node.set("readyBy", json.at(Paths.make(make, "ready-by"), make.readyBy()));
    Money spent = cost.of(make.scaled());
    node.set(
        "cost", json.number(Paths.make(make, "cost"), spent.number(), book.kitchen().currency()));
    node.put("costComplete", spent.complete());
    ArrayNode serves = node.putArray("serves");
    make.needs().stream().map(need -> need.user()).distinct().forEach(serves::add);
    ArrayNode raised = node.putArray("raisedBy");
    make.raisedBy().forEach(why -> raised.add(messages.say(why)));
    ArrayNode gives = node.putArray("gives");
    for (int i = 0; i < version.outputs().size(); i++) {
      Output output = version.outputs().get(i);
      ObjectNode given = gives.addObject().put("output", output.code());
      given.set("made", json.amount(Paths.store(make, output, "made"), make.scaled().output(i)));
    }
  }

  /** What a draw names: a tub, or the make that is still to fill one. */
  static String from(Draw draw) {
    return Begun.isExpected(draw.lot()) ? "make" : "tub";
  }

  private void tub(ObjectNode node, Draw draw) {
    node.put(from(draw), draw.lot().code());
    node.put("component", draw.lot().component().formula());
    node.put("user", draw.need().user());
    node.put("useBy", json.time(draw.lot().useBy()));
    node.set("used", json.amount(Paths.tub(draw), draw.amount()));
  }

  private void run(ObjectNode node, PrepSheet.BathRun run) {
    node.put("make", run.make().id());
    run.numbers()
        .forEach(
            (field, value) -> {
              String[] parts = value.split(" ", 2);
              node.set(
                  field,
                  json.number(
                      Paths.run(run.make(), field),
                      new BigDecimal(parts[0]),
                      parts.length > 1 ? parts[1] : "1"));
            });
  }

  private void bath(ArrayNode baths, PrepSheet.BathSheet sheet) {
    for (BathDay.Use use : sheet.answer().uses()) {
      ObjectNode node = baths.addObject();
      node.put("formula", sheet.formula());
      node.put("day", sheet.day().toString());
      node.put("bath", use.label());
      node.set("pieces", json.count(Paths.bath(sheet, use.label(), "pieces"), use.pieces()));
      node.set("from", json.at(Paths.bath(sheet, use.label(), "from"), use.from()));
      node.set("to", json.at(Paths.bath(sheet, use.label(), "to"), use.to()));
      node.set(
          "taken",
          json.number(
              Paths.bath(sheet, use.label(), "taken"), BigDecimal.valueOf(use.lostMl()), "mL"));
    }
  }
}
