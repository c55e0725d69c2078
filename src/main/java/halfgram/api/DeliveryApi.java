package halfgram.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.delivery.Delivery;
import halfgram.delivery.DeliveryStand;
import halfgram.delivery.DeliveryStore;
import halfgram.desk.Deliveries;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.desk.Plans;
import halfgram.input.Problem;
import halfgram.measure.Message;
import halfgram.menu.Dish;
import halfgram.pages.Rooms;
import halfgram.prep.Awaited;
import halfgram.prep.DeliveryAnswer;
import halfgram.prep.Served;
import halfgram.prep.ShortPlates;
import halfgram.web.Halt;
import halfgram.web.Problems;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/** Deliveries as the book writes them, what is entered of them, and what they hold up. */
public final class DeliveryApi implements Server.Part {
  private static final String PLACE = "/k/{kitchen}/api/v1/deliveries";

  private final Desk desk;
  private final Plans plans;
  private final Deliveries deliveries;

  public DeliveryApi(Desk desk, Plans plans, Deliveries deliveries) {
    this.desk = desk;
    this.plans = plans;
    this.deliveries = deliveries;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get(PLACE, this::list);
    routes.post(PLACE, this::add);
    routes.get(PLACE + "/{code}", this::one);
    routes.put(PLACE + "/{code}", this::save);
    routes.post(PLACE + "/{code}/entries", this::enter);
  }

  private void list(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Slice.answer(
        visit,
        "deliveries",
        house.book().deliveries(),
        Delivery::code,
        (node, delivery) -> written(node, house, get(house, delivery.code()), delivery));
  }

  private void add(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Json.object(
        visit,
        context.body(),
        body -> store(visit, house, 201, () -> deliveries.add(house, body, visit.who())));
  }

  private void one(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    answer(visit, 200, house, visit.part("code"));
  }

  /** The delivery of the address, whole; what was entered of it stays. */
  private void save(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String code = visit.part("code");
    Json.object(
        visit,
        context.body(),
        body -> {
          String said = body.path("code").asText(code);
          if (!said.equals(code)) {
            Message wanted = Message.of("api.accept-code", code);
            Call.refuse(visit, List.of(new Problem("$.code", said, wanted)));
            return;
          }
          body.put("code", code);
          store(
              visit,
              house,
              200,
              () -> deliveries.save(house, Query.findNumber(visit, "seen"), body, visit.who()));
        });
  }

  /** The same entry sent again is the same entry. */
  private void enter(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String code = visit.part("code");
    Json.object(
        visit,
        context.body(),
        body -> store(visit, house, 201, () -> deliveries.enter(house, code, body, visit.who())));
  }

  // ---- behind the handlers ----

  private DeliveryStore.Saved get(House house, String code) {
    return deliveries.find(house, code).orElseThrow(() -> Halt.notFound(code));
  }

  /**
   * Stores something and answers with the delivery as it is then.
   *
   * @param fresh status for what was not here before
   */
  private void store(Visit visit, House house, int fresh, Supplier<Deliveries.Outcome> storing) {
    Deliveries.Outcome outcome = storing.get();
    if (outcome instanceof Deliveries.Saved saved) {
      visit.made("api/v1/deliveries/" + Visit.encoded(saved.code()));
      answer(visit, saved.repeated() ? 200 : fresh, desk.again(house), saved.code());
    } else if (outcome instanceof Deliveries.Problems problems) {
      Call.refuse(visit, Call.within(problems.place(), problems.list()));
    } else if (outcome instanceof Deliveries.Refused refused) {
      String said = visit.words().say("deliveries.refused", refused.because());
      visit.json(409, Problems.json("refused", said));
    } else if (outcome instanceof Deliveries.Stale) {
      throw Halt.stale();
    } else {
      throw Halt.notFound(visit.part("code"));
    }
  }

  private void answer(Visit visit, int status, House house, String code) {
    Delivery delivery = Deliveries.findRead(house, code).orElseThrow(() -> Halt.notFound(code));
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    written(node, house, get(house, code), delivery);
    LocalDate day = delivery.stand().day(house.book().kitchen().clock(), house.day(desk.now()));
    Optional<InForce> inForce = plans.find(house, day);
    inForce.ifPresent(
        of ->
            answer(
                node.putObject("answer"),
                house,
                DeliveryAnswer.of(
                    house.book(), of.sheet(), of.progress(), delivery.stand(), desk.now())));
    visit.json(status, node.toString());
  }

  private static void written(
      ObjectNode node, House house, DeliveryStore.Saved saved, Delivery delivery) {
    DeliveryStand stand = delivery.stand();
    node.put("code", saved.code());
    node.put("change", saved.change());
    node.put("state", state(stand));
    node.put("expected", Answers.moment(stand.expected(), Answers.zone(house)));
    stand
        .arrived()
        .ifPresent(entry -> node.put("arrived", Answers.moment(entry.at(), Answers.zone(house))));
    node.put("from", Answers.moment(stand.from(), Answers.zone(house)));
    node.put("checkInIsDefault", !delivery.checkInStated());
    ArrayNode lines = node.putArray("lines");
    for (Delivery.Line line : delivery.lines()) {
      ObjectNode one = lines.addObject().put("ingredient", line.ingredient());
      Answers.amount(one, "ordered", line.amount());
      Answers.amount(one, "comes", stand.came(line));
    }
    for (var stored : house.tree().path("deliveries")) {
      if (stored.path("code").asText().equals(delivery.code())) {
        node.set("delivery", stored);
      }
    }
  }

  private static String state(DeliveryStand stand) {
    return stand.cancelled().isPresent()
        ? "cancelled"
        : stand.isHere() ? "here" : stand.lateBy().isZero() ? "expected" : "late";
  }

  private static void answer(ObjectNode node, House house, DeliveryAnswer answer) {
    ArrayNode blocked = node.putArray("blocked");
    for (Awaited one : answer.blocked()) {
      ObjectNode task = blocked.addObject();
      task.put("task", one.task().id());
      one.ingredients().forEach(task.putArray("ingredients")::add);
      task.put("start", Answers.moment(one.task().start(), Answers.zone(house)));
      one.from()
          .ifPresent(from -> task.put("notBefore", Answers.moment(from, Answers.zone(house))));
    }
    ArrayNode serves = node.putArray("serves");
    for (Served served : answer.served()) {
      ObjectNode one = serves.addObject().put("service", served.run().id());
      ArrayNode dishes = one.putArray("dishes");
      served.dishes().stream().map(Dish::code).forEach(dishes::add);
    }
    answer
        .lastMoment()
        .ifPresent(last -> node.put("lastMoment", Answers.moment(last, Answers.zone(house))));
    node.put("tooLateMinutes", answer.tooLateBy().toMinutes());
    ArrayNode meanwhile = node.putArray("meanwhile");
    answer.meanwhile().forEach(task -> meanwhile.add(task.id()));
    ArrayNode shorts = node.putArray("short");
    for (DeliveryAnswer.Less less : answer.shorts()) {
      ObjectNode one = shorts.addObject().put("ingredient", less.line().ingredient());
      ArrayNode plates = one.putArray("plates");
      less.plates().forEach(of -> plates(plates.addObject(), of));
    }
  }

  private static void plates(ObjectNode node, ShortPlates plates) {
    node.put("service", plates.run().id());
    node.put("dish", plates.plates().dish().code());
    ArrayNode diets = node.putArray("diets");
    plates.plates().diets().forEach(diets::add);
    node.put("planned", plates.plates().count());
    node.put("possible", plates.possible());
    node.put("short", plates.shortBy());
  }
}
