package halfgram.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.CrewInForce;
import halfgram.desk.CrewPlans;
import halfgram.desk.Delays;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.desk.Nights;
import halfgram.desk.Plans;
import halfgram.desk.Whys;
import halfgram.measure.Because;
import halfgram.pages.Rooms;
import halfgram.prep.Behind;
import halfgram.prep.KitchenBook;
import halfgram.prep.Missed;
import halfgram.prep.PrepSheet;
import halfgram.prep.ShortBatch;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import halfgram.words.SheetWords;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import java.util.function.BiFunction;

/** The plan in force, what would change it, putting that in force, and why. */
public final class PlanApi implements Server.Part {
  private final Desk desk;
  private final Plans plans;
  private final CrewPlans crewPlans;
  private final Whys whys;
  private final Nights nights;
  private final BiFunction<KitchenBook, PrepSheet, String> result;

  public PlanApi(
      Desk desk,
      Plans plans,
      CrewPlans crewPlans,
      Whys whys,
      Nights nights,
      BiFunction<KitchenBook, PrepSheet, String> result) {
    this.desk = desk;
    this.plans = plans;
    this.crewPlans = crewPlans;
    this.whys = whys;
    this.nights = nights;
    this.result = result;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/api/v1/plan", this::plan);
    routes.post("/k/{kitchen}/api/v1/plan", this::accept);
    routes.get("/k/{kitchen}/api/v1/today", this::today);
    routes.get("/k/{kitchen}/api/v1/tasks", this::tasks);
    routes.get("/k/{kitchen}/api/v1/why", this::why);
  }

  private void plan(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    LocalDate day = day(visit, house);
    Optional<InForce> inForce = plans.findOrOpen(house, day, visit.who());
    if (inForce.isPresent()) {
      visit.json(200, result.apply(inForce.get().book(), inForce.get().sheet()));
    } else {
      Plans.Proposal preview = plans.preview(house, day, 1);
      visit.json(200, result.apply(preview.book(), preview.sheet()));
    }
  }

  private void accept(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Call call = new Call(Json.body(context.body()));
    LocalDate day = call.date("day", house.day(desk.now()));
    long facts = call.number("facts", 0);
    if (!call.problems().isEmpty()) {
      call.refuse(visit);
    } else if (plans.find(house, day).isEmpty()) {
      throw Halt.notFound(day.toString());
    } else if (plans.accept(house, day, facts, visit.who()) == Plans.Accepting.STALE) {
      throw Halt.stale();
    } else {
      visit.json(201, state(house, plans.find(house, day).orElseThrow(), visit));
    }
  }

  private void today(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    LocalDate day = day(visit, house);
    InForce inForce =
        plans.findOrOpen(house, day, visit.who()).orElseThrow(() -> Halt.notFound(day.toString()));
    visit.json(200, state(desk.again(house), inForce, visit));
  }

  private void tasks(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    LocalDate day = day(visit, house);
    InForce inForce =
        plans.findOrOpen(house, day, visit.who()).orElseThrow(() -> Halt.notFound(day.toString()));
    String station = visit.query("station");
    if (!station.isEmpty() && !house.book().stations().containsKey(station)) {
      throw Halt.notFound(station);
    }
    ArrayNode list = JsonNodeFactory.instance.arrayNode();
    Messages words = visit.words();
    SheetWords names = new SheetWords(inForce.book(), inForce.sheet(), words);
    Optional<CrewInForce> crew = crewPlans.findOrMake(house, inForce, visit.who());
    for (Task task : inForce.sheet().tasks()) {
      if (station.isEmpty() || task.station().equals(station)) {
        task(list.addObject(), task, inForce, crew, names);
      }
    }
    visit.json(200, list.toString());
  }

  private void why(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String[] plan = visit.query("plan").split("/", -1);
    if (plan.length != 2 || !plan[1].matches("\\d{1,6}")) {
      throw Halt.unreadable("plan=YYYY-MM-DD/NUMBER");
    }
    LocalDate day = Query.date("plan", plan[0]);
    int number = Integer.parseInt(plan[1]);
    Because.Recording recording =
        number == 0
            ? whys.preview(house, day)
            : whys.find(house, day, number).orElseThrow(() -> Halt.notFound(visit.query("plan")));
    String path = visit.query("path");
    Because.Note note = recording.find(path).orElseThrow(() -> Halt.notFound(path));
    visit.json(200, note(note, visit.words()));
  }

  // ---- below ----

  /** Today and later days that have none yet are opened only when they are today. */
  private LocalDate day(Visit visit, House house) {
    return Query.findDate(visit, "date").orElseGet(() -> house.day(desk.now()));
  }

  private String state(House house, InForce inForce, Visit visit) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("kitchen", house.code());
    node.put("day", inForce.plan().day().toString());
    node.put("plan", inForce.plan().number());
    node.put("change", house.stand().change());
    node.put("facts", house.stand().facts());
    node.put("fits", inForce.sheet().fits());
    ArrayNode list = node.putArray("tasks");
    Messages words = visit.words();
    SheetWords names = new SheetWords(inForce.book(), inForce.sheet(), words);
    Optional<CrewInForce> crew = crewPlans.findOrMake(house, inForce, visit.who());
    inForce.sheet().tasks().forEach(task -> task(list.addObject(), task, inForce, crew, names));
    ArrayNode tonight = node.putArray("tonight");
    inForce.sheet().tonight().forEach(task -> tonight.add(task.id()));
    ArrayNode missed = node.putArray("missed");
    nights.missed(house, inForce).forEach(one -> missed(missed.addObject(), one));
    ZoneId zone = inForce.book().kitchen().clock().zone();
    ArrayNode behind = node.putArray("behind");
    if (inForce.plan().day().equals(house.day(desk.now()))) {
      Delays.list(inForce, desk.now()).forEach(one -> behind(behind.addObject(), one, zone));
    }
    ArrayNode shorts = node.putArray("short");
    inForce.listShort(desk.now()).forEach(one -> shorter(shorts.addObject(), one));
    plans
        .findProposal(house, inForce)
        .ifPresent(
            proposal -> DifferenceJson.write(node.putObject("proposal"), proposal.difference()));
    return node.toString();
  }

  private static void missed(ObjectNode node, Missed missed) {
    node.put("missed", missed.task().id());
    node.put("task", missed.now().id());
    node.put("lateMinutes", missed.late().toMinutes());
    node.put("standsMinutes", missed.stands().toMinutes());
    node.put("restMinutes", missed.output().rest().min().toMinutes());
  }

  private static void behind(ObjectNode node, Behind late, ZoneId zone) {
    node.put("make", late.make().id());
    node.put("ready", Answers.moment(late.ready(), zone));
    node.put("user", late.need().user());
    node.put("needed", Answers.moment(late.need().readyBy(), zone));
    node.put("lateMinutes", late.by().toMinutes());
  }

  private static void shorter(ObjectNode node, ShortBatch batch) {
    node.put("task", batch.task().id());
    node.put("output", batch.stored().output().code());
    Answers.amount(node, "came", batch.came());
    Answers.amount(node, "planned", batch.planned());
    batch.without().forEach(node.putArray("without")::add);
  }

  private static void task(
      ObjectNode node, Task task, InForce inForce, Optional<CrewInForce> crew, SheetWords names) {
    TaskProgress progress = inForce.progress(task);
    ZoneId zone = inForce.book().kitchen().clock().zone();
    node.put("id", task.id());
    node.put("name", names.title(task));
    node.put("station", task.station());
    node.put("start", Answers.moment(task.start(), zone));
    node.put("end", Answers.moment(task.end(), zone));
    crew.flatMap(one -> one.plan().find(task.id()))
        .ifPresent(placed -> LanesJson.planned(node.putObject("planned"), placed, zone));
    node.put("state", Call.word(progress.state()));
    progress.onIt().ifPresent(on -> node.put("cook", on.cook()));
    progress.problem().ifPresent(problem -> node.put("problem", problem));
    progress.doneAt().ifPresent(at -> node.put("doneAt", Answers.moment(at, zone)));
    progress.amount().ifPresent(amount -> Answers.amount(node, "amount", amount));
    progress.weighed().keySet().forEach(node.putArray("weighed")::add);
    progress.last().ifPresent(last -> node.put("last", last.id().toString()));
  }

  private static String note(Because.Note note, Messages words) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("path", note.path());
    node.put("value", note.value());
    node.put("rule", words.say(note.rule()));
    ArrayNode inputs = node.putArray("inputs");
    for (Because.Input input : note.inputs()) {
      ObjectNode one = inputs.addObject();
      one.put("name", words.say(input.name()));
      one.put("value", input.value());
      input.from().ifPresent(from -> one.put("path", from));
      input.standing().ifPresent(standing -> one.put("standing", words.say(standing)));
    }
    return node.toString();
  }
}
