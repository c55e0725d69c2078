package halfgram.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.CrewInForce;
import halfgram.desk.CrewPlans;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.desk.Plans;
import halfgram.pages.Rooms;
import halfgram.pages.TypedMoment;
import halfgram.prep.crew.CrewDifference;
import halfgram.prep.crew.CrewPlan;
import halfgram.prep.crew.DayFacts;
import halfgram.web.Halt;
import halfgram.web.Problems;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/** Who does what when, what it would be from now on, and the chef's hand in it. */
public final class CrewPlanApi implements Server.Part {
  private static final String PLACE = "/k/{kitchen}/api/v1/lanes";

  private final Desk desk;
  private final Plans plans;
  private final CrewPlans crewPlans;

  public CrewPlanApi(Desk desk, Plans plans, CrewPlans crewPlans) {
    this.desk = desk;
    this.plans = plans;
    this.crewPlans = crewPlans;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get(PLACE, this::lanes);
    routes.post(PLACE, this::accept);
    routes.post(PLACE + "/pin", this::pin);
    routes.post(PLACE + "/unpin", this::unpin);
    routes.post(PLACE + "/longer", this::longer);
  }

  private void lanes(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    LocalDate today = house.day(desk.now());
    LocalDate day = Query.findDate(visit, "date").orElse(today);
    InForce inForce =
        plans.findOrOpen(house, day, visit.who()).orElseThrow(() -> Halt.notFound(day.toString()));
    Optional<CrewInForce> crew = crewPlans.current(house, inForce, visit.who());
    show(visit, 200, house, inForce, crew.orElseThrow(() -> Halt.notFound(day.toString())));
  }

  private void accept(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Call call = new Call(Json.body(context.body()));
    LocalDate day = call.date("day", house.day(desk.now()));
    int number = (int) Math.min(Integer.MAX_VALUE, call.number("number", 1));
    String mark = call.findText("mark").orElse("");
    if (!call.problems().isEmpty()) {
      call.refuse(visit);
      return;
    }
    open(house, day);
    CrewPlans.Seen seen = new CrewPlans.Seen(number, mark);
    if (crewPlans.accept(house, day, seen, visit.who()) == Plans.Accepting.STALE) {
      throw Halt.stale();
    }
    InForce inForce = open(house, day);
    CrewInForce crew = crewPlans.inForce(house, inForce, visit.who());
    show(visit, 201, desk.again(house), inForce, crew);
  }

  private void pin(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Call call = new Call(Json.body(context.body()));
    LocalDate day = call.date("day", house.day(desk.now()));
    String task = call.findText("task").orElse("");
    Optional<Instant> start = start(call, house, day);
    List<String> people = call.texts("people");
    if (!call.problems().isEmpty()) {
      call.refuse(visit);
      return;
    }
    InForce inForce = open(house, day);
    DayFacts.Pin pin = new DayFacts.Pin(start.orElseThrow(), people);
    tell(visit, house, day, crewPlans.pin(house, inForce, task, pin, visit.who()));
  }

  /** "15:30" of the business day, or a moment on the kitchen's clock. */
  private static Optional<Instant> start(Call call, House house, LocalDate day) {
    String typed = call.findText("start").orElse("");
    Optional<Instant> start = TypedMoment.on(day, typed, house.book().kitchen().clock());
    if (start.isEmpty()) {
      call.problem("start", typed, "lanes.accept-start", day);
    }
    return start;
  }

  private void unpin(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Call call = new Call(Json.body(context.body()));
    LocalDate day = call.date("day", house.day(desk.now()));
    String task = call.findText("task").orElse("");
    if (!call.problems().isEmpty()) {
      call.refuse(visit);
      return;
    }
    tell(visit, house, day, crewPlans.unpin(house, open(house, day), task, visit.who()));
  }

  private void longer(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Call call = new Call(Json.body(context.body()));
    LocalDate day = house.day(desk.now());
    String task = call.findText("task").orElse("");
    int minutes = (int) Math.min(Integer.MAX_VALUE, call.number("minutes", 1));
    if (!call.problems().isEmpty()) {
      call.refuse(visit);
      return;
    }
    InForce inForce = open(house, day);
    inForce.findTask(task).ifPresent(one -> visit.checkStation(one.station()));
    tell(visit, house, day, crewPlans.longer(house, inForce, task, minutes, visit.who()));
  }

  /** The plan of a day that is not over. */
  private InForce open(House house, LocalDate day) {
    return Optional.of(day)
        .filter(one -> !one.isBefore(house.day(desk.now())))
        .flatMap(one -> plans.find(house, one))
        .orElseThrow(() -> Halt.notFound(day.toString()));
  }

  private void tell(Visit visit, House house, LocalDate day, CrewPlans.Outcome outcome) {
    if (outcome instanceof CrewPlans.Refused refused) {
      String why = visit.words().say(refused.because());
      visit.json(409, Problems.json("refused", why));
    } else if (outcome instanceof CrewPlans.Done done) {
      show(visit, 201, desk.again(house), open(house, day), done.crew());
    }
  }

  // ---- what is answered ----

  private void show(Visit visit, int status, House house, InForce inForce, CrewInForce crew) {
    ZoneId zone = Answers.zone(house);
    DayFacts facts = crewPlans.facts(house, inForce, crew);
    CrewPlan plan = crew.plan();
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("day", inForce.plan().day().toString());
    node.put("plan", inForce.plan().number());
    node.put("number", crew.number());
    node.put("at", Answers.moment(crew.at(), zone));
    node.put("who", crew.who());
    LanesJson.plan(node, plan, crew.pins().keySet(), zone);
    ArrayNode adrift = node.putArray("adrift");
    crewPlans
        .adrift(house, inForce, crew)
        .forEach(one -> LanesJson.adrift(adrift.addObject(), one));
    ArrayNode over = node.putArray("over");
    CrewDifference.over(inForce.sheet(), facts, plan)
        .forEach(one -> LanesJson.over(over.addObject(), one));
    if (!inForce.plan().day().isBefore(house.day(desk.now()))) {
      crewPlans
          .findProposal(house, inForce, crew)
          .ifPresent(one -> LanesJson.proposal(node.putObject("proposal"), one, zone));
    }
    visit.json(status, node.toString());
  }
}
