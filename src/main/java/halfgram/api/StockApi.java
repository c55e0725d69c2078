package halfgram.api;

import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.Bringing;
import halfgram.desk.Desk;
import halfgram.desk.Handled;
import halfgram.desk.House;
import halfgram.desk.Plans;
import halfgram.desk.Stock;
import halfgram.input.Problem;
import halfgram.lot.Lot;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Message;
import halfgram.pages.Rooms;
import halfgram.pages.TubDeed;
import halfgram.pages.TubDeeds;
import halfgram.pages.TypedAmount;
import halfgram.web.Halt;
import halfgram.web.Problems;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;

/** The tubs in the house: put in, counted, binned, handled, and what was done taken back. */
public final class StockApi implements Server.Part {
  private static final String PLACE = "/k/{kitchen}/api/v1/stock";

  private final Desk desk;
  private final Stock stock;
  private final Bringing bringing;
  private final TubDeeds deeds;
  private final TubJson json;

  public StockApi(Desk desk, Plans plans, Stock stock, Bringing bringing, TubDeeds deeds) {
    this.desk = desk;
    this.stock = stock;
    this.bringing = bringing;
    this.deeds = deeds;
    this.json = new TubJson(desk, plans);
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get(PLACE, this::list);
    routes.post(PLACE, this::bring);
    routes.get(PLACE + "/{lot}", this::one);
    routes.post(PLACE + "/{lot}/count", this::count);
    routes.post(PLACE + "/{lot}/bin", this::bin);
    routes.post(PLACE + "/{lot}/back", this::back);
    for (TubDeed deed : TubDeed.values()) {
      routes.post(PLACE + "/{lot}/" + deed.word(), context -> deed(context, deed));
    }
  }

  private void list(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    List<Tub> tubs = Query.isAsked(visit, "ended") ? stock.listAll(house) : stock.list(house);
    Slice.answer(
        visit,
        "tubs",
        tubs,
        tub -> tub.lot().code(),
        (node, tub) -> TubJson.tub(node, house, tub, desk.now(), visit));
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
          Call call = new Call(body);
          boolean sure = call.flag("sure");
          if (!call.problems().isEmpty()) {
            call.refuse(visit);
            return;
          }
          body.remove("sure");
          Bringing.Outcome outcome = bringing.bring(house, id, body, sure, visit.who());
          if (outcome.code().isPresent()) {
            String code = outcome.code().get();
            visit.made("api/v1/stock/" + Visit.encoded(code));
            answer(visit, 201, house, code);
          } else if (!outcome.asks().isEmpty()) {
            unsure(visit, outcome.asks());
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
    Stock.Life life = get(house, visit.part("lot"));
    Lot lot = life.tub().lot();
    Call call = new Call(Json.body(context.body()));
    Optional<Amount> amount =
        call.findText("amount").flatMap(typed -> TypedAmount.read(typed, lot.left().dimension()));
    if (amount.isEmpty() && call.problems().isEmpty()) {
      boolean pieces = lot.left().dimension() == Dimension.COUNT;
      String typed = call.findText("amount").orElse("");
      call.problem("amount", typed, pieces ? "stock.not-pieces" : "stock.not-mass");
    }
    boolean sure = call.flag("sure");
    if (!call.problems().isEmpty()) {
      call.refuse(visit);
      return;
    }
    Optional<Message> doubt = sure ? Optional.empty() : life.doubt(amount.orElseThrow());
    if (doubt.isPresent()) {
      unsure(visit, List.of(doubt.get()));
    } else {
      stock.count(house, lot.code(), amount.orElseThrow(), visit.who());
      answer(visit, 200, house, lot.code());
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

  /** What is named, or the last; with neither it is what was taken back already. */
  private void back(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String code = get(house, visit.part("lot")).tub().lot().code();
    Call call = new Call(Json.body(context.body().isBlank() ? "{}" : context.body()));
    Optional<Long> change = call.findNumber("change", 1);
    boolean sure = call.flag("sure");
    if (!call.problems().isEmpty()) {
      call.refuse(visit);
      return;
    }
    OptionalLong number = change.isPresent() ? OptionalLong.of(change.get()) : OptionalLong.empty();
    Handled handled = stock.takeBack(house, code, number, sure, visit.who());
    if (handled instanceof Handled.Asks asks) {
      unsure(visit, List.of(asks.asks()));
    } else if (handled instanceof Handled.Refused refused) {
      visit.json(409, Problems.json("refused", visit.words().say(refused.because())));
    } else {
      answer(visit, 200, house, code);
    }
  }

  private void deed(Context context, TubDeed deed) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Lot lot = get(house, visit.part("lot")).tub().lot();
    Call call = new Call(Json.body(context.body()));
    TubFields fields = TubFields.of(call);
    if (!call.problems().isEmpty()) {
      call.refuse(visit);
      return;
    }
    TubDeeds.Outcome outcome = deeds.perform(house, lot, deed, fields, visit.who());
    if (outcome.done().isPresent()) {
      Handled.Done done = outcome.done().get();
      ObjectNode node = json.life(visit, house, get(house, done.tub().lot().code()));
      done.made().forEach(tub -> node.withArray("filled").add(tub.lot().code()));
      visit.json(200, node.toString());
    } else if (outcome.isRefused()) {
      String said = said(visit, outcome.problems().get(0));
      visit.json(409, Problems.json("refused", said));
    } else {
      Call.refuse(visit, outcome.problems().stream().map(StockApi::ofBody).toList());
    }
  }

  private static String said(Visit visit, Problem problem) {
    return visit.words().say(problem.message());
  }

  /** Something speaks against it, and the call does not say that it is so. */
  private static void unsure(Visit visit, List<Message> asks) {
    Messages words = visit.words();
    String said = String.join(" ", asks.stream().map(words::say).toList());
    visit.json(409, Problems.json("unsure", said));
  }

  // ---- behind the handlers ----

  private Stock.Life get(House house, String code) {
    return stock.find(house, code).orElseThrow(() -> Halt.notFound(code));
  }

  private static Problem ofBody(Problem problem) {
    return new Problem("$." + problem.path(), problem.value(), problem.message());
  }

  private void answer(Visit visit, int status, House house, String code) {
    visit.json(status, json.life(visit, house, get(house, code)).toString());
  }
}
