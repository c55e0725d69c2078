package halfgram.pages.lanes;

import halfgram.book.Moments;
import halfgram.desk.CrewInForce;
import halfgram.desk.CrewPlans;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.desk.Plans;
import halfgram.desk.WhatIf;
import halfgram.event.Event;
import halfgram.input.Problem;
import halfgram.pages.Rooms;
import halfgram.prep.Task;
import halfgram.prep.crew.DayFacts;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;

/** The day by person and by machine, a task among them, and what if. */
public final class LanesPages implements Server.Part {
  private final Desk desk;
  private final Plans plans;
  private final CrewPlans crewPlans;
  private final WhatIf whatIf;

  public LanesPages(Desk desk, Plans plans, CrewPlans crewPlans, WhatIf whatIf) {
    this.desk = desk;
    this.plans = plans;
    this.crewPlans = crewPlans;
    this.whatIf = whatIf;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/lanes", this::lanes);
    routes.get("/k/{kitchen}/lanes/task", this::task);
    routes.post("/k/{kitchen}/lanes/task", this::move);
    routes.get("/k/{kitchen}/lanes/what-if", this::whatIf);
  }

  private void lanes(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    LocalDate date = day(visit.query("date"), house.day(desk.now()));
    Optional<InForce> inForce = plans.findOrOpen(house, date, visit.who());
    if (inForce.isEmpty() && date.isBefore(house.day(desk.now()))) {
      // The page of a day that is over says that nobody planned it, and leads on.
      visit.seeOther("?date=" + date);
      return;
    }
    WhatIf.Day of = crewed(visit, house, date, inForce);
    Crewed day = shown(of, visit, house);
    boolean byMachine = visit.query("by").equals("machine");
    Optional<ProposalView> proposal =
        inForce.flatMap(one -> of.crew().flatMap(crew -> proposal(visit, house, one, crew, day)));
    visit.page("lanes", day.words().say("nav.lanes"), LanesView.of(day, proposal, byMachine));
  }

  private Optional<ProposalView> proposal(
      Visit visit, House house, InForce inForce, CrewInForce crew, Crewed now) {
    if (!now.canMove()) {
      return Optional.empty();
    }
    return crewPlans
        .findProposal(house, inForce, crew)
        .map(one -> ProposalView.of(now, shown(whatIf.proposed(inForce, one), visit, house), one));
  }

  private void task(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    LocalDate date = day(visit.query("date"), house.day(desk.now()));
    Optional<InForce> inForce = plans.findOrOpen(house, date, visit.who());
    Crewed day = shown(crewed(visit, house, date, inForce), visit, house);
    String id = visit.query("id");
    Task task = day.find(id).orElseThrow(() -> Halt.notFound(id));
    task(visit, 200, day, task, MoveForm.placed(day, task), "");
  }

  private static void task(
      Visit visit, int status, Crewed day, Task task, MoveForm form, String fault) {
    visit.page(status, "lanes/task", day.title(task), TaskView.of(day, task, form, fault));
  }

  private void move(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    MoveForm form = MoveForm.of(visit);
    LocalDate date = day(visit.field("date"), house.day(desk.now()));
    InForce inForce =
        plans
            .findOrOpen(house, date, visit.who())
            .filter(one -> one.findTask(form.task()).isPresent())
            .orElseThrow(() -> Halt.notFound(form.task()));
    Task task = inForce.findTask(form.task()).orElseThrow();
    Crewed day = shown(crewed(visit, house, date, Optional.of(inForce)), visit, house);
    Optional<Instant> start = form.start(day);
    if (!form.letGo() && start.isEmpty()) {
      task(visit, 422, day, task, form, day.words().say("lanes.start-fault"));
      return;
    }
    CrewPlans.Outcome outcome =
        form.letGo()
            ? crewPlans.unpin(house, inForce, task.id(), visit.who())
            : crewPlans.pin(
                house,
                inForce,
                task.id(),
                new DayFacts.Pin(start.orElseThrow(), form.named()),
                visit.who());
    if (outcome instanceof CrewPlans.Refused refused) {
      task(visit, 409, day, task, form, day.say(refused.because()));
    } else {
      visit.seeOther(day.link(task).substring(visit.path("").length()));
    }
  }

  private void whatIf(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    LocalDate date = day(visit.query("date"), house.day(desk.now()));
    if (date.isBefore(house.day(desk.now()))) {
      throw Halt.notFound(date.toString());
    }
    WhatIf.About about = whatIf.about(house, date, visit.who());
    List<Event> drafts = WhatIf.drafts(house.book(), date);
    WhatIfForm form = WhatIfForm.of(visit, about.sheet().services(), drafts);
    Optional<WhatIf.Outcome> outcome =
        form.isAsked() && form.isReadable()
            ? Optional.of(whatIf.look(house, about, form.asked(), visit.who()))
            : Optional.empty();
    Optional<WhatIf.Answer> answer =
        outcome.filter(WhatIf.Answer.class::isInstance).map(WhatIf.Answer.class::cast);
    WhatIf.Day now =
        answer.map(WhatIf.Answer::today).orElseGet(() -> whatIf.day(house, about, visit.who()));
    Crewed today = shown(now, visit, house);
    Optional<WhatIfView.Side> then =
        answer.map(one -> new WhatIfView.Side(shown(one.then(), visit, house), one));
    List<Problem> problems =
        form.isAsked() && answer.isEmpty()
            ? whatIf.problems(house, about, form.asked())
            : List.of();
    WhatIfView view = WhatIfView.of(today, form, drafts, then, problems);
    boolean wrong = !form.isReadable() || !problems.isEmpty();
    visit.page(wrong ? 422 : 200, "lanes/what-if", today.words().say("lanes.what-if"), view);
  }

  // ---- behind the handlers ----

  private WhatIf.Day crewed(Visit visit, House house, LocalDate day, Optional<InForce> inForce) {
    if (inForce.isEmpty() && day.isBefore(house.day(desk.now()))) {
      throw Halt.notFound(day.toString());
    }
    return inForce
        .map(one -> whatIf.shown(house, one, visit.who()))
        .orElseGet(() -> whatIf.ahead(house, day));
  }

  private Crewed shown(WhatIf.Day of, Visit visit, House house) {
    return Crewed.of(of, house, desk.now(), visit);
  }

  private static LocalDate day(String typed, LocalDate today) {
    if (typed.isEmpty()) {
      return today;
    }
    return Moments.date(typed)
        .filter(day -> Math.abs(ChronoUnit.DAYS.between(today, day)) <= WhatIf.MOST_DAYS)
        .orElseThrow(() -> Halt.notFound(typed));
  }
}
