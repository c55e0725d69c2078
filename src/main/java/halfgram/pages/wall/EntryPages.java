package halfgram.pages.wall;

import halfgram.book.Moments;
import halfgram.desk.CrewInForce;
import halfgram.desk.CrewPlans;
import halfgram.desk.Desk;
import halfgram.desk.EnteringLater;
import halfgram.desk.Gating;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.desk.Plans;
import halfgram.desk.RollCall;
import halfgram.desk.Ticking;
import halfgram.measure.Message;
import halfgram.pages.EntryFields;
import halfgram.pages.Rooms;
import halfgram.pages.Sequence;
import halfgram.prep.GateEntry;
import halfgram.prep.Task;
import halfgram.prep.Tick;
import halfgram.prep.TickStore;
import halfgram.station.Crew;
import halfgram.station.Person;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** What was done on paper, entered afterwards with its real times; and taken back. */
public final class EntryPages implements Server.Part {
  private final Desk desk;
  private final Plans plans;
  private final CrewPlans crewPlans;
  private final Ticking ticking;
  private final EnteringLater entering;
  private final Gating gating;
  private final Sequence numbers;

  public EntryPages(Desk desk, Plans plans, CrewPlans crewPlans, Ticking ticking, Gating gating) {
    this.desk = desk;
    this.plans = plans;
    this.crewPlans = crewPlans;
    this.ticking = ticking;
    this.entering = new EnteringLater(desk, plans, ticking, gating);
    this.gating = gating;
    this.numbers = new Sequence(desk);
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/paper/entry", context -> page(Visit.of(context)));
    routes.post("/k/{kitchen}/paper/entry", context -> enter(Visit.of(context)));
    routes.post("/k/{kitchen}/paper/undo", context -> undo(Visit.of(context)));
  }

  /**
   * What was asked for.
   *
   * @param station code, or {@link Scene#ALL}
   * @param date as asked; empty for today
   */
  private record Asked(String station, String date) {
    static Asked of(String station, String date) {
      return new Asked(station.isEmpty() ? Scene.ALL : station, date);
    }

    private String href(String of) {
      List<String> asks = new ArrayList<>();
      if (!of.equals(Scene.ALL)) {
        asks.add("station=" + Visit.encoded(of));
      }
      if (!date.isEmpty()) {
        asks.add("date=" + Visit.encoded(date));
      }
      return asks.isEmpty() ? "" : "?" + String.join("&", asks);
    }
  }

  private void page(Visit visit) {
    Asked asked = Asked.of(visit.query("station"), visit.query("date"));
    show(visit, 200, asked, EntryView.Rejected.NONE);
  }

  private void enter(Visit visit) {
    Asked asked = sent(visit);
    PaperForm form = PaperForm.of(visit::field);
    if (!form.isReadable()) {
      throw Halt.unreadable("sequence");
    }
    Scene scene = scene(visit, asked);
    form.rows().stream()
        .filter(PaperForm.Row::isFilled)
        .flatMap(row -> find(scene, row.task()).stream())
        .forEach(task -> visit.checkStation(task.station()));
    if (!form.isFilled()) {
      visit.notice(scene.words().say("paper.fault-empty"));
      show(visit, 422, asked, new EntryView.Rejected(form, Map.of()));
      return;
    }
    PaperEntries entries =
        new PaperEntries(
            scene.house(),
            scene.day(),
            scene.words(),
            new PaperEntries.From(
                visit.device(), scene.cook().map(Person::code), visit.who(), desk.now()),
            id -> find(scene, id));
    Map<Integer, PaperEntries.Faults> faults = entries.enter(form, entering);
    if (faults.isEmpty()) {
      long count = form.rows().stream().filter(PaperForm.Row::isFilled).count();
      String query = asked.href(asked.station());
      visit.seeOther("paper/entry" + query + (query.isEmpty() ? "?" : "&") + "entered=" + count);
      return;
    }
    boolean wrong = faults.values().stream().anyMatch(of -> !of.fields().isEmpty());
    visit.notice(scene.words().say(wrong ? "paper.fault-form" : "paper.fault-sure"));
    show(visit, wrong ? 422 : 409, asked, new EntryView.Rejected(form, faults));
  }

  private void undo(Visit visit) {
    Asked asked = sent(visit);
    Scene scene = scene(visit, asked);
    String tick = visit.field("undoes");
    String sequence = visit.field("sequence");
    if (!EntryFields.isId(tick) || !EntryFields.isSequence(sequence)) {
      throw Halt.unreadable("undoes");
    }
    String id = visit.field("task");
    Task task = find(scene, id).orElseThrow(() -> Halt.notFound(id));
    visit.checkStation(task.station());
    TickStore.Origin origin =
        new TickStore.Origin(visit.device(), Long.parseLong(sequence), desk.now(), 0);
    Optional<UUID> undone = Optional.of(UUID.fromString(tick));
    Optional<Message> because =
        visit.field("gate").equals("yes")
            ? takeBackAtGate(scene, visit.who(), undone, origin)
            : takeBack(scene, visit.who(), id, undone, origin);
    if (because.isPresent()) {
      visit.notice(scene.words().say("wall.refused", because.get()));
      show(visit, 409, asked, EntryView.Rejected.NONE);
      return;
    }
    visit.seeOther("paper/entry" + asked.href(asked.station()));
  }

  /** Takes a tick back; why not, where it cannot be. */
  private Optional<Message> takeBack(
      Scene scene, String who, String task, Optional<UUID> undone, TickStore.Origin origin) {
    Ticking.Entry entry =
        new Ticking.Entry(
            Optional.empty(),
            task,
            Tick.Kind.UNDO,
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            who,
            undone,
            origin);
    return ticking.tick(scene.house(), scene.day(), entry) instanceof Ticking.Refused refused
        ? Optional.of(refused.because())
        : Optional.empty();
  }

  private Optional<Message> takeBackAtGate(
      Scene scene, String who, Optional<UUID> undone, TickStore.Origin origin) {
    Gating.Entry entry =
        new Gating.Entry(
            Optional.empty(),
            GateEntry.Kind.UNDO,
            "",
            Map.of(),
            List.of(),
            Optional.empty(),
            Optional.empty(),
            who,
            undone,
            origin);
    Gating.Outcome outcome = gating.enter(scene.house(), scene.day(), entry);
    if (outcome instanceof Gating.Unknown unknown) {
      throw Halt.notFound(unknown.what());
    }
    return outcome instanceof Gating.Refused refused
        ? Optional.of(refused.because())
        : Optional.empty();
  }

  /** Where a form was sent from: today needs no date. */
  private Asked sent(Visit visit) {
    String date = visit.field("date");
    String today = Rooms.house(desk, visit).day(desk.now()).toString();
    return Asked.of(visit.field("station"), date.equals(today) ? "" : date);
  }

  private Optional<Task> find(Scene scene, String id) {
    return ticking.findTask(scene.house(), scene.day(), id);
  }

  private Scene scene(Visit visit, Asked asked) {
    House house = Rooms.house(desk, visit);
    boolean all = asked.station().equals(Scene.ALL);
    if (!all && !house.book().stations().containsKey(asked.station())) {
      throw Halt.notFound(asked.station());
    }
    LocalDate today = house.day(desk.now());
    LocalDate day =
        asked.date().isEmpty()
            ? today
            : Moments.date(asked.date())
                .filter(of -> !of.isAfter(today))
                .orElseThrow(() -> Halt.notFound(asked.date()));
    InForce inForce =
        plans.findOrOpen(house, day, visit.who()).orElseThrow(() -> Halt.notFound(day.toString()));
    var crew = crewPlans.current(house, inForce, visit.who()).map(CrewInForce::plan);
    Optional<Person> cook = visit.cook().flatMap(code -> house.book().findPerson(code));
    Crew roll = new RollCall(desk).crew(house, day);
    return Scene.of(
        house, inForce, crew, roll, asked.station(), cook, visit.wallWords(), desk.now());
  }

  private void show(Visit visit, int status, Asked asked, EntryView.Rejected rejected) {
    Scene scene = scene(visit, asked);
    boolean all = asked.station().equals(Scene.ALL);
    List<PaperView.Choice> stations = new ArrayList<>();
    stations.add(
        new PaperView.Choice(
            scene.words().say("wall.all-stations"),
            all ? "" : "paper/entry" + asked.href(Scene.ALL)));
    scene.house().book().stations().values().stream()
        .filter(station -> visit.isAt(station.code()))
        .forEach(
            station ->
                stations.add(
                    new PaperView.Choice(
                        scene.words().text(station.name()),
                        station.code().equals(asked.station())
                            ? ""
                            : "paper/entry" + asked.href(station.code()))));
    EntryView.Frame frame =
        new EntryView.Frame(
            visit.query("entered").matches("\\d{1,4}") ? visit.query("entered") : "",
            stations,
            "paper" + asked.href(asked.station()),
            all ? "wall" : "wall/" + Visit.encoded(asked.station()));
    EntryView view =
        EntryView.of(
            scene,
            new EntryView.Day(
                entering.listWithdrawn(scene.house(), scene.inForce()),
                gating.list(scene.house(), scene.byId().keySet()),
                entering.list(scene.house(), scene.day()),
                entering.listAtGates(scene.house(), scene.day())),
            frame,
            rejected,
            numbers::next);
    visit.wallPage(status, "paper/entry", scene.words().say("paper.entry"), view);
  }
}
