package halfgram.pages.deliveries;

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
import halfgram.pages.Rooms;
import halfgram.prep.DeliveryAnswer;
import halfgram.prep.PlanRequest;
import halfgram.prep.PrepSheet;
import halfgram.prep.TaskProgress;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.UUID;

/** Deliveries: the list, one of them, and what is entered of it. */
public final class DeliveryPages implements Server.Part {
  private static final int FORMS = 6;
  private static final Deliveries.Problems NONE = new Deliveries.Problems("$", List.of());

  private final Desk desk;
  private final Plans plans;
  private final Deliveries deliveries;

  public DeliveryPages(Desk desk, Plans plans, Deliveries deliveries) {
    this.desk = desk;
    this.plans = plans;
    this.deliveries = deliveries;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/deliveries", this::list);
    routes.get("/k/{kitchen}/deliveries/new", this::blank);
    routes.post("/k/{kitchen}/deliveries/new", this::sent);
    routes.get("/k/{kitchen}/deliveries/{code}", this::one);
    routes.get("/k/{kitchen}/deliveries/{code}/edit", this::edit);
    routes.post("/k/{kitchen}/deliveries/{code}/edit", this::sent);
    routes.get("/k/{kitchen}/deliveries/{code}/cancel", this::ask);
    routes.post("/k/{kitchen}/deliveries/{code}/enter", this::enter);
    routes.post("/k/{kitchen}/wall/goods", this::goods);
  }

  private void list(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    boolean past = visit.query("past").equals("yes");
    LocalDate today = house.day(desk.now());
    Map<LocalDate, List<Delivery>> byDay =
        past ? new TreeMap<>(Comparator.reverseOrder()) : new TreeMap<>();
    for (Delivery delivery : house.book().deliveries()) {
      LocalDate of = delivery.stand().day(house.book().kitchen().clock(), today);
      if (of.isBefore(today) == past) {
        byDay.computeIfAbsent(of, day -> new ArrayList<>()).add(delivery);
      }
    }
    Messages words = visit.words();
    List<ListView.Day> days = new ArrayList<>();
    byDay.forEach(
        (day, all) -> days.add(new ListView.Day(words.date(day), told(house, day, all, words))));
    visit.page("deliveries", words.say("nav.deliveries"), new ListView(days, past));
  }

  private void blank(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String today = house.day(desk.now()).toString();
    form(visit, house, 200, DeliveryForm.blank(today), NONE);
  }

  private void edit(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    DeliveryStore.Saved saved = get(house, visit.part("code"));
    form(visit, house, 200, DeliveryForm.of(Deliveries.body(saved), saved.change()), NONE);
  }

  private void sent(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    boolean fresh = context.path().endsWith("/deliveries/new");
    String code = fresh ? "" : visit.part("code");
    DeliveryForm form = DeliveryForm.sent(visit, code);
    if (visit.field("do").equals("more")) {
      form(visit, house, 200, form.withRoom(), NONE);
      return;
    }
    ObjectNode before =
        fresh ? JsonNodeFactory.instance.objectNode() : Deliveries.body(get(house, code));
    ObjectNode body = form.body(before);
    Deliveries.Outcome outcome =
        fresh
            ? deliveries.add(house, body, visit.who())
            : deliveries.save(house, seen(form), body, visit.who());
    if (outcome instanceof Deliveries.Saved saved) {
      visit.seeOther("deliveries/" + Visit.encoded(saved.code()));
    } else if (outcome instanceof Deliveries.Problems problems) {
      visit.notice(visit.words().say("deliveries.not-saved"));
      form(visit, house, 422, form, problems);
    } else if (outcome instanceof Deliveries.Stale stale) {
      visit.notice(visit.words().say("deliveries.stale"));
      form(visit, desk.again(house), 409, form.seeing(stale.current().change()), NONE);
    } else {
      throw Halt.notFound(code);
    }
  }

  private void one(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    show(visit, house, 200, EntryForm.NONE, Map.of());
  }

  private void ask(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    OneView view = view(visit, house, EntryForm.NONE, Map.of());
    visit.page("deliveries/cancel", view.told().supplier(), view);
  }

  private void enter(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    EntryForm form = EntryForm.sent(visit);
    String code = visit.part("code");
    Deliveries.Outcome outcome = deliveries.enter(house, code, form.body(), visit.who());
    if (outcome instanceof Deliveries.Saved) {
      visit.seeOther("deliveries/" + Visit.encoded(code));
    } else if (outcome instanceof Deliveries.Problems problems) {
      Map<String, String> faults = OneView.faults(problems.place(), problems.list(), visit.words());
      visit.notice(visit.words().say("deliveries.not-entered"));
      show(visit, house, 422, form, faults);
    } else if (outcome instanceof Deliveries.Refused refused) {
      visit.notice(visit.words().say("deliveries.refused", refused.because()));
      show(visit, desk.again(house), 409, form, Map.of());
    } else {
      throw Halt.notFound(code);
    }
  }

  /** At the wall it is said that a delivery is here, and no more. */
  private void goods(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    EntryForm form = EntryForm.arrived(visit.field("id"));
    String code = visit.field("delivery");
    Deliveries.Outcome outcome = deliveries.enter(house, code, form.body(), visit.who());
    if (outcome instanceof Deliveries.Saved) {
      String station = visit.field("station");
      visit.seeOther("wall" + (station.isEmpty() ? "" : "/" + Visit.encoded(station)));
    } else if (outcome instanceof Deliveries.Refused refused) {
      throw Halt.refused(refused.because());
    } else {
      throw Halt.notFound(code);
    }
  }

  // ---- behind the handlers ----

  private DeliveryStore.Saved get(House house, String code) {
    return deliveries.find(house, code).orElseThrow(() -> Halt.notFound(code));
  }

  private static OptionalLong seen(DeliveryForm form) {
    return form.seen().matches("\\d{1,18}")
        ? OptionalLong.of(Long.parseLong(form.seen()))
        : OptionalLong.empty();
  }

  private void form(
      Visit visit, House house, int status, DeliveryForm form, Deliveries.Problems problems) {
    EditView view = EditView.of(house, form, problems, visit.words());
    visit.page(status, "deliveries/edit", view.title(), view);
  }

  private void show(
      Visit visit, House house, int status, EntryForm typed, Map<String, String> faults) {
    OneView view = view(visit, house, typed, faults);
    visit.page(status, "deliveries/one", view.told().supplier(), view);
  }

  private OneView view(Visit visit, House house, EntryForm typed, Map<String, String> faults) {
    String code = visit.part("code");
    Delivery delivery = Deliveries.findRead(house, code).orElseThrow(() -> Halt.notFound(code));
    Messages words = visit.words();
    DeliveryStand stand = delivery.stand();
    LocalDate today = house.day(desk.now());
    Day day = day(house, stand.day(house.book().kitchen().clock(), today));
    Told told = new Told(house, day.sheet(), words);
    List<String> ids = new ArrayList<>();
    for (int i = 0; i < FORMS; i++) {
      ids.add(UUID.randomUUID().toString());
    }
    return OneView.of(
        house, stand, told, told.of(answer(house, day, stand)), typed, faults, ids, today, words);
  }

  /** The sheet of a day: the one in force, else what it would be. */
  private record Day(PrepSheet sheet, Map<String, TaskProgress> progress) {}

  private Day day(House house, LocalDate date) {
    LocalDate today = house.day(desk.now());
    Optional<InForce> inForce = plans.find(house, date);
    return inForce
        .map(of -> new Day(of.sheet(), of.progress()))
        .orElseGet(
            () ->
                new Day(
                    date.isBefore(today)
                        ? nothing(house, date)
                        : plans.preview(house, date, 1).sheet(),
                    Map.of()));
  }

  /** As {@link #day}, for a list: what lies further ahead than tomorrow is not worked out. */
  private Day listed(House house, LocalDate date) {
    boolean far = date.isAfter(house.day(desk.now()).plusDays(1));
    return far && plans.find(house, date).isEmpty()
        ? new Day(nothing(house, date), Map.of())
        : day(house, date);
  }

  private static PrepSheet nothing(House house, LocalDate date) {
    return PrepSheet.none(new PlanRequest(date, 1, house.book().kitchen().clock().start(date)));
  }

  private DeliveryAnswer answer(House house, Day day, DeliveryStand stand) {
    return DeliveryAnswer.of(house.book(), day.sheet(), day.progress(), stand, desk.now());
  }

  private List<Told.One> told(House house, LocalDate date, List<Delivery> all, Messages words) {
    Day day = listed(house, date);
    Told told = new Told(house, day.sheet(), words);
    List<DeliveryStand> stands = all.stream().map(Delivery::stand).toList();
    return DeliveryAnswer.list(house.book(), day.sheet(), day.progress(), stands, desk.now())
        .stream()
        .map(told::of)
        .toList();
  }
}
