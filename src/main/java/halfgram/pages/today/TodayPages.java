package halfgram.pages.today;

import halfgram.desk.CrewInForce;
import halfgram.desk.CrewPlans;
import halfgram.desk.Delays;
import halfgram.desk.Desk;
import halfgram.desk.Dipped;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.desk.Nights;
import halfgram.desk.Passing;
import halfgram.desk.Plans;
import halfgram.desk.Services;
import halfgram.desk.Stock;
import halfgram.desk.WhatIf;
import halfgram.desk.Withdrawn;
import halfgram.pages.OutWords;
import halfgram.pages.Rooms;
import halfgram.pages.deliveries.Told;
import halfgram.prep.Behind;
import halfgram.prep.DeliveryAnswer;
import halfgram.prep.Missed;
import halfgram.prep.Task;
import halfgram.prep.crew.DayFacts;
import halfgram.prep.crew.Fit;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.FitWords;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** The day in the office. */
public final class TodayPages implements Server.Part {
  private final Desk desk;
  private final Plans plans;
  private final CrewPlans crewPlans;
  private final WhatIf whatIf;
  private final Stock stock;
  private final Nights nights;
  private final Dipped dipped;
  private final Services services;
  private final Withdrawn withdrawn;

  public TodayPages(
      Desk desk,
      Plans plans,
      CrewPlans crewPlans,
      WhatIf whatIf,
      Stock stock,
      Nights nights,
      Services services) {
    this.desk = desk;
    this.plans = plans;
    this.crewPlans = crewPlans;
    this.whatIf = whatIf;
    this.stock = stock;
    this.nights = nights;
    this.dipped = new Dipped(desk);
    this.services = services;
    this.withdrawn = new Withdrawn(desk, plans);
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/", this::day);
    routes.post("/k/{kitchen}/plan", this::accept);
    routes.post("/k/{kitchen}/lanes", this::acceptLanes);
    routes.get("/k/{kitchen}/task", this::task);
    routes.get("/k/{kitchen}/tonight", this::tonight);
  }

  private void day(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    DayAsked asked = DayAsked.of(visit, house.day(desk.now()));
    if (asked.wrong().isPresent()) {
      visit.notice(visit.words().say("today.no-day", asked.wrong().get()));
      show(visit, house, asked, 422);
    } else {
      show(visit, house, asked, 200);
    }
  }

  private void accept(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    LocalDate today = house.day(desk.now());
    AcceptForm form = AcceptForm.of(visit).orElseThrow(() -> Halt.unreadable("plan"));
    if (plans.find(house, form.day()).isEmpty()) {
      throw Halt.notFound(form.day().toString());
    }
    if (form.day().isBefore(today)) {
      visit.notice(visit.words().say("today.day-over"));
      show(visit, house, DayAsked.on(form.day(), today), 409);
      return;
    }
    switch (plans.accept(house, form.day(), form.seen(), visit.who())) {
      case IN_FORCE -> visit.seeOther(form.day().equals(today) ? "" : "?date=" + form.day());
      case STALE -> {
        visit.notice(visit.words().say("today.stale"));
        show(visit, desk.again(house), DayAsked.on(form.day(), today), 409);
      }
    }
  }

  private void acceptLanes(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    LocalDate today = house.day(desk.now());
    LanesForm form = LanesForm.of(visit).orElseThrow(() -> Halt.unreadable("lanes"));
    if (form.day().isBefore(today) || plans.find(house, form.day()).isEmpty()) {
      throw Halt.notFound(form.day().toString());
    }
    switch (crewPlans.accept(house, form.day(), form.seen(), visit.who())) {
      case IN_FORCE -> visit.seeOther(form.back(today));
      case STALE -> {
        visit.notice(visit.words().say("today.stale"));
        show(visit, desk.again(house), DayAsked.on(form.day(), today), 409);
      }
    }
  }

  private void task(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    DayAsked asked = DayAsked.of(visit, house.day(desk.now()));
    String id = visit.query("id");
    Optional<InForce> inForce = inForce(visit, house, asked);
    Shown shown = find(visit, house, asked, inForce).orElseThrow(() -> Halt.notFound(id));
    Task task = Optional.ofNullable(shown.byId().get(id)).orElseThrow(() -> Halt.notFound(id));
    visit.page("today/task", shown.names().title(task), TaskView.of(shown, task));
  }

  private void tonight(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    DayAsked asked = DayAsked.on(house.day(desk.now()), house.day(desk.now()));
    Optional<InForce> inForce = inForce(visit, house, asked);
    Shown shown = find(visit, house, asked, inForce).orElseThrow();
    NightView view = NightView.of(shown, nights.missed(house, inForce.orElseThrow()));
    visit.page("today/night", visit.words().say("night.title"), view);
  }

  private void show(Visit visit, House house, DayAsked asked, int status) {
    Messages words = visit.words();
    Optional<InForce> inForce = inForce(visit, house, asked);
    Optional<Shown> shown = find(visit, house, asked, inForce);
    String title = asked.isToday() ? words.say("nav.today") : words.shortDate(asked.day());
    if (shown.isEmpty()) {
      visit.page(status, "today/none", title, NoPlan.of(words, asked.day(), visit.path("")));
      return;
    }
    Optional<Change> change =
        asked.isOver()
            ? Optional.empty()
            : inForce.flatMap(of -> change(house, shown.get(), of, asked));
    List<halfgram.lot.Tub> tubs = asked.isToday() ? stock.list(house) : List.of();
    List<Dipped.Dip> dips = asked.isToday() ? dipped.list(house, inForce) : List.of();
    OutWords said = new OutWords(house.book(), words);
    List<String> outs =
        asked.isToday() ? services.outages(house).stream().map(said::said).toList() : List.of();
    Optional<DayFacts> facts =
        asked.isOver()
            ? Optional.empty()
            : inForce.flatMap(
                of -> shown.get().crew().map(crew -> crewPlans.facts(house, of, crew)));
    DayView.Live live =
        new DayView.Live(
            lanes(shown.get(), inForce, facts),
            crew(house, shown.get(), facts, asked),
            change,
            tubs,
            missed(house, asked, inForce),
            dips,
            outs,
            deliveries(house, shown.get()),
            told(house, asked, inForce),
            behind(asked, inForce),
            asked.isToday()
                ? inForce.map(of -> of.listShort(desk.now())).orElse(List.of())
                : List.of(),
            house.book().formulary().list().isEmpty() && house.book().dishes().isEmpty());
    visit.page(status, "today", title, DayView.of(shown.get(), inForce, live, asked.by()));
  }

  private Optional<LanesLine> lanes(
      Shown shown, Optional<InForce> inForce, Optional<DayFacts> facts) {
    return facts
        .flatMap(
            of -> crewPlans.findProposal(inForce.orElseThrow(), shown.crew().orElseThrow(), of))
        .map(one -> LanesLine.of(shown, one));
  }

  /** What the lanes say of the day, or that it is looked for; nothing where they are not asked. */
  private String crew(House house, Shown shown, Optional<DayFacts> facts, DayAsked asked) {
    boolean far = asked.day().isAfter(WhatIf.lastDay(asked.today()));
    if (asked.isOver() || far || shown.sheet().tasks().isEmpty()) {
      return "";
    }
    if (shown.preview().isEmpty() && shown.crew().isEmpty()) {
      return "";
    }
    Optional<Fit> fit =
        shown.preview().isPresent()
            ? whatIf.findFit(house, shown.preview().get())
            : shown
                .crew()
                .filter(crew -> !crew.isRough())
                .map(crew -> Fit.of(shown.book(), shown.sheet(), facts.orElseThrow(), crew.plan()));
    return fit.map(one -> FitWords.line(one, shown.words()))
        .orElseGet(() -> shown.words().say("lanes.rough"));
  }

  private List<Missed> missed(House house, DayAsked asked, Optional<InForce> inForce) {
    return asked.isToday() && inForce.isPresent() ? nights.missed(house, inForce.get()) : List.of();
  }

  private List<Withdrawn.Told> told(House house, DayAsked asked, Optional<InForce> inForce) {
    return asked.isToday() && inForce.isPresent()
        ? withdrawn.listTold(house, inForce.get())
        : List.of();
  }

  /** What will be late as it goes, beyond what the plan in force says already. */
  private List<Behind> behind(DayAsked asked, Optional<InForce> inForce) {
    return asked.isToday() && inForce.isPresent()
        ? Delays.list(inForce.get(), desk.now()).stream()
            .filter(late -> !late.isSaid(inForce.get().sheet()))
            .toList()
        : List.of();
  }

  /** The day's deliveries with what they hold up. */
  private List<Told.One> deliveries(House house, Shown shown) {
    Told told = new Told(house, shown.sheet(), shown.words());
    return DeliveryAnswer.list(house.book(), shown.sheet(), shown.progress(), desk.now()).stream()
        .map(told::of)
        .toList();
  }

  private Optional<Change> change(House house, Shown shown, InForce inForce, DayAsked asked) {
    Optional<Plans.Proposal> proposal =
        asked.again()
            ? Optional.of(plans.propose(house, inForce))
            : plans.findProposal(house, inForce);
    List<Services.Uncalled> uncalled =
        proposal.isPresent() && asked.isToday() ? services.uncalled(house, inForce) : List.of();
    return proposal.map(
        one ->
            Change.of(
                shown,
                one,
                Passing.of(plans, house, inForce, one),
                inForce.plan().number(),
                asked.again(),
                uncalled));
  }

  /** Today's first plan is in force as soon as somebody looks; no other day's. */
  private Optional<InForce> inForce(Visit visit, House house, DayAsked asked) {
    return plans.findOrOpen(house, asked.day(), visit.who());
  }

  private Optional<Shown> find(
      Visit visit, House house, DayAsked asked, Optional<InForce> inForce) {
    if (inForce.isPresent()) {
      Optional<CrewInForce> crew = crewPlans.shown(house, inForce.get(), visit.who());
      return Optional.of(Shown.of(house, inForce.get(), crew, desk.now(), visit));
    }
    return asked.isOver()
        ? Optional.empty()
        : Optional.of(Shown.preview(plans.preview(house, asked.day(), 1), desk.now(), visit));
  }
}
