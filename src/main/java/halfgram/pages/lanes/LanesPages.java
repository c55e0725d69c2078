package halfgram.pages.lanes;

import halfgram.book.Moments;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.desk.Plans;
import halfgram.desk.WhatIf;
import halfgram.pages.Rooms;
import halfgram.prep.Task;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Optional;

/** The day by person and by machine, a task among them, and what if. */
public final class LanesPages implements Server.Part {
  /** Further than this nothing is planned. */
  private static final long MOST_DAYS = 60;

  private final Desk desk;
  private final Plans plans;
  private final WhatIf whatIf;

  public LanesPages(Desk desk, Plans plans, WhatIf whatIf) {
    this.desk = desk;
    this.plans = plans;
    this.whatIf = whatIf;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/lanes", this::lanes);
    routes.get("/k/{kitchen}/lanes/task", this::task);
    routes.get("/k/{kitchen}/lanes/what-if", this::whatIf);
  }

  private void lanes(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Crewed day = crewed(visit, house);
    boolean byMachine = visit.query("by").equals("machine");
    visit.page("lanes", day.words().say("nav.lanes"), LanesView.of(day, byMachine));
  }

  private void task(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Crewed day = crewed(visit, house);
    String id = visit.query("id");
    Task task = day.find(id).orElseThrow(() -> Halt.notFound(id));
    visit.page("lanes/task", day.title(task), TaskView.of(day, task));
  }

  private void whatIf(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    InForce inForce = plans.open(house, house.day(desk.now()), visit.who());
    WhatIfForm form = WhatIfForm.of(visit, inForce);
    Crewed today = new Crewed(whatIf.today(house, inForce), true, desk.now(), visit);
    Optional<WhatIf.Outcome> outcome =
        form.isAsked() && form.faults().isEmpty()
            ? Optional.of(whatIf.look(house, inForce, form.asked()))
            : Optional.empty();
    Optional<WhatIfView.Side> then =
        outcome
            .filter(WhatIf.Answer.class::isInstance)
            .map(WhatIf.Answer.class::cast)
            .map(
                answer ->
                    new WhatIfView.Side(
                        new Crewed(answer.then(), true, desk.now(), visit), answer));
    WhatIfView view = WhatIfView.of(today, form, then, outcome);
    boolean wrong = !form.faults().isEmpty() || outcome.filter(WhatIf.Wrong.class::isInstance).isPresent();
    visit.page(wrong ? 422 : 200, "lanes/what-if", today.words().say("lanes.what-if"), view);
  }

  // ---- behind the handlers ----

  private Crewed crewed(Visit visit, House house) {
    LocalDate today = house.day(desk.now());
    LocalDate day = day(visit, today);
    Optional<InForce> inForce = plans.findOrOpen(house, day, visit.who());
    if (inForce.isEmpty() && day.isBefore(today)) {
      throw Halt.notFound(day.toString());
    }
    WhatIf.Day of =
        inForce
            .map(one -> whatIf.today(house, one))
            .orElseGet(() -> whatIf.ahead(plans.preview(house, day, 1)));
    return new Crewed(of, day.equals(today), desk.now(), visit);
  }

  private static LocalDate day(Visit visit, LocalDate today) {
    String typed = visit.query("date");
    if (typed.isEmpty()) {
      return today;
    }
    return Moments.date(typed)
        .filter(day -> Math.abs(ChronoUnit.DAYS.between(today, day)) <= MOST_DAYS)
        .orElseThrow(() -> Halt.notFound(typed));
  }
}
