package halfgram;

import halfgram.api.AuditApi;
import halfgram.api.BathAnswers;
import halfgram.api.BathsApi;
import halfgram.api.BookApi;
import halfgram.api.CrewApi;
import halfgram.api.CrewPlanApi;
import halfgram.api.DeliveryApi;
import halfgram.api.EventsApi;
import halfgram.api.FormulasApi;
import halfgram.api.GatesApi;
import halfgram.api.KitApi;
import halfgram.api.LanesApi;
import halfgram.api.LedgerApi;
import halfgram.api.LogApi;
import halfgram.api.OpenApi;
import halfgram.api.ParsApi;
import halfgram.api.PeopleApi;
import halfgram.api.PlanApi;
import halfgram.api.ServicesApi;
import halfgram.api.SessionApi;
import halfgram.api.SettingsApi;
import halfgram.api.SlipApi;
import halfgram.api.StockApi;
import halfgram.api.TabletsApi;
import halfgram.api.TechniquesApi;
import halfgram.api.ThingsApi;
import halfgram.api.TickApi;
import halfgram.cli.Cli;
import halfgram.cli.CommandApi;
import halfgram.cli.SheetJson;
import halfgram.db.Database;
import halfgram.db.Sync;
import halfgram.desk.AheadCrew;
import halfgram.desk.Audit;
import halfgram.desk.BathOrigins;
import halfgram.desk.Bathing;
import halfgram.desk.Bringing;
import halfgram.desk.Changes;
import halfgram.desk.CrewPlans;
import halfgram.desk.Deliveries;
import halfgram.desk.Desk;
import halfgram.desk.Dividing;
import halfgram.desk.Events;
import halfgram.desk.ExportBook;
import halfgram.desk.ExportTable;
import halfgram.desk.FirstRun;
import halfgram.desk.Gating;
import halfgram.desk.Handling;
import halfgram.desk.ImportBook;
import halfgram.desk.ImportTable;
import halfgram.desk.Inbox;
import halfgram.desk.Kit;
import halfgram.desk.Logbook;
import halfgram.desk.Nights;
import halfgram.desk.OwnRows;
import halfgram.desk.Pars;
import halfgram.desk.People;
import halfgram.desk.Plans;
import halfgram.desk.RollCall;
import halfgram.desk.Sending;
import halfgram.desk.Services;
import halfgram.desk.SheetEffects;
import halfgram.desk.Signing;
import halfgram.desk.Slips;
import halfgram.desk.Stock;
import halfgram.desk.Swapping;
import halfgram.desk.Tablets;
import halfgram.desk.Ticking;
import halfgram.desk.WhatIf;
import halfgram.desk.Whys;
import halfgram.kitchen.KitchenStore.Stand;
import halfgram.pages.AtWork;
import halfgram.pages.KeptInbox;
import halfgram.pages.KeptReader;
import halfgram.pages.TubDeeds;
import halfgram.pages.audit.AuditPages;
import halfgram.pages.baths.BathsPages;
import halfgram.pages.book.BookPages;
import halfgram.pages.book.FilePages;
import halfgram.pages.crew.CrewPages;
import halfgram.pages.deliveries.DeliveryPages;
import halfgram.pages.door.DoorPages;
import halfgram.pages.door.Opening;
import halfgram.pages.events.EditPages;
import halfgram.pages.events.EventsPages;
import halfgram.pages.formulas.FormulasPages;
import halfgram.pages.kit.KitPages;
import halfgram.pages.lanes.LanesPages;
import halfgram.pages.log.LogPages;
import halfgram.pages.pars.ParsPages;
import halfgram.pages.people.PeoplePages;
import halfgram.pages.service.KeptAtPass;
import halfgram.pages.service.ServicePages;
import halfgram.pages.settings.SettingsPages;
import halfgram.pages.slip.SlipPages;
import halfgram.pages.stock.StockPages;
import halfgram.pages.tablets.TabletsPages;
import halfgram.pages.techniques.ReferencePages;
import halfgram.pages.techniques.TechniquesPages;
import halfgram.pages.today.TodayPages;
import halfgram.pages.wall.EntryPages;
import halfgram.pages.wall.KeptAtWall;
import halfgram.pages.wall.KeptOnPaper;
import halfgram.pages.wall.LabelPages;
import halfgram.pages.wall.LongerPages;
import halfgram.pages.wall.PaperPages;
import halfgram.pages.wall.WallPages;
import halfgram.pages.why.WhyPages;
import halfgram.prep.KitchenBook;
import halfgram.prep.PrepSheet;
import halfgram.prep.schedule.Placing;
import halfgram.web.Access;
import halfgram.web.Live;
import halfgram.web.Server;
import halfgram.web.Templates;
import halfgram.web.Words;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/**
 * Puts the program together by hand: the only class that sees everything. One of these holds the
 * database; closing it closes the server first, then the database.
 */
public final class Wiring implements AutoCloseable {
  private final Settings settings;
  private final Database database;
  private final Live live = new Live();
  private final Words words;
  private final Desk desk;
  private final Plans plans;
  private final CrewPlans crewPlans;
  private final AheadCrew ahead;
  private final Ticking ticking;
  private final Stock stock;
  private final Signing signing;
  private final People people;
  private final Tablets tablets;
  private final FirstRun firstRun;
  private final Inbox inbox;

  private Wiring(
      Settings settings,
      Clock clock,
      Database database,
      Carried carried,
      Placing placing,
      Executor later) {
    this.settings = settings;
    this.database = database;
    this.words = carried.words();
    this.desk = new Desk(database, carried.reader(), clock, live::changed);
    this.plans = new Plans(desk, this::result);
    this.crewPlans = new CrewPlans(desk, plans, placing, later);
    this.ahead = new AheadCrew(desk, placing, later);
    this.ticking = new Ticking(desk, plans);
    this.stock = new Stock(desk);
    this.signing = new Signing(desk, live::check);
    this.people = new People(desk, signing);
    this.tablets = new Tablets(desk, signing);
    this.inbox = new Inbox(desk);
    this.firstRun = new FirstRun(desk, people, signing);
    if (database.isShared()) {
      live.watch(() -> desk.list().stream().collect(Collectors.toMap(Stand::code, Stand::change)));
    }
  }

  /** Opens the database of the settings. */
  public static Wiring open(Settings settings, Clock clock, Placing placing) {
    return open(settings, clock, UnaryOperator.identity(), placing, new Later());
  }

  /**
   * As {@link #open(Settings, Clock, Placing)}.
   *
   * @param around something between commit and disk
   * @param placing what places a workday
   * @param later runs what pages do not wait for
   */
  public static Wiring open(
      Settings settings, Clock clock, UnaryOperator<Sync> around, Placing placing, Executor later) {
    CompletableFuture<Carried> carried = Carried.read();
    Database database =
        Database.open(
            settings.address(), settings.databaseUser(), settings.databasePassword(), around);
    return new Wiring(settings, clock, database, carried.join(), placing, later);
  }

  /** A sheet as the JSON that its plan keeps. */
  public String result(KitchenBook book, PrepSheet sheet) {
    return new SheetJson(book, sheet, words.in("en")).write();
  }

  /** Whether the database has to be opened anew, by another of these. */
  public boolean hasGivenUp() {
    return database.hasGivenUp();
  }

  public Settings settings() {
    return settings;
  }

  public Desk desk() {
    return desk;
  }

  public Plans plans() {
    return plans;
  }

  public CrewPlans crewPlans() {
    return crewPlans;
  }

  public Ticking ticking() {
    return ticking;
  }

  public Stock stock() {
    return stock;
  }

  public Signing signing() {
    return signing;
  }

  public People people() {
    return people;
  }

  public FirstRun firstRun() {
    return firstRun;
  }

  public ImportBook importBook() {
    return new ImportBook(desk);
  }

  public ExportBook exportBook() {
    return new ExportBook();
  }

  public ImportTable importTable() {
    return new ImportTable(desk);
  }

  public ExportTable exportTable() {
    return new ExportTable(desk);
  }

  public Slips slips() {
    return new Slips(desk, plans, new Events(desk));
  }

  public WhatIf whatIf() {
    return new WhatIf(desk, plans, crewPlans, slips(), ahead);
  }

  public SheetEffects effects() {
    return new SheetEffects(desk, plans);
  }

  /**
   * A server on this database.
   *
   * @param secret opens the way for commands of the machine's owner
   * @param opening how its door stands
   */
  public Server server(Server.Options options, String secret, Opening opening) {
    Server.Kitchens kitchens =
        new Server.Kitchens(
            desk::list,
            desk::findStand,
            desk::isAlive,
            stand -> desk.open(stand).book().kitchen().language());
    Whys whys = new Whys(desk, plans);
    Events events = new Events(desk);
    SheetEffects effects = effects();
    Nights nights = new Nights(desk, plans);
    WhatIf whatIf = whatIf();
    Pars pars = new Pars(desk);
    Deliveries deliveries = new Deliveries(desk);
    Kit kit = new Kit(desk, plans);
    RollCall rollCall = new RollCall(desk);
    Bringing bringing = new Bringing(desk);
    Logbook logbook = new Logbook(desk, plans);
    Bathing bathing = new Bathing(desk, plans, ticking);
    Gating gating = new Gating(desk, ticking);
    BathOrigins origins = new BathOrigins(desk, stock);
    TubDeeds deeds = new TubDeeds(new Handling(desk), new Dividing(desk));
    Services services = new Services(desk, plans, bathing);
    Swapping swapping = new Swapping(desk, events);
    AtWork work = new AtWork(tablets);
    Sending sending = new Sending(desk, swapping);
    TickApi tickApi = new TickApi(desk, plans, ticking);
    BathsApi bathsApi = new BathsApi(desk, plans, bathing, new BathAnswers(desk, origins));
    GatesApi gatesApi = new GatesApi(desk, plans, gating);
    ServicesApi servicesApi = new ServicesApi(desk, services, sending, swapping);
    List<KeptReader> readers =
        List.of(
            new KeptAtWall(plans),
            new KeptOnPaper(plans),
            new KeptAtPass(),
            tickApi,
            bathsApi,
            gatesApi,
            servicesApi);
    KeptInbox kept = new KeptInbox(desk, inbox, readers, this::result);
    return new Server(
        options,
        kitchens,
        new Access(new AsAsked(signing, inbox), secret),
        live,
        words,
        new Templates(),
        new DoorPages(desk, signing, people, tablets, firstRun, opening),
        List.of(
            new PeoplePages(desk, people, signing),
            new SessionApi(signing),
            new PeopleApi(desk, people, signing),
            new AuditPages(desk, new Audit(desk)),
            new TechniquesPages(desk),
            new ReferencePages(desk, new OwnRows(desk)),
            new TechniquesApi(desk, new OwnRows(desk)),
            new AuditApi(desk, new Audit(desk)),
            new TodayPages(desk, plans, crewPlans, whatIf, stock, nights, services),
            new LongerPages(desk, plans, crewPlans),
            new CrewPlanApi(desk, plans, crewPlans),
            new LanesPages(desk, plans, crewPlans, whatIf),
            new LanesApi(desk, plans, whatIf),
            new WhyPages(desk, whys),
            new ServicePages(desk, services, sending, swapping, work),
            new WallPages(
                desk,
                plans,
                crewPlans,
                ticking,
                stock,
                new Changes(desk),
                nights,
                services,
                kit,
                bathing,
                gating,
                work),
            new LabelPages(desk, plans, crewPlans, stock, ticking),
            new PaperPages(desk, plans, crewPlans, whatIf, bathing, stock),
            new EntryPages(desk, plans, crewPlans, ticking, gating),
            new PlanApi(desk, plans, crewPlans, whys, nights, this::result),
            new KitPages(desk, kit),
            new KitApi(desk, kit),
            new CrewPages(desk, rollCall),
            new CrewApi(desk, rollCall),
            tickApi,
            bathsApi,
            gatesApi,
            servicesApi,
            new TabletsPages(desk, tablets, inbox, kept),
            new TabletsApi(desk, tablets, kept),
            new StockApi(desk, plans, stock, bringing, deeds),
            new LedgerApi(desk, plans),
            new DeliveryPages(desk, plans, deliveries),
            new DeliveryApi(desk, plans, deliveries),
            new EventsApi(desk, events, effects),
            new ParsApi(desk, pars),
            new SlipApi(desk, slips(), effects, whatIf),
            new FormulasApi(desk, effects, plans),
            new LogApi(desk, logbook),
            new BookApi(desk),
            new ThingsApi(desk, effects),
            new OpenApi(),
            new SettingsApi(desk),
            new SettingsPages(desk),
            new FormulasPages(desk, gating, effects, plans),
            new BookPages(desk, effects),
            new FilePages(desk),
            // Before the pages of one event, since "new" would be an event's code there.
            new EditPages(desk, events, effects),
            new EventsPages(desk, plans, events),
            new ParsPages(desk, pars, effects),
            new SlipPages(desk, slips(), effects, whatIf),
            new BathsPages(desk, plans, bathing, origins),
            new StockPages(desk, plans, stock, bringing, deeds, gating),
            new LogPages(desk, plans, logbook),
            new CommandApi(secret, (out, err) -> new Cli(out, err, this))));
  }

  @Override
  public void close() {
    live.close();
    database.close();
  }
}
