package halfgram.pages.wall;

import halfgram.desk.BathBoard;
import halfgram.desk.Bathing;
import halfgram.desk.Changes;
import halfgram.desk.CrewPlans;
import halfgram.desk.Desk;
import halfgram.desk.Gating;
import halfgram.desk.InForce;
import halfgram.desk.Kit;
import halfgram.desk.Nights;
import halfgram.desk.Plans;
import halfgram.desk.Services;
import halfgram.desk.Stock;
import halfgram.desk.Ticking;
import halfgram.desk.Withdrawn;
import halfgram.lot.Tub;
import halfgram.pages.AtWork;
import halfgram.pages.Sequence;
import halfgram.pages.StationNames;
import halfgram.people.Tablet;
import halfgram.prep.GateEntry;
import halfgram.prep.Task;
import halfgram.prep.Tick;
import halfgram.station.Person;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.web.Words;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The wall of each station, and the ticks entered there. */
public final class WallPages implements Server.Part {
  /** How long before and after its fire a course stands on the wall. */
  private static final Duration CALLED_AHEAD = Duration.ofMinutes(45);

  private static final Duration CALLED_BACK = Duration.ofMinutes(20);

  private final Plans plans;
  private final Scenes scenes;
  private final AtWork work;
  private final Ticking ticking;
  private final Withdrawn withdrawn;
  private final AfterBar afters;
  private final Stock stock;
  private final Changes changes;
  private final Bathing bathing;
  private final Gating gating;
  private final Presses presses;
  private final Kit kit;
  private final Nights nights;
  private final Services services;
  private final Sequence numbers;

  public WallPages(
      Desk desk,
      Plans plans,
      CrewPlans crewPlans,
      Ticking ticking,
      Stock stock,
      Changes changes,
      Nights nights,
      Services services,
      Kit kit,
      Bathing bathing,
      Gating gating,
      AtWork work) {
    this.work = work;
    this.plans = plans;
    this.scenes = new Scenes(desk, plans, crewPlans);
    this.ticking = ticking;
    this.stock = stock;
    this.changes = changes;
    this.bathing = bathing;
    this.gating = gating;
    this.presses = new Presses(desk, ticking, bathing, gating);
    this.nights = nights;
    this.services = services;
    this.numbers = new Sequence(desk);
    this.withdrawn = new Withdrawn(desk, plans);
    this.afters = new AfterBar(desk, stock, withdrawn, numbers);
    this.kit = kit;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/wall", this::stations);
    routes.get("/k/{kitchen}/wall/{station}", this::station);
    routes.get("/k/{kitchen}/wall/{station}/who", this::who);
    routes.post("/k/{kitchen}/wall/cook", this::cook);
    routes.post("/k/{kitchen}/wall/seen", this::seen);
    routes.post("/k/{kitchen}/wall/kit", this::kit);
    routes.post("/k/{kitchen}/tick", this::tick);
    routes.post("/k/{kitchen}/bath", this::bath);
    routes.post("/k/{kitchen}/gate", this::gate);
  }

  private void stations(Context context) {
    Visit visit = Visit.of(context);
    List<String> own = visit.caller().tablet().map(Tablet::stations).orElse(List.of());
    if (!own.isEmpty() && visit.query("choose").isEmpty()) {
      visit.seeOther("wall/" + Visit.encoded(StationNames.of(own)));
      return;
    }
    Scene all = scene(visit, Scene.ALL);
    String many = own.size() > 1 ? StationNames.of(own) : Scene.ALL;
    WallView.Stations view = WallView.Stations.of(all, Words.LANGUAGES, many, visit::isAt);
    visit.wallPage(200, "wall/stations", all.words().say("wall.title"), view);
  }

  private void station(Context context) {
    Visit visit = Visit.of(context);
    visit.share(
        () -> {
          Scene scene = scene(visit, visit.part("station"));
          String wanted = visit.query("task");
          if (Opened.find(scene, wanted, withdrawn).isEmpty()) {
            // A tablet that was left open since another day: what there is now is of more use.
            visit.notice(scene.words().say("wall.no-task"));
            wanted = "";
          }
          show(visit, 200, scene, wanted, Rejected.NONE);
        });
  }

  private void who(Context context) {
    Visit visit = Visit.of(context);
    ask(visit, scene(visit, visit.part("station")), Map.of());
  }

  private void cook(Context context) {
    Visit visit = Visit.of(context);
    Scene scene = scene(visit, visit.field("station"));
    Person person =
        scene
            .house()
            .book()
            .findPerson(visit.field("person"))
            .orElseThrow(() -> Halt.notFound(visit.field("person")));
    if (!work.lets(visit, person)) {
      return;
    }
    BathForm atBath = BathForm.of(visit::field);
    if (!atBath.isEmpty()) {
      bath(visit, scene, atBath, person);
      return;
    }
    GateForm atGate = GateForm.of(visit::field);
    if (!atGate.isEmpty()) {
      gate(visit, scene, atGate, person);
      return;
    }
    TickForm waiting = TickForm.of(visit::field);
    if (waiting.isEmpty()) {
      visit.seeOther(scene.wall());
      return;
    }
    tick(visit, scene, waiting, person);
  }

  private void seen(Context context) {
    Visit visit = Visit.of(context);
    Scene scene = scene(visit, visit.field("station"));
    List<String> numbers = visit.fields("number");
    if (!numbers.stream().allMatch(number -> number.matches("\\d{1,18}"))) {
      throw Halt.unreadable("number");
    }
    List<Long> shown = numbers.stream().map(Long::valueOf).toList();
    changes.see(scene.house(), shown, scene.station(), visit.who());
    String inHand = visit.field("task");
    visit.seeOther(inHand.isEmpty() ? scene.wall() : Presses.task(scene, inHand));
  }

  private void tick(Context context) {
    Visit visit = Visit.of(context);
    TickForm form = TickForm.of(visit::field);
    Scene scene = scene(visit, form.station().isEmpty() ? Scene.ALL : form.station());
    Optional<Person> cook = scene.cook();
    if (cook.isEmpty() && form.isReadable()) {
      findTask(visit, scene, form.task());
      ask(visit, scene, form.fields());
    } else {
      tick(visit, scene, form, cook.orElseThrow(() -> Halt.unreadable(form.kind())));
    }
  }

  private void bath(Context context) {
    Visit visit = Visit.of(context);
    BathForm form = BathForm.of(visit::field);
    Scene scene = scene(visit, form.station().isEmpty() ? Scene.ALL : form.station());
    Optional<Person> cook = scene.cook();
    if (cook.isEmpty()) {
      ask(visit, scene, form.fields());
    } else {
      bath(visit, scene, form, cook.get());
    }
  }

  private void gate(Context context) {
    Visit visit = Visit.of(context);
    GateForm form = GateForm.of(visit::field);
    Scene scene = scene(visit, form.get("station").isEmpty() ? Scene.ALL : form.get("station"));
    Optional<Person> cook = scene.cook();
    if (cook.isEmpty()) {
      ask(visit, scene, form.fields());
    } else {
      gate(visit, scene, form, cook.get());
    }
  }

  /** The kit of a task is washed, or another is used; then the tick goes on that waited for it. */
  private void kit(Context context) {
    Visit visit = Visit.of(context);
    TickForm waiting = TickForm.of(visit::field);
    Scene scene = scene(visit, waiting.station().isEmpty() ? Scene.ALL : waiting.station());
    Optional<Person> cook = scene.cook();
    Task task = findTask(visit, scene, waiting.task());
    Kit.Outcome outcome = KitForm.of(visit).say(kit, scene.house(), task.id(), visit.who());
    if (outcome instanceof Kit.Refused refused) {
      visit.notice(scene.words().say("wall.refused", refused.because()));
      show(visit, 422, scene, task.id(), Rejected.of(new Hand.Rejected(waiting, "")));
    } else if (waiting.isEmpty() || cook.isEmpty()) {
      visit.seeOther(scene.wall() + "?task=" + Visit.encoded(task.id()));
    } else {
      tick(visit, scene, waiting, cook.get());
    }
  }

  // ---- behind the handlers ----

  private Scene scene(Visit visit, String station) {
    return scenes.open(visit, station);
  }

  private Task findTask(Visit visit, Scene scene, String id) {
    Task task =
        Optional.ofNullable(scene.byId().get(id))
            .or(() -> ticking.findTask(scene.house(), scene.day(), id))
            .orElseThrow(() -> Halt.notFound(id));
    visit.checkStation(task.station());
    return task;
  }

  private void ask(Visit visit, Scene scene, Map<String, String> waiting) {
    String title = scene.words().say("wall.who");
    visit.wallPage(200, "wall/who", title, WallView.Who.of(scene, waiting));
  }

  private void tick(Visit visit, Scene scene, TickForm form, Person cook) {
    if (!form.isReadable()) {
      throw Halt.unreadable(form.kind());
    }
    Task task = findTask(visit, scene, form.task());
    if (form.tickKind() == Tick.Kind.WEIGHED && !form.namesLineOf(task)) {
      throw Halt.notFound(form.line());
    }
    // A task that is withdrawn is where the last plan that had it says.
    Scene at = Opened.find(scene, task.id(), withdrawn).map(Opened::scene).orElse(scene);
    goOn(visit, scene, form.opens(), cook, presses.tick(visit, at, form, task, cook));
  }

  private void bath(Visit visit, Scene scene, BathForm form, Person cook) {
    if (!form.task().isEmpty()) {
      findTask(visit, scene, form.task());
    }
    goOn(visit, scene, form.task(), cook, presses.bath(visit, scene, form, cook));
  }

  private void gate(Visit visit, Scene scene, GateForm form, Person cook) {
    Optional.ofNullable(scene.byId().get(form.get("task")))
        .ifPresent(task -> visit.checkStation(task.station()));
    goOn(visit, scene, form.get("task"), cook, presses.gate(visit, scene, form, cook));
  }

  /** Goes where a press leads, else shows the wall again with its form as typed. */
  private void goOn(Visit visit, Scene scene, String task, Person cook, Presses.Pressed pressed) {
    if (!pressed.to().isEmpty()) {
      goOn(visit, scene, pressed.to(), cook);
      return;
    }
    if (!pressed.notice().isEmpty()) {
      visit.notice(pressed.notice());
    }
    show(visit, pressed.status(), scenes.again(scene, visit, cook), task, pressed.rejected());
  }

  /** Goes on to the wall; a script is answered at once with what it would ask for there. */
  private void goOn(Visit visit, Scene scene, String to, Person cook) {
    if (!visit.isPart() || !to.startsWith(scene.wall() + "?")) {
      visit.seeOther(to);
      return;
    }
    Scene now = scenes.again(scene, visit, cook);
    Visit there = visit.turned(to, now.house().stand());
    show(there, 200, now, there.query("task"), Rejected.NONE);
  }

  private void show(Visit visit, int status, Scene scene, String wanted, Rejected rejected) {
    Opened opened = Opened.find(scene, wanted, withdrawn).orElseThrow(() -> Halt.notFound(wanted));
    Scene at = opened.scene();
    Optional<Task> inHand = opened.task();
    inHand.ifPresent(task -> visit.checkStation(task.station()));
    BathBoard board = bathing.board(scene.house(), scene.inForce());
    BathBoard own = at.day().equals(scene.day()) ? board : ofDay(at);
    List<Tub> tubs = stock.list(scene.house());
    Optional<AtBaths> atBaths =
        inHand.flatMap(task -> AtBaths.find(at, own, task, tubs, rejected.bath(), numbers::next));
    Optional<Hand> hand =
        inHand.map(
            task ->
                Hand.of(
                    at,
                    task,
                    stock.listOfTask(scene.house(), task.id()),
                    atBaths.map(of -> of.counted(at.words())).orElse(""),
                    KitRow.list(at, task, kit, rejected.hand().form()),
                    rejected.hand(),
                    WeighRows.TubRead.of(visit, rejected.hand().form()),
                    numbers::next));
    Map<String, List<GateEntry>> gates = gating.list(scene.house(), opened.beside(scene));
    String said = opened.isWithdrawn() ? opened.said(scene) : unheard(visit, scene);
    Services.OnWalls services = this.services.onWalls(scene.house(), CALLED_BACK, CALLED_AHEAD);
    WallView.Parts parts =
        new WallView.Parts(
            said,
            afters.find(visit, scene),
            hand,
            tubs,
            nights.missed(scene.house(), scene.inForce()),
            scene.outs(services),
            SecondGo.list(plans, scene, opened.inForce()),
            new WallView.Live(
                board,
                atBaths,
                AtBaths.after(scene, own, visit.query("bath"), wanted, numbers::next),
                inHand.flatMap(
                    task -> AtGate.find(at, task, gates, rejected.gate(), numbers::next)),
                AtGate.held(scene, gates, numbers::next)),
            Calls.of(
                CallRow.list(scene, services.near(), numbers::next),
                CalledRow.list(scene, told(scene), numbers::next)),
            new TimerRows(scene, lifts(scene, board, inHand), numbers::next).list(),
            services,
            PastRow.list(scene, inHand.map(Task::id).orElse(""), numbers::next));
    List<Changes.Told> told = changes.list(scene.house(), scene.inForce(), scene.station());
    visit.wallPage(status, "wall/station", scene.stationName(), WallView.of(scene, told, parts));
  }

  private List<Withdrawn.Told> told(Scene scene) {
    return withdrawn.listTold(scene.house(), scene.inForce());
  }

  /** That a word on how much longer it takes did not count. */
  private static String unheard(Visit visit, Scene scene) {
    return visit.query("longer").equals("no") ? scene.words().say("wall.longer-not") : "";
  }

  /**
   * What is in the baths; for a while after the day has begun what went in on the day before too.
   */
  private List<LiftRows> lifts(Scene scene, BathBoard board, Optional<Task> inHand) {
    LiftRows today = new LiftRows(scene, board, inHand);
    if (!LiftRows.isOverNight(scene)) {
      return List.of(today);
    }
    return plans
        .find(scene.house(), scene.day().minusDays(1))
        .map(scene::under)
        .map(before -> List.of(today, new LiftRows(before, ofDay(before), inHand)))
        .orElseGet(() -> List.of(today));
  }

  /** The baths of a scene's own day, as its plan in force has them. */
  private BathBoard ofDay(Scene scene) {
    InForce inForce = plans.find(scene.house(), scene.day()).orElseGet(scene::inForce);
    return bathing.board(scene.house(), inForce);
  }
}
