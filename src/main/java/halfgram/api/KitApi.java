package halfgram.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.Kit;
import halfgram.pages.Rooms;
import halfgram.prep.Carrying;
import halfgram.prep.Wash;
import halfgram.web.Problems;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.Optional;
import java.util.UUID;

/** What the kit carries, and what is said of it. */
public final class KitApi implements Server.Part {
  private static final String PLACE = "/k/{kitchen}/api/v1/kit";

  private final Desk desk;
  private final Kit kit;

  public KitApi(Desk desk, Kit kit) {
    this.desk = desk;
    this.kit = kit;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get(PLACE, this::list);
    routes.post(PLACE, this::say);
  }

  private void list(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("knownSince", Answers.moment(kit.knownSince(), Answers.zone(house)));
    ArrayNode things = node.putArray("things");
    kit.list(house).forEach(one -> thing(things.addObject(), house, one));
    ArrayNode said = node.putArray("said");
    kit.listSaid(house).forEach(one -> said(said.addObject(), house, one));
    visit.json(200, node.toString());
  }

  /** Washed, done with another, or undone; the same id sent again is the same entry. */
  private void say(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Call call = new Call(Json.body(context.body()));
    UUID id = call.findUuid("said").orElseGet(UUID::randomUUID);
    Optional<UUID> undoes = call.findUuid("undoes");
    Optional<String> task = call.findText("task");
    String thing = undoes.isPresent() ? "" : call.text("thing");
    String how = undoes.isPresent() ? "" : call.text(task.isPresent() ? "with" : "how");
    if (!call.problems().isEmpty()) {
      call.refuse(visit);
      return;
    }
    Kit.Outcome outcome =
        undoes
            .map(of -> kit.undo(house, id, of, visit.who()))
            .or(() -> task.map(of -> kit.instead(house, id, thing, of, how, visit.who())))
            .orElseGet(() -> kit.wash(house, id, thing, how, visit.who()));
    if (outcome instanceof Kit.Said said) {
      ObjectNode node = JsonNodeFactory.instance.objectNode();
      said(node, house, said.wash());
      visit.json(said.repeated() ? 200 : 201, node.toString());
    } else if (outcome instanceof Kit.Refused refused) {
      String why = visit.words().say("kit.not-said", refused.because());
      visit.json(409, Problems.json("refused", why));
    }
  }

  private static void thing(ObjectNode node, House house, Carrying carrying) {
    node.put("thing", carrying.thing());
    ArrayNode carries = node.putArray("carries");
    carrying
        .by()
        .forEach(
            (code, use) -> {
              ObjectNode one = carries.addObject().put("allergen", code);
              one.put("since", Answers.moment(use.first(), Answers.zone(house)));
              one.put("task", use.task());
            });
    carrying
        .washed()
        .ifPresent(wash -> node.put("washed", Answers.moment(wash.at(), Answers.zone(house))));
  }

  private static void said(ObjectNode node, House house, Wash wash) {
    node.put("said", wash.id().toString());
    node.put("thing", wash.thing());
    wash.task().ifPresent(task -> node.put("task", task));
    if (wash.undoes().isEmpty()) {
      node.put(wash.cleans() ? "how" : "with", wash.how());
    }
    wash.undoes().ifPresent(undoes -> node.put("undoes", undoes.toString()));
    node.put("who", wash.who());
    node.put("at", Answers.moment(wash.at(), Answers.zone(house)));
  }
}
