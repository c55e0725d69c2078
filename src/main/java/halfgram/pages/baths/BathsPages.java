package halfgram.pages.baths;

import halfgram.book.Moments;
import halfgram.desk.BathBoard;
import halfgram.desk.BathOrigins;
import halfgram.desk.Bathing;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.desk.Plans;
import halfgram.pages.EntryFields;
import halfgram.pages.Rooms;
import halfgram.prep.TickStore;
import halfgram.technique.bath.BathEntry;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;

/** The baths of a day, and one bath's whole life. */
public final class BathsPages implements Server.Part {
  private final Desk desk;
  private final Plans plans;
  private final Bathing bathing;
  private final BathOrigins origins;

  public BathsPages(Desk desk, Plans plans, Bathing bathing, BathOrigins origins) {
    this.desk = desk;
    this.plans = plans;
    this.bathing = bathing;
    this.origins = origins;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/baths", this::list);
    routes.get("/k/{kitchen}/baths/{label}", this::one);
    routes.post("/k/{kitchen}/baths/{label}/back", this::back);
  }

  private void list(Context context) {
    Visit visit = Visit.of(context);
    Asked asked = asked(visit);
    List<LocalDate> days = bathing.listDays(asked.house());
    Pool pool = pool(visit, asked, visit.words());
    visit.page("baths", pool.words().say("bathday.title"), BathsView.of(pool, origins, days));
  }

  private void one(Context context) {
    Visit visit = Visit.of(context);
    show(visit, 200, asked(visit));
  }

  private void back(Context context) {
    Visit visit = Visit.of(context);
    Asked asked = asked(visit);
    String entry = visit.field("undoes");
    String sequence = visit.field("sequence");
    if (!EntryFields.isId(entry) || !sequence.matches("\\d{1,18}")) {
      throw Halt.unreadable("undoes");
    }
    Bathing.Outcome outcome =
        bathing.enter(asked.house(), asked.day(), undo(visit, UUID.fromString(entry), sequence));
    if (outcome instanceof Bathing.Taken taken) {
      BathEntry.Bath bath = taken.entry().bath();
      visit.seeOther(BathBoard.href(bath.day(), bath.formula(), bath.label()));
    } else if (outcome instanceof Bathing.Refused refused) {
      visit.notice(visit.wallWords().say("wall.refused", refused.because()));
      show(visit, 409, asked);
    } else {
      throw Halt.notFound(entry);
    }
  }

  private Bathing.Entry undo(Visit visit, UUID entry, String sequence) {
    return new Bathing.Entry(
        Optional.empty(),
        BathEntry.Kind.UNDO,
        "",
        "",
        Optional.empty(),
        Optional.empty(),
        OptionalLong.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        false,
        visit.who(),
        Optional.of(entry),
        new TickStore.Origin(visit.device(), Long.parseLong(sequence), desk.now(), 0));
  }

  // ---- behind the handlers ----

  /** Whose baths, of which day and formula; today and the first without being asked. */
  private record Asked(House house, LocalDate day, String formula) {}

  private Asked asked(Visit visit) {
    House house = Rooms.house(desk, visit);
    String typed = visit.query("date").isEmpty() ? visit.field("date") : visit.query("date");
    String formula = visit.query("of").isEmpty() ? visit.field("of") : visit.query("of");
    LocalDate day =
        typed.isEmpty()
            ? house.day(desk.now())
            : Moments.date(typed).orElseThrow(() -> Halt.unreadable("date=" + typed));
    return new Asked(house, day, formula);
  }

  private Pool pool(Visit visit, Asked asked, Messages words) {
    InForce there =
        plans
            .findOrOpen(asked.house(), asked.day(), visit.who())
            .orElseThrow(() -> Halt.notFound(asked.day().toString()));
    return Pool.of(
        asked.house(),
        there,
        bathing.board(asked.house(), there),
        words.at(asked.house().book().kitchen()),
        desk.now());
  }

  private void show(Visit visit, int status, Asked asked) {
    Pool pool = pool(visit, asked, visit.wallWords());
    String label = visit.part("label");
    BathBoard.Basin basin =
        pool.board().basins().stream()
            .filter(of -> asked.formula().isEmpty() || of.formula().equals(asked.formula()))
            .filter(of -> of.labels().contains(label))
            .findFirst()
            .orElseThrow(() -> Halt.notFound(label));
    BathView view = BathView.of(pool, origins, basin, label);
    visit.wallPage(status, "baths/one", view.title(), view);
  }
}
