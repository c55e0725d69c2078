package halfgram.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.DayWith;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.Push;
import halfgram.desk.SheetEffects;
import halfgram.desk.Slips;
import halfgram.desk.WhatIf;
import halfgram.pages.Rooms;
import halfgram.prep.Serving;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalTime;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A service later or earlier, or with other covers. With {@code look=yes} nothing is stored; with
 * {@code accept=yes} the plan with it is put in force.
 */
public final class SlipApi implements Server.Part {
  private static final String PLACE = "/k/{kitchen}/api/v1/slip/{run}";
  private static final int MOST_COVERS = 20_000;

  private final Desk desk;
  private final Slips slips;
  private final SheetEffects effects;
  private final DayWith dayWith;

  public SlipApi(Desk desk, Slips slips, SheetEffects effects, WhatIf whatIf) {
    this.desk = desk;
    this.dayWith = new DayWith(desk, whatIf);
    this.slips = slips;
    this.effects = effects;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get(PLACE, this::one);
    routes.post(PLACE, this::slip);
  }

  private void one(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    service(node, house, found(visit, house));
    visit.json(200, node.toString());
  }

  private void slip(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Slips.Found found = found(visit, house);
    Json.object(
        visit,
        context.body(),
        body -> {
          Call call = new Call(body);
          Slips.Asked asked = asked(call, found);
          if (!call.problems().isEmpty()) {
            call.refuse(visit);
          } else {
            look(visit, house, asked);
          }
        });
  }

  // ---- behind the handlers ----

  private static Slips.Found found(Visit visit, House house) {
    String run = visit.part("run");
    return Slips.find(house, run).orElseThrow(() -> Halt.notFound(run));
  }

  private static Slips.Asked asked(Call call, Slips.Found found) {
    int minutes = call.findNumber("minutes", -Push.MOST).orElse(0L).intValue();
    if (minutes > Push.MOST) {
      call.problem("minutes", String.valueOf(minutes), "slip.minutes-fault", Push.MOST);
    }
    Optional<Long> covers = call.findNumber("covers", 0);
    covers
        .filter(count -> count > MOST_COVERS)
        .ifPresent(count -> call.problem("covers", count.toString(), "slip.covers-fault"));
    Optional<String> serve = call.findText("serve");
    Optional<Serving> serving = serve.flatMap(Serving::parse);
    if (serve.isPresent() && serving.isEmpty()) {
      call.problem("serve", serve.get(), "slip.serve-fault");
    }
    if (minutes == 0 && covers.isEmpty() && serve.isEmpty() && call.problems().isEmpty()) {
      call.problem("minutes", "", "slip.minutes-fault", Push.MOST);
    }
    Optional<LocalTime> from = call.findText("from").flatMap(text -> time(call, text));
    return new Slips.Asked(
        found.run(),
        minutes == 0 ? Optional.empty() : Optional.of(new Push(from, minutes)),
        covers
            .map(count -> OptionalInt.of((int) Math.min(count, MOST_COVERS)))
            .orElse(OptionalInt.empty()),
        serving);
  }

  private static Optional<LocalTime> time(Call call, String text) {
    try {
      return Optional.of(LocalTime.parse(text));
    } catch (DateTimeParseException e) {
      call.problem("from", text, "accept.time");
      return Optional.empty();
    }
  }

  private void look(Visit visit, House house, Slips.Asked asked) {
    Slips.Tried tried = slips.look(house, asked);
    if (tried.house().isEmpty()) {
      Call.refuse(visit, Call.within("$", tried.problems()));
      return;
    }
    House after = tried.house().get();
    Slips.Found service = Slips.find(after, asked.run()).orElseThrow();
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    service(node, house, service);
    SheetEffects.Slipped slipped = effects.slip(house, after, service.date());
    EffectsJson.write(node, slipped.sheets());
    slipped.sheets().stream()
        .filter(effect -> effect.of() == SheetEffects.Of.TODAY)
        .forEach(effect -> EffectsJson.lacking(node, effect.sheet()));
    slipped
        .consequences()
        .ifPresent(
            of -> EffectsJson.write(node.putObject("consequences"), of, Answers.zone(house)));
    dayWith
        .find(house, after, service.date(), visit.who())
        .ifPresent(of -> WhatIfJson.write(node.putObject("crew"), of, Answers.zone(house)));
    if (!Query.isAsked(visit, "look")) {
      store(visit, house, asked, service);
      node.put("facts", desk.again(house).stand().facts());
    }
    visit.json(200, node.toString());
  }

  private void store(Visit visit, House house, Slips.Asked asked, Slips.Found found) {
    long seen = Query.findNumber(visit, "seen").orElse(house.stand().facts());
    Slips.Outcome outcome = slips.save(house, asked, seen, visit.who());
    if (!(outcome instanceof Slips.Saved)) {
      throw Halt.stale();
    }
    boolean today = found.date().equals(house.day(desk.now()));
    if (Query.isAsked(visit, "accept") && today && !slips.force(house, found, visit.who())) {
      throw Halt.stale();
    }
  }

  private static void service(ObjectNode node, House house, Slips.Found found) {
    node.put("service", found.run());
    node.put("date", found.date().toString());
    node.put("start", found.start().toString());
    node.put("end", found.end().toString());
    found.covers().ifPresent(covers -> node.put("covers", covers));
    ArrayNode times = node.putArray("times");
    found.times().forEach(one -> times.add(one.at().toString()));
    node.put("facts", house.stand().facts());
  }
}
