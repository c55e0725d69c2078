package halfgram.pages.wall;

import halfgram.book.Moments;
import halfgram.desk.BathBoard;
import halfgram.desk.Bathing;
import halfgram.desk.CrewInForce;
import halfgram.desk.CrewPlans;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.desk.Plans;
import halfgram.desk.Printed;
import halfgram.desk.RollCall;
import halfgram.desk.Stock;
import halfgram.desk.WhatIf;
import halfgram.pages.Rooms;
import halfgram.people.Deed;
import halfgram.people.Role;
import halfgram.prep.TaskCode;
import halfgram.prep.crew.CrewPlan;
import halfgram.station.Crew;
import halfgram.station.Person;
import halfgram.web.Halt;
import halfgram.web.Knock;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** The prep sheet on paper, and where the codes that are printed on it and on labels lead. */
public final class PaperPages implements Server.Part {
  private final Desk desk;
  private final Plans plans;
  private final CrewPlans crewPlans;
  private final WhatIf whatIf;
  private final Bathing bathing;
  private final Stock stock;
  private final Printed printed;

  public PaperPages(
      Desk desk, Plans plans, CrewPlans crewPlans, WhatIf whatIf, Bathing bathing, Stock stock) {
    this.desk = desk;
    this.plans = plans;
    this.crewPlans = crewPlans;
    this.whatIf = whatIf;
    this.bathing = bathing;
    this.stock = stock;
    this.printed = new Printed(desk, plans);
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/paper", context -> paper(Visit.of(context)));
    routes.get("/k/{kitchen}/q/{id}", context -> follow(Visit.of(context)));
    // Short, and for years: who calls, and whether they may, is asked where it leads.
    routes.get(
        "/q/{kitchen}/{id}",
        context ->
            Knock.of(context)
                .seeOther(
                    "/k/"
                        + Visit.encoded(context.pathParam("kitchen"))
                        + "/q/"
                        + Visit.encoded(context.pathParam("id"))));
  }

  private void paper(Visit visit) {
    PaperView.Asked asked = PaperView.Asked.of(visit);
    House house = Rooms.house(desk, visit);
    boolean all = asked.station().equals(Scene.ALL);
    if (!all && !house.book().stations().containsKey(asked.station())) {
      throw Halt.notFound(asked.station());
    }
    WhatIf.About about = about(visit, house, asked);
    InForce inForce =
        about.inForce().orElseGet(() -> InForce.ahead(about.ahead().orElseThrow(), desk.now()));
    Optional<CrewPlan> crew = crew(house, about, visit.who());
    Scene whole = scene(visit, house, inForce, crew, Scene.ALL);
    BathBoard board = bathing.board(house, inForce);
    List<Scene> stations =
        PaperView.stationsOf(whole).stream()
            .filter(visit::isAt)
            .map(code -> scene(visit, house, inForce, crew, code))
            .toList();
    List<Scene> shown =
        all ? stations : List.of(scene(visit, house, inForce, crew, asked.station()));
    PaperView view =
        PaperView.of(
            all ? whole : shown.get(0), board, asked, shown, stations, Codes.address(visit));
    visit.wallPage(200, "paper", whole.words().say("paper.title"), view);
  }

  /** The day that is asked for: one in force, or one that is planned ahead. */
  private WhatIf.About about(Visit visit, House house, PaperView.Asked asked) {
    LocalDate today = house.day(desk.now());
    LocalDate day =
        asked.date().isEmpty()
            ? today
            : Moments.date(asked.date()).orElseThrow(() -> Halt.notFound(asked.date()));
    if (day.isBefore(today) && plans.find(house, day).isEmpty()) {
      throw Halt.notFound(day.toString());
    }
    return whatIf.about(house, day, visit.who());
  }

  private Optional<CrewPlan> crew(House house, WhatIf.About about, String who) {
    return about.inForce().isPresent()
        ? crewPlans.current(house, about.inForce().get(), who).map(CrewInForce::plan)
        : Optional.of(whatIf.day(house, about, who).outlook().crew());
  }

  private Scene scene(
      Visit visit, House house, InForce inForce, Optional<CrewPlan> crew, String station) {
    Optional<Person> nobody = Optional.empty();
    Crew roll = new RollCall(desk).crew(house, inForce.plan().day());
    return Scene.of(house, inForce, crew, roll, station, nobody, visit.wallWords(), desk.now());
  }

  /** Goes on to what was printed: a cook to the wall, the office to the page of it. */
  private void follow(Visit visit) {
    String code = visit.part("id");
    House house = Rooms.house(desk, visit);
    if (code.startsWith(Codes.TUB)) {
      followTub(visit, house, code.substring(Codes.TUB.length()));
      return;
    }
    Optional<LocalDate> day = TaskCode.day(code);
    Optional<Printed.Found> found = printed.find(house, code);
    if (found.isEmpty()) {
      gone(visit, GoneView.unknown(words(visit, house), code, day));
      return;
    }
    Printed.Found task = found.get();
    LocalDate today = house.day(desk.now());
    boolean cooks = visit.caller().role() == Role.TABLET || visit.caller().role() == Role.COOK;
    String id = Visit.encoded(task.task().id());
    if (!task.inForce()) {
      gone(visit, GoneView.withdrawn(words(visit, house), task, today));
    } else if (!cooks && visit.may(Deed.SEE_SHEET)) {
      visit.seeOther("task?date=" + task.day() + "&id=" + id);
    } else if (task.day().equals(today)) {
      visit.checkStation(task.task().station());
      visit.seeOther("wall/" + Visit.encoded(task.task().station()) + "?task=" + id);
    } else {
      gone(visit, GoneView.ofAnotherDay(words(visit, house), task, today));
    }
  }

  private void followTub(Visit visit, House house, String tub) {
    if (stock.find(house, tub).isEmpty()) {
      gone(visit, GoneView.noTub(words(visit, house), tub));
    } else if (visit.may(Deed.SEE_STOCK)) {
      visit.seeOther("stock/" + Visit.encoded(tub));
    } else {
      visit.seeOther("label?tub=" + Visit.encoded(tub));
    }
  }

  private static Messages words(Visit visit, House house) {
    return visit.wallWords().at(house.book().kitchen().clock().zone());
  }

  private static void gone(Visit visit, GoneView view) {
    visit.wallPage(404, "paper/gone", view.title(), view);
  }
}
