package halfgram.pages.stock;

import halfgram.desk.Bringing;
import halfgram.desk.Desk;
import halfgram.desk.Dipped;
import halfgram.desk.Gating;
import halfgram.desk.Handled;
import halfgram.desk.HeldBack;
import halfgram.desk.House;
import halfgram.desk.Plans;
import halfgram.desk.Stock;
import halfgram.lot.Lot;
import halfgram.lot.Tub;
import halfgram.measure.Dimension;
import halfgram.pages.Rooms;
import halfgram.pages.StationNames;
import halfgram.pages.TubDeed;
import halfgram.pages.TubDeeds;
import halfgram.people.Deed;
import halfgram.prep.Task;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Stream;

/** The tubs in the house. */
public final class StockPages implements Server.Part {
  private final Desk desk;
  private final Plans plans;
  private final Stock stock;
  private final Bringing bringing;
  private final TubDeeds deeds;
  private final Shelves shelves;
  private final Dipped dipped;
  private final Gating gating;

  public StockPages(
      Desk desk, Plans plans, Stock stock, Bringing bringing, TubDeeds deeds, Gating gating) {
    this.desk = desk;
    this.plans = plans;
    this.stock = stock;
    this.bringing = bringing;
    this.deeds = deeds;
    this.shelves = new Shelves(desk, plans);
    this.dipped = new Dipped(desk);
    this.gating = gating;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/stock", this::list);
    routes.get("/k/{kitchen}/stock/new", this::blank);
    routes.post("/k/{kitchen}/stock/new", this::bring);
    PastTubs past = new PastTubs(desk, stock, shelves);
    routes.get("/k/{kitchen}/stock/past", context -> past.list(Visit.of(context)));
    routes.post("/k/{kitchen}/stock/past", context -> past.bin(Visit.of(context)));
    routes.get("/k/{kitchen}/stock/{code}", this::one);
    routes.get("/k/{kitchen}/count/{station}", this::counts);
    routes.post("/k/{kitchen}/stock/{code}/count", this::count);
    routes.post("/k/{kitchen}/stock/{code}/bin", this::bin);
    routes.post("/k/{kitchen}/stock/{code}/back", this::back);
    routes.post("/k/{kitchen}/stock/{code}/{deed}", this::deed);
    routes.post("/k/{kitchen}/kept/seen", this::seen);
  }

  private void list(Context context) {
    Visit visit = Visit.of(context);
    House house = house(visit);
    Shelf shelf = shelves.of(visit, house);
    StockView.By by = StockView.By.of(visit.query("by"));
    StockView view =
        StockView.of(
            shelf,
            stock.list(house),
            by,
            counts(house, shelf),
            new StockView.Beside(dips(house, shelf), held(house, shelf)));
    visit.page("stock", shelf.words().say("nav.stock"), view);
  }

  private void blank(Context context) {
    Visit visit = Visit.of(context);
    House house = house(visit);
    Shelf shelf = shelves.of(visit, house);
    String now =
        desk.now()
            .atZone(shelf.clock().zone())
            .toLocalDateTime()
            .truncatedTo(ChronoUnit.MINUTES)
            .toString();
    NewTubForm form = NewTubForm.blank(now, visit.query("component"));
    show(visit, 200, house, shelf, form, Bringing.Outcome.NONE);
  }

  private void bring(Context context) {
    Visit visit = Visit.of(context);
    House house = house(visit);
    NewTubForm form = NewTubForm.of(visit).orElseThrow(() -> Halt.unreadable("tub"));
    Bringing.Outcome outcome =
        bringing.bring(house, form.id(), form.fields(), form.sure(), visit.who());
    if (outcome.code().isPresent()) {
      visit.seeOther("stock/" + Visit.encoded(outcome.code().get()));
    } else {
      show(visit, 422, house, shelves.of(visit, house), form, outcome);
    }
  }

  private void one(Context context) {
    Visit visit = Visit.of(context);
    House house = house(visit);
    show(visit, house, life(visit, house), Optional.empty());
  }

  private void counts(Context context) {
    Visit visit = Visit.of(context);
    House house = house(visit);
    showCounts(visit, 200, house, visit.part("station"), Optional.empty());
  }

  /** The count is the wall's: in the language of the device. */
  private void showCounts(
      Visit visit, int status, House house, String named, Optional<Fault> fault) {
    Shelf shelf = shelves.of(visit, house, visit.wallWords());
    CountView view =
        CountView.of(shelf, house, stock.listToCount(house), named, dips(house, shelf), fault);
    visit.wallPage(status, "stock/count", view.title(), view);
  }

  private void count(Context context) {
    Visit visit = Visit.of(context);
    House house = house(visit);
    Stock.Life life = life(visit, house);
    Lot lot = life.tub().lot();
    CountForm form = CountForm.of(visit, lot);
    Optional<String> counted = counted(visit, house);
    Messages words = counted.isPresent() ? visit.wallWords() : visit.words();
    Optional<Fault> fault = fault(life, form, words.at(house.book().kitchen()));
    if (fault.isEmpty()) {
      stock.count(house, lot.code(), form.amount().orElseThrow(), visit.who());
      visit.seeOther(counted.map(at -> "count/" + at).orElse(tub(lot.code())));
    } else if (counted.isPresent()) {
      showCounts(visit, 422, house, counted.get(), fault);
    } else {
      show(visit, house, life, fault);
    }
  }

  private static Optional<Fault> fault(Stock.Life life, CountForm form, Messages words) {
    Lot lot = life.tub().lot();
    if (form.amount().isEmpty()) {
      boolean pieces = lot.left().dimension() == Dimension.COUNT;
      String said = words.say(pieces ? "stock.not-pieces" : "stock.not-mass");
      return Optional.of(new Fault(lot.code(), Fault.Field.AMOUNT, form.typed(), said));
    }
    return life.doubt(form.amount().get())
        .filter(doubt -> !form.sure())
        .map(words::say)
        .map(said -> new Fault(lot.code(), Fault.Field.AMOUNT, form.typed(), said, true));
  }

  /** The stations in whose count the form stood. */
  private static Optional<String> counted(Visit visit, House house) {
    return Optional.of(visit.field("back"))
        .filter(back -> back.startsWith("count/"))
        .map(back -> back.substring("count/".length()))
        .filter(named -> StationNames.find(house, named).isPresent());
  }

  private void bin(Context context) {
    Visit visit = Visit.of(context);
    House house = house(visit);
    Stock.Life life = life(visit, house);
    String code = life.tub().lot().code();
    BinForm form = BinForm.of(visit);
    if (form.reason().isEmpty()) {
      String said = visit.words().say("stock.no-reason");
      show(
          visit, house, life, Optional.of(new Fault(code, Fault.Field.REASON, form.typed(), said)));
    } else {
      stock.bin(house, code, form.reason().get(), visit.who());
      done(visit, code);
    }
  }

  private void back(Context context) {
    Visit visit = Visit.of(context);
    House house = house(visit);
    String code = life(visit, house).tub().lot().code();
    String change = visit.field("change");
    OptionalLong number =
        change.matches("\\d{1,18}")
            ? OptionalLong.of(Long.parseLong(change))
            : OptionalLong.empty();
    boolean sure = !visit.field("sure").isEmpty();
    Handled handled = stock.takeBack(house, code, number, sure, visit.who());
    if (handled instanceof Handled.Asks asks) {
      visit.notice(visit.words().say(asks.asks()));
      show(visit, 422, house, life(visit, house), Optional.empty(), Typed.NOTHING);
    } else if (handled instanceof Handled.Refused refused && number.isPresent()) {
      visit.notice(visit.words().say(refused.because()));
      show(visit, 409, house, life(visit, house), Optional.empty(), Typed.NOTHING);
    } else {
      done(visit, code);
    }
  }

  private void deed(Context context) {
    Visit visit = Visit.of(context);
    House house = house(visit);
    Stock.Life life = life(visit, house);
    String word = visit.part("deed");
    TubDeed deed = TubDeed.find(word).orElseThrow(() -> Halt.notFound(word));
    TubDeeds.Fields fields = new Sent(visit);
    Lot lot = life.tub().lot();
    TubDeeds.Outcome outcome = deeds.perform(house, lot, deed, fields, visit.who());
    if (outcome.done().isPresent()) {
      boolean combined = deed == TubDeed.COMBINE;
      done(visit, combined ? outcome.done().get().tub().lot().code() : lot.code());
    } else {
      Typed typed = new Typed(Optional.of(deed), fields, outcome.problems());
      int status = outcome.isRefused() ? 409 : 422;
      show(visit, status, house, life, Optional.empty(), typed);
    }
  }

  private void seen(Context context) {
    Visit visit = Visit.of(context);
    House house = house(visit);
    List<String> numbers = visit.fields("number");
    if (!numbers.stream().allMatch(number -> number.matches("\\d{1,18}"))) {
      throw Halt.unreadable("number");
    }
    dipped.see(house, numbers.stream().map(Long::valueOf).toList(), visit.who());
    visit.seeOther(visit.may(Deed.SEE_STOCK) ? "stock" : "wall");
  }

  /** A form as it was sent. */
  private record Sent(Visit visit) implements TubDeeds.Fields {
    @Override
    public String get(String name) {
      return visit.field(name);
    }

    @Override
    public List<String> all(String name) {
      return visit.fields(name);
    }
  }

  private static void done(Visit visit, String code) {
    visit.seeOther(tub(code));
  }

  private static String tub(String code) {
    return "stock/" + Visit.encoded(code);
  }

  /** What is held back to taste, of today's plan and the day's before. */
  private List<HeldRow> held(House house, Shelf shelf) {
    LocalDate today = house.day(desk.now());
    return Stream.of(today.minusDays(1), today)
        .flatMap(day -> plans.find(house, day).stream())
        .flatMap(
            inForce ->
                HeldBack.list(
                    inForce,
                    gating.list(house, inForce.sheet().tasks().stream().map(Task::id).toList()))
                    .stream())
        .map(part -> HeldRow.of(shelf, part))
        .toList();
  }

  /** The stations with tubs that somebody has to count. */
  private List<StockView.Link> counts(House house, Shelf shelf) {
    List<Tub> all = stock.listToCount(house);
    return house.book().stations().values().stream()
        .filter(
            one ->
                all.stream()
                    .anyMatch(
                        tub -> tub.assumed() && CountView.station(house, tub).equals(one.code())))
        .map(
            one ->
                new StockView.Link(
                    shelf.words().say("count.link", shelf.words().text(one.name())),
                    shelf.address("count/" + Visit.encoded(one.code()))))
        .toList();
  }

  private House house(Visit visit) {
    return Rooms.house(desk, visit);
  }

  private Stock.Life life(Visit visit, House house) {
    String code = visit.part("code");
    return stock.find(house, code).orElseThrow(() -> Halt.notFound(code));
  }

  private void show(Visit visit, House house, Stock.Life life, Optional<Fault> fault) {
    show(visit, fault.isPresent() ? 422 : 200, house, life, fault, Typed.NOTHING);
  }

  private void show(
      Visit visit, int status, House house, Stock.Life life, Optional<Fault> fault, Typed typed) {
    Shelf shelf = shelves.of(visit, house);
    Lot lot = life.tub().lot();
    List<Tub> all = stock.list(house);
    List<Tub> others = all.stream().filter(tub -> shelf.isSame(lot, tub.lot())).toList();
    List<Dipped.Dip> dips =
        dipped.list(house, shelf.planned()).stream()
            .filter(dip -> dip.tub().id().equals(life.tub().id()))
            .toList();
    LifeView.Parts parts =
        new LifeView.Parts(
            Stock.findLast(life.movements())
                .flatMap(last -> Stock.asksBack(house, last, desk.now())),
            DipView.of(shelf, dips),
            new DeedForms(shelf, house, lot, typed).list(others),
            NewTubView.places(house, all));
    String currency = house.book().kitchen().currency();
    LifeView view = LifeView.of(shelf, life, currency, parts, fault);
    visit.page(status, "stock/one", view.tub().what(), view);
  }

  private List<DipView> dips(House house, Shelf shelf) {
    return DipView.of(shelf, dipped.list(house, shelf.planned()));
  }

  private void show(
      Visit visit,
      int status,
      House house,
      Shelf shelf,
      NewTubForm form,
      Bringing.Outcome outcome) {
    NewTubView view = NewTubView.of(shelf, house, stock.list(house), form, outcome);
    visit.page(status, "stock/new", shelf.words().say("stock.new"), view);
  }
}
