package halfgram.pages.wall;

import halfgram.desk.Changes;
import halfgram.desk.Desk;
import halfgram.desk.Dipped;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.desk.Kit;
import halfgram.desk.Nights;
import halfgram.desk.Plans;
import halfgram.desk.Services;
import halfgram.desk.Stock;
import halfgram.desk.Ticking;
import halfgram.measure.Amount;
import halfgram.pages.OutWords;
import halfgram.pages.Rooms;
import halfgram.pages.Sequence;
import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.prep.Tick;
import halfgram.station.Person;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.web.Words;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** The wall of each station, the ticks entered there, and labels. */
public final class WallPages implements Server.Part {
  private final Desk desk;
  private final Plans plans;
  private final Ticking ticking;
  private final Stock stock;
  private final Changes changes;
  private final Kit kit;
  private final Nights nights;
  private final Services services;
  private final Sequence numbers;

  public WallPages(
      Desk desk,
      Plans plans,
      Ticking ticking,
      Stock stock,
      Changes changes,
      Nights nights,
      Services services,
      Kit kit) {
    this.desk = desk;
    this.plans = plans;
    this.ticking = ticking;
    this.stock = stock;
    this.changes = changes;
    this.nights = nights;
    this.services = services;
    this.numbers = new Sequence(desk);
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
    routes.get("/k/{kitchen}/label", this::label);
  }

  private void stations(Context context) {
    Visit visit = Visit.of(context);
    Scene all = scene(visit, Scene.ALL);
    WallView.Stations view = WallView.Stations.of(all, Words.LANGUAGES);
    visit.wallPage(200, "wall/stations", all.words().say("wall.title"), view);
  }

  private void station(Context context) {
    Visit visit = Visit.of(context);
    Scene scene = scene(visit, visit.part("station"));
    show(visit, 200, scene, visit.query("task"), Hand.Rejected.NONE);
  }

  private void who(Context context) {
    Visit visit = Visit.of(context);
    ask(visit, scene(visit, visit.part("station")), TickForm.NONE);
  }

  private void cook(Context context) {
    Visit visit = Visit.of(context);
    Scene scene = scene(visit, visit.field("station"));
    Person person =
        findPerson(scene.house(), visit.field("person"))
            .orElseThrow(() -> Halt.notFound(visit.field("person")));
    visit.rememberCook(person.code());
    TickForm waiting = TickForm.of(visit::field);
    if (waiting.isEmpty()) {
      visit.seeOther(wall(scene));
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
    visit.seeOther(wall(scene));
  }

  private void tick(Context context) {
    Visit visit = Visit.of(context);
    TickForm form = TickForm.of(visit::field);
    Scene scene = scene(visit, form.station().isEmpty() ? Scene.ALL : form.station());
    Optional<Person> cook = scene.cook();
    if (cook.isEmpty() && form.isReadable()) {
      findTask(scene, form);
      ask(visit, scene, form);
    } else {
      tick(visit, scene, form, cook.orElseThrow(() -> Halt.unreadable(form.kind())));
    }
  }

  /** The kit of a task is washed, or another is used; then the tick goes on that waited for it. */
  private void kit(Context context) {
    Visit visit = Visit.of(context);
    TickForm waiting = TickForm.of(visit::field);
    Scene scene = scene(visit, waiting.station().isEmpty() ? Scene.ALL : waiting.station());
    Optional<Person> cook = scene.cook();
    Task task = findTask(scene, waiting);
    Kit.Outcome outcome = KitForm.of(visit).say(kit, scene.house(), task.id(), visit.who());
    if (outcome instanceof Kit.Refused refused) {
      visit.notice(scene.words().say("wall.refused", refused.because()));
      show(visit, 422, scene, task.id(), new Hand.Rejected(waiting, ""));
    } else if (waiting.isEmpty() || cook.isEmpty()) {
      visit.seeOther(wall(scene) + "?task=" + Visit.encoded(task.id()));
    } else {
      tick(visit, scene, waiting, cook.get());
    }
  }

  private void label(Context context) {
    Visit visit = Visit.of(context);
    String station = visit.query("station");
    Scene scene = scene(visit, station.isEmpty() ? Scene.ALL : station);
    String code = visit.query("tub");
    Stock.Life life = stock.find(scene.house(), code).orElseThrow(() -> Halt.notFound(code));
    Optional<Task> task =
        life.tub().task().flatMap(id -> ticking.findTask(scene.house(), scene.day(), id));
    String back = station.isEmpty() ? "stock/" + Visit.encoded(code) : wall(scene);
    visit.wallPage(200, "label", code, LabelView.of(scene, life, task, back));
  }

  // ---- behind the handlers ----

  private Scene scene(Visit visit, String station) {
    House house = Rooms.house(desk, visit);
    if (!station.equals(Scene.ALL) && !house.book().stations().containsKey(station)) {
      throw Halt.notFound(station);
    }
    InForce inForce = plans.open(house, house.day(desk.now()), visit.who());
    Optional<Person> cook = visit.cook().flatMap(code -> findPerson(house, code));
    return Scene.of(house, inForce, station, cook, visit.wallWords(), desk.now());
  }

  /** Where a station's wall is. */
  private static String wall(Scene scene) {
    return "wall/" + Visit.encoded(scene.station());
  }

  private static Optional<Person> findPerson(House house, String code) {
    return house.book().people().stream().filter(one -> one.code().equals(code)).findFirst();
  }

  private Task findTask(Scene scene, TickForm form) {
    return ticking
        .findTask(scene.house(), scene.day(), form.task())
        .orElseThrow(() -> Halt.notFound(form.task()));
  }

  private void ask(Visit visit, Scene scene, TickForm waiting) {
    String title = scene.words().say("wall.who");
    visit.wallPage(200, "wall/who", title, WallView.Who.of(scene, waiting));
  }

  private void tick(Visit visit, Scene scene, TickForm form, Person cook) {
    if (!form.isReadable()) {
      throw Halt.unreadable(form.kind());
    }
    Task task = findTask(scene, form);
    if (form.tickKind() == Tick.Kind.WEIGHED && !isLine(task, form.line())) {
      throw Halt.notFound(form.line());
    }
    Optional<Amount> said = form.saysAmount(task) ? form.amount(task) : Optional.empty();
    if (form.saysAmount(task) && said.isEmpty()) {
      String fault = scene.words().say("wall.amount-fault", TickForm.sample(task));
      show(visit, 422, again(scene, visit, cook), task.id(), new Hand.Rejected(form, fault));
      return;
    }
    if (form.lacksReason()) {
      Hand.Rejected rejected = new Hand.Rejected(form, scene.words().say("wall.reason-fault"));
      show(visit, 422, again(scene, visit, cook), task.id(), rejected);
      return;
    }
    Ticking.Entry entry = form.entry(said, cook.code(), visit.device(), desk.now());
    Ticking.Outcome outcome = ticking.tick(scene.house(), scene.day(), entry);
    if (outcome instanceof Ticking.Taken taken) {
      visit.seeOther(next(scene, form, taken));
    } else if (outcome instanceof Ticking.Refused refused) {
      visit.notice(scene.words().say("wall.refused", refused.because()));
      Hand.Rejected rejected = new Hand.Rejected(form, "");
      show(visit, 409, again(scene, visit, cook), task.id(), rejected);
    } else {
      throw Halt.notFound(form.task());
    }
  }

  /** The same station as it is now, for this cook. */
  private Scene again(Scene scene, Visit visit, Person cook) {
    Scene now = scene(visit, scene.station());
    return Scene.of(
        now.house(), now.inForce(), now.station(), Optional.of(cook), now.words(), now.now());
  }

  private static boolean isLine(Task task, String path) {
    return task.weigh().stream()
        .flatMap(group -> group.lines().stream())
        .anyMatch(line -> line.path().equals(path));
  }

  /** Where a tick leads: what is done makes room for what is next. */
  private static String next(Scene scene, TickForm form, Ticking.Taken taken) {
    String to = wall(scene);
    String task = Visit.encoded(form.task());
    return taken.tick().kind() == Tick.Kind.DONE
        ? to + "?done=" + task + "&tick=" + taken.tick().id()
        : to + "?task=" + task;
  }

  private void show(Visit visit, int status, Scene scene, String wanted, Hand.Rejected rejected) {
    Optional<Task> asked = Optional.ofNullable(scene.byId().get(wanted));
    boolean gone = !wanted.isEmpty() && asked.isEmpty();
    if (gone && ticking.findTask(scene.house(), scene.day(), wanted).isEmpty()) {
      throw Halt.notFound(wanted);
    }
    Optional<Hand> hand =
        asked
            .or(() -> inHand(scene))
            .map(
                task ->
                    Hand.of(
                        scene,
                        task,
                        ticking.listTubs(scene.house(), task.id()),
                        KitRow.list(scene, task, kit, rejected.form()),
                        rejected,
                        numbers::next));
    String said = gone ? scene.words().say("wall.withdrawn") : "";
    WallView.Parts parts =
        new WallView.Parts(
            said,
            after(visit, scene),
            hand,
            stock.list(scene.house()),
            nights.missed(scene.house(), scene.inForce()),
            outs(scene));
    List<Changes.Told> told = changes.list(scene.house(), scene.inForce(), scene.station());
    visit.wallPage(status, "wall/station", scene.stationName(), WallView.of(scene, told, parts));
  }

  private List<String> outs(Scene scene) {
    OutWords words = new OutWords(scene.house().book(), scene.words());
    return services.outages(scene.house()).stream().map(words::said).toList();
  }

  /** The task this cook is on, else the first that can be started, else the first that waits. */
  private static Optional<Task> inHand(Scene scene) {
    List<Task> open = scene.tasks().stream().filter(task -> !scene.isOver(task)).toList();
    String cook = scene.cook().map(Person::code).orElse("");
    return open.stream()
        .filter(
            task -> scene.progress(task).onIt().filter(on -> on.cook().equals(cook)).isPresent())
        .max(Comparator.comparing(task -> scene.progress(task).onIt().orElseThrow().since()))
        .or(() -> open.stream().filter(task -> isFree(scene, task)).findFirst())
        .or(() -> open.stream().findFirst());
  }

  private static boolean isFree(Scene scene, Task task) {
    TaskState state = scene.progress(task).state();
    return state == TaskState.PART_DONE
        || (state == TaskState.TO_DO && scene.waits(task).isEmpty());
  }

  /** What was just done, while nobody has undone it. */
  private Optional<WallView.After> after(Visit visit, Scene scene) {
    String tick = visit.query("tick");
    Task task = scene.byId().get(visit.query("done"));
    if (task == null || !tick.matches("[0-9a-f-]{36}")) {
      return Optional.empty();
    }
    return scene.progress(task).dones().stream()
        .map(Tick::id)
        .map(UUID::toString)
        .filter(tick::equals)
        .findFirst()
        .map(
            id ->
                new WallView.After(
                    task.id(),
                    scene.names().title(task),
                    id,
                    numbers.next(),
                    ticking.listTubs(scene.house(), task.id()),
                    taken(scene, UUID.fromString(id))));
  }

  /** What a tick took of what is kept for somebody else. */
  private List<String> taken(Scene scene, UUID tick) {
    return new Dipped(desk)
        .listOfTick(scene.house(), tick).stream()
            .map(
                dip ->
                    scene
                        .words()
                        .say(
                            "wall.took",
                            scene.names().amount(dip.amount()),
                            scene.event(dip.event())))
            .toList();
  }
}
