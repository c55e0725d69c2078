package halfgram.api;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.desk.Plans;
import halfgram.desk.WhatIf;
import halfgram.pages.Rooms;
import halfgram.prep.crew.CrewDifference;
import halfgram.prep.crew.Load;
import halfgram.prep.crew.Outlook;
import halfgram.prep.crew.Placed;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** How full a day is, and what it would be with something else. */
public final class LanesApi implements Server.Part {
  private final Desk desk;
  private final Plans plans;
  private final WhatIf whatIf;

  public LanesApi(Desk desk, Plans plans, WhatIf whatIf) {
    this.desk = desk;
    this.plans = plans;
    this.whatIf = whatIf;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/api/v1/load", this::load);
    routes.post("/k/{kitchen}/api/v1/what-if", this::whatIf);
  }

  private void load(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    LocalDate day = Query.findDate(visit, "date").orElseGet(() -> house.day(desk.now()));
    InForce inForce =
        plans.findOrOpen(house, day, visit.who()).orElseThrow(() -> Halt.notFound(day.toString()));
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("day", day.toString());
    load(node, whatIf.day(house, inForce, visit.who()).outlook().load(), Answers.zone(house));
    visit.json(200, node.toString());
  }

  private void whatIf(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Json.object(visit, context.body(), body -> ask(visit, house, body));
  }

  // ---- behind the handlers ----

  private void ask(Visit visit, House house, JsonNode body) {
    Call call = new Call(body);
    List<WhatIf.Turn> turns = new ArrayList<>();
    if (call.has("services") && !body.path("services").isArray()) {
      call.problem("services", body.path("services").toString(), "lanes.accept-services");
    }
    for (JsonNode one : body.path("services")) {
      turn(call, one).ifPresent(turns::add);
    }
    WhatIf.Asked asked =
        new WhatIf.Asked(
            turns,
            call.words("drafts"),
            call.words("off"),
            call.words("more"),
            call.words("broken"));
    LocalDate today = house.day(desk.now());
    LocalDate day = call.date("date", today);
    LocalDate last = WhatIf.lastDay(today);
    if (day.isBefore(today) || day.isAfter(last)) {
      call.problem("date", day.toString(), "lanes.accept-day", today, last);
    }
    if (!asked.isSomething() && call.problems().isEmpty()) {
      call.problem("services", "", "lanes.accept-something");
    }
    if (!call.problems().isEmpty()) {
      call.refuse(visit);
      return;
    }
    WhatIf.Outcome outcome =
        whatIf.look(house, whatIf.about(house, day, visit.who()), asked, visit.who());
    if (outcome instanceof WhatIf.Wrong wrong) {
      Call.refuse(visit, wrong.problems());
    } else if (outcome instanceof WhatIf.Answer answer) {
      visit.json(200, answer(answer, Answers.zone(house)));
    }
  }

  private static Optional<WhatIf.Turn> turn(Call call, JsonNode node) {
    Call one = new Call(node);
    String service = one.text("service");
    int covers = small(one, "covers");
    int minutes = small(one, "minutes");
    if (one.problems().isEmpty()) {
      return Optional.of(new WhatIf.Turn(service, covers, minutes));
    }
    call.problem("services", node.toString(), "lanes.accept-services");
    return Optional.empty();
  }

  /** What is too large for any service stays too large. */
  private static int small(Call call, String key) {
    long number = call.findNumber(key, -MOST).orElse(0L);
    return (int) Math.min(MOST, number);
  }

  private static final long MOST = 1_000_000;

  private static String answer(WhatIf.Answer answer, ZoneId zone) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    side(node.putObject("today"), answer.today().outlook(), zone);
    side(node.putObject("then"), answer.then().outlook(), zone);
    ArrayNode moves = node.putArray("moves");
    for (Outlook.Move move : answer.moves()) {
      ObjectNode one = moves.addObject();
      one.put("task", move.task());
      one.put("minutes", move.by().toMinutes());
      move.from().ifPresent(at -> place(one.putObject("from"), at, zone));
      move.to().ifPresent(at -> place(one.putObject("to"), at, zone));
    }
    return node.toString();
  }

  private static void place(ObjectNode node, Placed at, ZoneId zone) {
    node.put("start", Answers.moment(at.start(), zone));
    ArrayNode people = node.putArray("people");
    at.people().forEach(people::add);
  }

  private static void side(ObjectNode node, Outlook outlook, ZoneId zone) {
    node.put("fits", outlook.fits());
    ArrayNode left = node.putArray("leftOut");
    outlook.leftOut().forEach(task -> left.add(task.id()));
    node.put("leftOutMinutes", minutes(outlook.leftOutTime()));
    ArrayNode late = node.putArray("late");
    outlook
        .late()
        .forEach(
            one -> late.addObject().put("task", one.task().id()).put("minutes", minutes(one.by())));
    node.put("lateMinutes", minutes(outlook.lateTime()));
    ArrayNode overrun = node.putArray("overrun");
    for (CrewDifference.Over of : outlook.overrun()) {
      ObjectNode one = overrun.addObject().put("task", of.task());
      of.user().ifPresent(user -> one.put("waits", user));
      one.put("minutes", minutes(of.by()));
    }
    node.put("overrunMinutes", minutes(outlook.overrunTime()));
    node.put("shortPlatings", outlook.shortPlatings().size());
    outlook.finish().ifPresent(at -> node.put("finish", Answers.moment(at, zone)));
    node.put("cut", outlook.crew().cut());
    load(node.putObject("load"), outlook.load(), zone);
  }

  private static long minutes(Duration time) {
    return time.toMinutes();
  }

  private static void load(ObjectNode node, Load load, ZoneId zone) {
    ArrayNode stations = node.putArray("stations");
    for (Load.OfStation of : load.stations()) {
      ObjectNode one = stations.addObject().put("station", of.station());
      share(one, of.day(), of.mark());
      ArrayNode hours = one.putArray("hours");
      for (Load.Hour hour : of.hours()) {
        ObjectNode at = hours.addObject().put("from", Answers.moment(hour.from(), zone));
        at.put("beforeService", hour.rush());
        share(at, hour.share(), hour.mark());
      }
    }
    ArrayNode people = node.putArray("people");
    for (Load.OfPerson of : load.people()) {
      ObjectNode one = people.addObject().put("person", of.person());
      share(one, of.shift(), of.mark());
      one.put("rushWorkMinutes", of.rush().work());
      one.put("rushThereMinutes", of.rush().there());
    }
  }

  private static void share(ObjectNode node, Load.Share share, Load.Mark mark) {
    node.put("workMinutes", share.work());
    node.put("thereMinutes", share.there());
    node.put("percent", share.percent());
    node.put("mark", mark.name().toLowerCase(Locale.ROOT));
  }
}
