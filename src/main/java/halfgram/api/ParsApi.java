package halfgram.api;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.Pars;
import halfgram.desk.Pars.Spot;
import halfgram.input.Problem;
import halfgram.measure.Message;
import halfgram.pages.Rooms;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The week's pars, read and set as the book writes them. */
public final class ParsApi implements Server.Part {
  private static final String PLACE = "/k/{kitchen}/api/v1/pars";

  private final Desk desk;
  private final Pars pars;

  public ParsApi(Desk desk, Pars pars) {
    this.desk = desk;
    this.pars = pars;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get(PLACE, this::list);
    routes.put(PLACE, this::save);
  }

  private void list(Context context) {
    Visit visit = Visit.of(context);
    answer(visit, Rooms.house(desk, visit));
  }

  /** What was seen and is no longer wanted is emptied; cells in neither list stay as they are. */
  private void save(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    JsonNode body = Json.body(context.body());
    List<Problem> problems = new ArrayList<>(problems(house, body, "pars"));
    problems.addAll(problems(house, body, "seen"));
    if (!problems.isEmpty()) {
      Call.refuse(visit, problems);
      return;
    }
    Map<Spot, String> seen = Pars.cells(body.path("seen"));
    Map<Spot, String> wanted = Pars.cells(body.path("pars"));
    seen.keySet().forEach(spot -> wanted.putIfAbsent(spot, ""));
    Pars.Outcome outcome = pars.save(house, seen, wanted, visit.who());
    if (outcome instanceof Pars.Saved) {
      answer(visit, desk.again(house));
    } else {
      // The list reads by itself: what is wrong with the whole came between.
      throw Halt.stale();
    }
  }

  private List<Problem> problems(House house, JsonNode body, String key) {
    if (!body.path(key).isArray()) {
      Message wanted = Message.of("problem.accepted", Message.of("accept.list"));
      return List.of(new Problem("$." + key, body.path(key).toString(), wanted));
    }
    return pars.problems(house, body.path(key)).stream()
        .map(one -> new Problem(path(one.path(), key), one.value(), one.message()))
        .toList();
  }

  private static String path(String path, String key) {
    return path.startsWith("$.pars[") ? "$." + key + path.substring("$.pars".length()) : path;
  }

  private static void answer(Visit visit, House house) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("change", house.stand().change());
    node.set("pars", house.tree().path("pars"));
    visit.json(200, node.toString());
  }
}
