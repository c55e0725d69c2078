package halfgram.api;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.desk.Plans;
import halfgram.desk.WhatIf;
import halfgram.pages.Rooms;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
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
    WhatIfJson.load(
        node, whatIf.day(house, inForce, visit.who()).outlook().load(), Answers.zone(house));
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
      ObjectNode node = JsonNodeFactory.instance.objectNode();
      WhatIfJson.write(node, answer, Answers.zone(house));
      visit.json(200, node.toString());
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
}
