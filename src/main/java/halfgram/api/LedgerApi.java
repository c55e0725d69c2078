package halfgram.api;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.Coming;
import halfgram.desk.Desk;
import halfgram.desk.Dipped;
import halfgram.desk.House;
import halfgram.desk.Plans;
import halfgram.desk.Waste;
import halfgram.lot.Lot;
import halfgram.pages.Rooms;
import halfgram.prep.Components;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;

/** The ledger across tubs: what was lost, what was taken of what is kept, what is on the way. */
public final class LedgerApi implements Server.Part {
  private static final String PLACE = "/k/{kitchen}/api/v1/";
  private static final int MOST_DAYS = 400;

  private final Desk desk;
  private final Plans plans;
  private final Dipped dipped;
  private final Waste waste;

  public LedgerApi(Desk desk, Plans plans) {
    this.desk = desk;
    this.plans = plans;
    this.dipped = new Dipped(desk);
    this.waste = new Waste(desk, plans);
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get(PLACE + "waste", this::waste);
    routes.get(PLACE + "taken", this::taken);
    routes.post(PLACE + "taken/seen", this::seen);
    routes.get(PLACE + "coming", this::coming);
  }

  private void waste(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    LocalDate to = Query.findDate(visit, "to").orElse(house.day(desk.now()));
    LocalDate from = Query.findDate(visit, "from").orElse(to);
    if (from.isAfter(to) || ChronoUnit.DAYS.between(from, to) > MOST_DAYS) {
      throw Halt.unreadable("from=" + to + ", at most " + MOST_DAYS + " days before to");
    }
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    ArrayNode days = node.putArray("days");
    waste.list(house, from, to).forEach(day -> day(days.addObject(), house, day, visit));
    visit.json(200, node.toString());
  }

  private void taken(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    visit.json(200, taken(house).toString());
  }

  private void seen(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    JsonNode body = Json.body(context.body());
    List<Long> numbers = new ArrayList<>();
    Call call = new Call(body);
    for (JsonNode one : body.path("changes")) {
      if (one.isIntegralNumber() && one.canConvertToLong() && one.asLong() > 0) {
        numbers.add(one.asLong());
      } else {
        call.problem("changes", one.toString(), "api.accept-number", 1);
      }
    }
    if (numbers.isEmpty() && call.problems().isEmpty()) {
      call.problem("changes", "", "api.accept-number", 1);
    }
    if (call.problems().isEmpty()) {
      dipped.see(house, numbers, visit.who());
      visit.json(200, taken(desk.again(house)).toString());
    } else {
      call.refuse(visit);
    }
  }

  private void coming(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    ArrayNode list = node.putArray("coming");
    plans
        .find(house, house.day(desk.now()))
        .map(inForce -> Coming.list(inForce, desk.now()))
        .orElse(List.of())
        .forEach(one -> coming(list.addObject(), house, one, visit));
    visit.json(200, node.toString());
  }

  // ---- behind the handlers ----

  private ObjectNode taken(House house) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    ArrayNode list = node.putArray("taken");
    dipped
        .list(house, plans.find(house, house.day(desk.now())))
        .forEach(dip -> TubJson.dip(list.addObject(), house, dip));
    return node;
  }

  private static void day(ObjectNode node, House house, Waste.Day day, Visit visit) {
    node.put("day", day.date().toString());
    ArrayNode lines = node.putArray("components");
    for (Waste.Line line : day.lines()) {
      ObjectNode one = lines.addObject();
      one.put(
          "name", visit.words().text(Components.name(house.book().formulary(), line.component())));
      one.put("component", line.component().formula());
      line.component().output().ifPresent(output -> one.put("output", output));
      Answers.amount(one, "amount", line.amount());
      one.put("planned", line.planned());
      ArrayNode reasons = one.putArray("reasons");
      line.reasons()
          .forEach(
              (reason, amount) ->
                  Answers.amount(reasons.addObject().put("reason", reason), "amount", amount));
      TubJson.cost(one.putObject("cost"), house, line.cost(), line.unpriced());
    }
    TubJson.cost(node.putObject("cost"), house, day.cost(), day.unpriced());
  }

  private static void coming(ObjectNode node, House house, Coming coming, Visit visit) {
    Lot lot = coming.lot();
    node.put("make", coming.begun().make().id());
    node.put(
        "name", visit.words().text(Components.name(house.book().formulary(), lot.component())));
    node.put("component", lot.component().formula());
    lot.component().output().ifPresent(output -> node.put("output", output));
    Answers.amount(node, "amount", lot.left());
    node.put("ready", Answers.moment(lot.made(), Answers.zone(house)));
    node.put("useBy", Answers.moment(lot.useBy(), Answers.zone(house)));
    ArrayNode takers = node.putArray("for");
    coming
        .takers()
        .forEach(
            (user, amount) ->
                Answers.amount(takers.addObject().put("user", user), "amount", amount));
  }
}
