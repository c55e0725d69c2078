package halfgram.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.Bringing;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.Stock;
import halfgram.input.Problem;
import halfgram.lot.Lot;
import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.pages.Rooms;
import halfgram.pages.TypedAmount;
import halfgram.prep.Components;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** The tubs in the house: counted, binned, taken back, put in. */
public final class StockApi implements Server.Part {
  private static final String PLACE = "/k/{kitchen}/api/v1/stock";

  private final Desk desk;
  private final Stock stock;
  private final Bringing bringing;

  public StockApi(Desk desk, Stock stock, Bringing bringing) {
    this.desk = desk;
    this.stock = stock;
    this.bringing = bringing;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get(PLACE, this::list);
    routes.post(PLACE, this::bring);
    routes.get(PLACE + "/{lot}", this::one);
    routes.post(PLACE + "/{lot}/count", this::count);
    routes.post(PLACE + "/{lot}/bin", this::bin);
    routes.post(PLACE + "/{lot}/back", this::back);
  }

  private void list(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    List<Tub> tubs = Query.isAsked(visit, "ended") ? stock.listAll(house) : stock.list(house);
    Slice.answer(
        visit, "tubs", tubs, tub -> tub.lot().code(), (node, tub) -> tub(node, house, tub, visit));
  }

  /** The same id sent again is the same tub. */
  private void bring(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    UUID id = Call.uuid(visit.query("id")).orElseGet(UUID::randomUUID);
    if (!visit.query("id").isEmpty() && Call.uuid(visit.query("id")).isEmpty()) {
      throw Halt.unreadable("id=UUID");
    }
    Json.object(
        visit,
        context.body(),
        body -> {
          Bringing.Outcome outcome = bringing.bring(house, id, body, visit.who());
          if (outcome.code().isPresent()) {
            String code = outcome.code().get();
            visit.made("api/v1/stock/" + Visit.encoded(code));
            answer(visit, 201, house, code);
          } else {
            Call.refuse(visit, outcome.problems().stream().map(StockApi::ofBody).toList());
          }
        });
  }

  private void one(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    answer(visit, 200, house, visit.part("lot"));
  }

  private void count(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Lot lot = get(house, visit.part("lot")).tub().lot();
    Call call = new Call(Json.body(context.body()));
    Optional<Amount> amount =
        call.findText("amount").flatMap(typed -> TypedAmount.read(typed, lot.left().dimension()));
    if (amount.isEmpty() && call.problems().isEmpty()) {
      boolean pieces = lot.left().dimension() == Dimension.COUNT;
      String typed = call.findText("amount").orElse("");
      call.problem("amount", typed, pieces ? "stock.not-pieces" : "stock.not-mass");
    }
    if (call.problems().isEmpty()) {
      stock.count(house, lot.code(), amount.orElseThrow(), visit.who());
      answer(visit, 200, house, lot.code());
    } else {
      call.refuse(visit);
    }
  }

  private void bin(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String code = get(house, visit.part("lot")).tub().lot().code();
    Call call = new Call(Json.body(context.body()));
    Optional<String> reason = call.findText("reason").flatMap(Stock::reason);
    if (reason.isEmpty() && call.problems().isEmpty()) {
      call.problem("reason", call.findText("reason").orElse(""), "stock.no-reason");
    }
    if (call.problems().isEmpty()) {
      stock.bin(house, code, reason.orElseThrow(), visit.who());
      answer(visit, 200, house, code);
    } else {
      call.refuse(visit);
    }
  }

  private void back(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String code = get(house, visit.part("lot")).tub().lot().code();
    stock.takeBack(house, code, visit.who());
    answer(visit, 200, house, code);
  }

  // ---- behind the handlers ----

  private Stock.Life get(House house, String code) {
    return stock.find(house, code).orElseThrow(() -> Halt.notFound(code));
  }

  private static Problem ofBody(Problem problem) {
    return new Problem("$." + problem.path(), problem.value(), problem.message());
  }

  private void answer(Visit visit, int status, House house, String code) {
    Stock.Life life = get(house, code);
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    tub(node, house, life.tub(), visit);
    ArrayNode moves = node.putArray("movements");
    life.movements().forEach(movement -> movement(moves.addObject(), house, movement));
    visit.json(status, node.toString());
  }

  private static void tub(ObjectNode node, House house, Tub tub, Visit visit) {
    Lot lot = tub.lot();
    node.put("code", lot.code());
    node.put(
        "name", visit.words().text(Components.name(house.book().formulary(), lot.component())));
    node.put("component", lot.component().formula());
    lot.component().output().ifPresent(output -> node.put("output", output));
    lot.component().version().ifPresent(version -> node.put("version", version));
    Answers.amount(node, "left", lot.left());
    node.put("made", Answers.moment(lot.made(), Answers.zone(house)));
    node.put("useBy", Answers.moment(lot.useBy(), Answers.zone(house)));
    node.put("assumed", tub.assumed());
    if (!lot.place().isEmpty()) {
      node.put("place", lot.place());
    }
    lot.container().ifPresent(container -> node.put("container", container));
    tub.task().ifPresent(task -> node.put("task", task));
    ArrayNode reserved = node.putArray("reserved");
    lot.reserved()
        .forEach(
            one ->
                Answers.amount(
                    reserved.addObject().put("event", one.event()), "amount", one.amount()));
  }

  private static void movement(ObjectNode node, House house, Movement movement) {
    node.put("kind", Call.word(movement.kind()));
    Answers.amount(node, "amount", movement.amount());
    movement.stated().ifPresent(stated -> Answers.amount(node, "stated", stated));
    movement.event().ifPresent(event -> node.put("event", event));
    movement.reason().ifPresent(reason -> node.put("reason", reason));
    node.put("who", movement.who());
    node.put("at", Answers.moment(movement.at(), Answers.zone(house)));
  }
}
