package halfgram.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.Moments;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.RollCall;
import halfgram.input.Problem;
import halfgram.measure.Window;
import halfgram.pages.EntryFields;
import halfgram.pages.Rooms;
import halfgram.station.Breakdown;
import halfgram.station.Cook;
import halfgram.station.CrewEntry;
import halfgram.station.Works;
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

/** Who is in on a day and which machines work, and what is said of it. */
public final class CrewApi implements Server.Part {
  private static final String PLACE = "/k/{kitchen}/api/v1/crew";

  private final Desk desk;
  private final RollCall rollCall;

  public CrewApi(Desk desk, RollCall rollCall) {
    this.desk = desk;
    this.rollCall = rollCall;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get(PLACE, this::day);
    routes.post(PLACE, this::say);
  }

  private void day(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    LocalDate day =
        visit.query("date").isEmpty()
            ? house.day(desk.now())
            : Moments.date(visit.query("date"))
                .orElseThrow(() -> Halt.unreadable("date=YYYY-MM-DD"));
    RollCall.Board board = rollCall.board(house, day);
    ZoneId zone = Answers.zone(house);
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("day", day.toString());
    ArrayNode cooks = node.putArray("cooks");
    board.crew().cooks().forEach(cook -> cook(cooks.addObject(), cook, zone));
    ArrayNode machines = node.putArray("machines");
    board.crew().machines().forEach(one -> machine(machines.addObject(), one, zone));
    ArrayNode said = node.putArray("said");
    board.said().forEach(entry -> entry(said.addObject(), board, entry, zone));
    visit.json(200, node.toString());
  }

  /** The device and its number sent again are the same entry. */
  private void say(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Call call = new Call(Json.body(context.body()));
    LocalDate day = call.date("day", house.day(desk.now()));
    RollCall.Asked asked =
        new RollCall.Asked(
            call.findUuid("entry"),
            call.choice("kind", CrewEntry.Kind.class).orElse(CrewEntry.Kind.BACK),
            call.findText("person").orElse(""),
            call.findText("machine").orElse(""),
            call.findNumber("units", 1).map(String::valueOf).orElse(""),
            call.findText("from").orElse(""),
            call.findText("until").orElse(""),
            EntryFields.note(call.findText("note").orElse("")),
            visit.who(),
            call.findUuid("ends"),
            call.findUuid("undoes"),
            call.origin(desk.now()));
    if (!call.problems().isEmpty()) {
      call.refuse(visit);
      return;
    }
    RollCall.Outcome outcome = rollCall.enter(house, day, asked);
    if (outcome instanceof RollCall.Taken taken) {
      ObjectNode node = JsonNodeFactory.instance.objectNode();
      said(node, taken.entry(), Answers.zone(house));
      visit.json(taken.repeated() ? 200 : 201, node.toString());
    } else if (outcome instanceof RollCall.Wrong wrong) {
      List<Problem> problems =
          wrong.problems().stream()
              .map(one -> new Problem("$." + one.path(), one.value(), one.message()))
              .toList();
      Call.refuse(visit, problems);
    } else if (outcome instanceof RollCall.Refused refused) {
      String why = visit.words().say("crew.refused", refused.because());
      visit.json(409, Problems.json("refused", why));
    }
  }

  private static void cook(ObjectNode node, Cook cook, ZoneId zone) {
    node.put("person", cook.person().code());
    windows(node.putArray("hours"), cook.hours(), zone);
    windows(node.putArray("breaks"), cook.breaks(), zone);
  }

  private static void windows(ArrayNode list, List<Window> windows, ZoneId zone) {
    for (Window window : windows) {
      ObjectNode one = list.addObject();
      one.put("from", Answers.moment(window.start(), zone));
      one.put("until", Answers.moment(window.end(), zone));
    }
  }

  private static void machine(ObjectNode node, Works works, ZoneId zone) {
    node.put("machine", works.machine().code());
    node.put("units", works.machine().units());
    ArrayNode broken = node.putArray("broken");
    for (Breakdown breakdown : works.broken()) {
      ObjectNode one = broken.addObject();
      one.put("entry", breakdown.said().id().toString());
      one.put("units", breakdown.units());
      one.put("from", Answers.moment(breakdown.start(), zone));
      put(one, "until", breakdown.end(), zone);
    }
  }

  private static void entry(ObjectNode node, RollCall.Board board, CrewEntry entry, ZoneId zone) {
    said(node, entry, zone);
    node.put("counts", board.crew().counts(entry.id()));
  }

  private static void said(ObjectNode node, CrewEntry entry, ZoneId zone) {
    node.put("entry", entry.id().toString());
    node.put("kind", entry.kind().word());
    node.put("day", entry.day().toString());
    if (!entry.person().isEmpty()) {
      node.put("person", entry.person());
    }
    if (!entry.machine().isEmpty()) {
      node.put("machine", entry.machine());
    }
    if (entry.kind() == CrewEntry.Kind.BROKEN) {
      node.put("units", entry.units());
    }
    put(node, "from", entry.from(), zone);
    put(node, "until", entry.until(), zone);
    entry.note().ifPresent(note -> node.put("note", note));
    entry.ends().ifPresent(ends -> node.put("ends", ends.toString()));
    entry.undoes().ifPresent(undoes -> node.put("undoes", undoes.toString()));
    node.put("who", entry.who());
    node.put("at", Answers.moment(entry.at(), zone));
  }

  private static void put(ObjectNode node, String key, Optional<Instant> moment, ZoneId zone) {
    moment.ifPresent(one -> node.put(key, Answers.moment(one, zone)));
  }
}
