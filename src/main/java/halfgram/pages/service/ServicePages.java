package halfgram.pages.service;

import halfgram.book.Moments;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.Sending;
import halfgram.desk.Services;
import halfgram.desk.Swapping;
import halfgram.kitchen.Kitchen;
import halfgram.measure.BusinessDay;
import halfgram.pages.AtWork;
import halfgram.pages.Rooms;
import halfgram.pages.Sequence;
import halfgram.pages.TypedTime;
import halfgram.pass.AtPass;
import halfgram.prep.TickStore;
import halfgram.station.Person;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.Optional;

/** The services of today, and what is entered while they run. */
public final class ServicePages implements Server.Part {
  private final Desk desk;
  private final Services services;
  private final AtWork work;
  private final Sending sending;
  private final Swapping swapping;
  private final Sequence numbers;

  public ServicePages(
      Desk desk, Services services, Sending sending, Swapping swapping, AtWork work) {
    this.desk = desk;
    this.work = work;
    this.services = services;
    this.sending = sending;
    this.swapping = swapping;
    this.numbers = new Sequence(desk);
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/service", this::list);
    routes.get("/k/{kitchen}/service/{service}", this::one);
    routes.post("/k/{kitchen}/service/{service}", this::enter);
    routes.get("/k/{kitchen}/service/{service}/who", this::who);
    routes.post("/k/{kitchen}/service/{service}/cook", this::cook);
    routes.get("/k/{kitchen}/service/{service}/swap", this::swaps);
    routes.post("/k/{kitchen}/service/{service}/swap", this::swap);
  }

  private void list(Context context) {
    Visit visit = Visit.of(context);
    PassScene scene = dated(visit);
    ListView view = ListView.of(scene, services.hasDay(scene.house(), scene.day().minusDays(1)));
    visit.wallPage(200, "service/list", scene.words().say("pass.title"), view);
  }

  private void one(Context context) {
    Visit visit = Visit.of(context);
    PassScene scene = dated(visit);
    Optional<LocalDate> other =
        visit.query("date").isEmpty() && scene.board().find(visit.part("service")).isEmpty()
            ? scene.board().otherDay(visit.part("service"))
            : Optional.empty();
    if (other.filter(day -> services.hasDay(scene.house(), day)).isPresent()) {
      visit.seeOther(address(visit) + "?date=" + other.get());
      return;
    }
    show(visit, 200, scene, EntryForm.NONE, "");
  }

  private void enter(Context context) {
    Visit visit = Visit.of(context);
    EntryForm form = EntryForm.of(visit::field);
    PassScene scene = scene(visit);
    get(scene, visit);
    if (!form.isReadable()) {
      throw Halt.unreadable(form.kind());
    }
    if (scene.cook().isEmpty()) {
      ask(visit, scene, form);
    } else {
      enter(visit, scene, form, scene.cook().get());
    }
  }

  private void who(Context context) {
    Visit visit = Visit.of(context);
    PassScene scene = scene(visit);
    get(scene, visit);
    ask(visit, scene, EntryForm.NONE);
  }

  private void cook(Context context) {
    Visit visit = Visit.of(context);
    PassScene scene = scene(visit);
    get(scene, visit);
    Person person =
        scene
            .house()
            .book()
            .findPerson(visit.field("person"))
            .orElseThrow(() -> Halt.notFound(visit.field("person")));
    if (!work.lets(visit, person)) {
      return;
    }
    EntryForm waiting = EntryForm.of(visit::field);
    if (waiting.isEmpty()) {
      visit.seeOther(address(visit));
    } else if (waiting.isReadable()) {
      enter(visit, scene, waiting, person);
    } else {
      throw Halt.unreadable(waiting.kind());
    }
  }

  private void swaps(Context context) {
    Visit visit = Visit.of(context);
    offer(visit, 200, scene(visit), "");
  }

  private void swap(Context context) {
    Visit visit = Visit.of(context);
    PassScene scene = scene(visit);
    get(scene, visit);
    String sequence = visit.field("sequence");
    if (!sequence.matches("\\d{1,18}")) {
      throw Halt.unreadable("sequence");
    }
    if (visit.field("confirmedBy").isEmpty()) {
      offer(visit, 422, scene, scene.words().say("pass.yes-fault"));
      return;
    }
    Swapping.Asked asked =
        new Swapping.Asked(
            Optional.empty(),
            visit.part("service"),
            visit.field("dish"),
            visit.field("item"),
            visit.field("with"),
            visit.field("confirmedBy"),
            visit.cook().orElse(visit.field("confirmedBy")),
            new TickStore.Origin(visit.device(), Long.parseLong(sequence), desk.now(), 0));
    Sending.Outcome outcome = swapping.swap(scene.house(), scene.board().day(), asked);
    if (outcome instanceof Sending.Taken taken) {
      visit.seeOther(address(visit) + "?entry=" + taken.entry().id());
    } else if (outcome instanceof Sending.Refused refused) {
      visit.notice(scene.words().say("wall.refused", refused.because()));
      offer(visit, 409, scene(visit), "");
    } else if (outcome instanceof Sending.NoSuch none) {
      throw Halt.notFound(none.what());
    }
  }

  // ---- behind the handlers ----

  private void offer(Visit visit, int status, PassScene scene, String fault) {
    SwapView view = SwapView.of(scene, get(scene, visit), fault, numbers::next);
    visit.wallPage(status, "service/swap", scene.words().say("pass.swap"), view);
  }

  private PassScene scene(Visit visit) {
    House house = Rooms.house(desk, visit);
    return PassScene.of(services.open(house, visit.who()), visit.cook(), visit.wallWords());
  }

  /** The pass on the day that is asked for: today when none is. */
  private PassScene dated(Visit visit) {
    House house = Rooms.house(desk, visit);
    LocalDate day =
        visit.query("date").isEmpty()
            ? house.day(desk.now())
            : Moments.date(visit.query("date"))
                .orElseThrow(() -> Halt.unreadable("date=YYYY-MM-DD"));
    Services.Board board =
        services
            .find(house, day, visit.who())
            .orElseThrow(() -> Halt.notFound(Services.noDay(day)));
    return PassScene.of(board, visit.cook(), visit.wallWords());
  }

  private static AtPass get(PassScene scene, Visit visit) {
    String service = visit.part("service");
    Services.Board board = scene.board();
    return board.find(service).orElseThrow(() -> Halt.notFound(board.missing(service)));
  }

  /** Where the service of a visit is. */
  private static String address(Visit visit) {
    return "service/" + Visit.encoded(visit.part("service"));
  }

  private static void ask(Visit visit, PassScene scene, EntryForm waiting) {
    String title = scene.words().say("wall.who");
    WhoView view = WhoView.of(scene, visit.part("service"), waiting);
    visit.wallPage(200, "service/who", title, view);
  }

  private void enter(Visit visit, PassScene scene, EntryForm form, Person cook) {
    if (form.lacksReason()) {
      show(visit, 422, scene.by(cook), form, scene.words().say("pass.reason-fault"));
      return;
    }
    if (form.lacksNumber()) {
      show(visit, 422, scene.by(cook), form, scene.words().say("pass.number-fault"));
      return;
    }
    LocalDate day = scene.board().day();
    BusinessDay clock = scene.book().kitchen().clock();
    boolean half = scene.words().hours() == Kitchen.Hours.TWELVE;
    if (half && TypedTime.isEither(form.at())) {
      show(visit, 422, scene.by(cook), form, scene.words().say("pass.time-either"));
      return;
    }
    if (form.lacksTime(day, clock, scene.now())) {
      String fault = scene.words().say("pass.time-fault", scene.time(scene.now()));
      show(visit, 422, scene.by(cook), form, fault);
      return;
    }
    if (get(scene, visit).lines().stream().anyMatch(form::isDoubtful)) {
      show(visit, 200, scene.by(cook), form, "");
      return;
    }
    EntryForm noted =
        form.at().isBlank()
            ? form
            : form.noted(scene.words().say("pass.entered-at", scene.time(scene.now())));
    Sending.Asked asked =
        noted.asked(visit.part("service"), cook.code(), visit.device(), desk.now());
    Sending then = form.said(day, clock).map(sending::at).orElse(sending);
    Sending.Outcome outcome = then.enter(scene.house(), scene.board().day(), asked);
    if (outcome instanceof Sending.Taken taken) {
      boolean undo = taken.entry().undoes().isPresent();
      String here = address(visit) + (undo ? "" : "?entry=" + taken.entry().id());
      visit.seeOther(form.wall().isEmpty() ? here : form.wall());
    } else if (outcome instanceof Sending.Refused refused) {
      visit.notice(scene.words().say("wall.refused", refused.because()));
      show(visit, 409, scene(visit).by(cook), EntryForm.NONE, "");
    } else if (outcome instanceof Sending.NoSuch none) {
      throw Halt.notFound(none.what());
    }
  }

  private void show(Visit visit, int status, PassScene scene, EntryForm typed, String fault) {
    AtPass service = get(scene, visit);
    ServiceView.Typed said = new ServiceView.Typed(typed, fault, visit.query("entry"));
    ServiceView view = ServiceView.of(scene, service, said, numbers::next);
    visit.wallPage(status, "service/one", scene.words().text(service.run().name()), view);
  }
}
