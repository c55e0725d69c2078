package halfgram.pages.pars;

import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.Pars;
import halfgram.desk.SheetEffects;
import halfgram.input.Problem;
import halfgram.pages.Effect;
import halfgram.pages.Rooms;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** What regular services use, by weekday. */
public final class ParsPages implements Server.Part {
  private static final String ADD = "add ";

  /** Each further day is planned twice to be compared. */
  private static final int DAYS_SHOWN = 2;

  private final Desk desk;
  private final Pars pars;
  private final SheetEffects effects;

  public ParsPages(Desk desk, Pars pars, SheetEffects effects) {
    this.desk = desk;
    this.pars = pars;
    this.effects = effects;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/pars", this::week);
    routes.post("/k/{kitchen}/pars", this::save);
  }

  private void week(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String saved = visit.query("saved");
    if (!saved.matches("\\d{1,4}")) {
      show(visit, 200, house, ParsForm.of(house), NOTHING);
      return;
    }
    int cells = Integer.parseInt(saved);
    String change = visit.query("change");
    Map<Pars.Spot, String> before =
        change.matches("\\d{1,18}")
            ? pars.listBefore(house, cells, Long.parseLong(change))
            : Map.of();
    String said = visit.words().say("pars.saved", cells);
    show(visit, 200, house, ParsForm.of(house), ParsView.Told.saved(said, before));
  }

  private void save(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    ParsForm form = ParsForm.read(visit.form());
    String act = visit.field("act");
    if (act.startsWith(ADD)) {
      show(visit, 200, house, added(form, visit, act.substring(ADD.length())), NOTHING);
      return;
    }
    if (act.equals("look")) {
      look(visit, house, form);
    } else {
      told(visit, house, form, pars.save(house, form.seen(), form.typed(), visit.who()));
    }
  }

  // ---- behind the handlers ----

  private static final ParsView.Told NOTHING = ParsView.Told.NOTHING;

  private void look(Visit visit, House house, ParsForm form) {
    Pars.Tried tried = pars.look(house, form.seen(), form.typed());
    if (tried.refusal().isPresent()) {
      told(visit, house, form, tried.refusal().get());
      return;
    }
    Messages words = visit.words();
    LocalDate today = house.day(desk.now());
    List<LocalDate> dates =
        Stream.iterate(today, date -> date.plusDays(1))
            .limit(DayOfWeek.values().length)
            .filter(date -> tried.days().contains(date.getDayOfWeek()))
            .limit(DAYS_SHOWN)
            .toList();
    List<Effect> found =
        effects.list(house, tried.house().orElseThrow(), dates).stream()
            .map(effect -> Effect.of(effect, words))
            .toList();
    show(
        visit,
        200,
        house,
        form,
        ParsView.Told.looked(
            found.isEmpty() ? List.of(Effect.none(words.say("pars.effect-none"))) : found));
  }

  private void told(Visit visit, House house, ParsForm form, Pars.Outcome outcome) {
    if (outcome instanceof Pars.Wrong wrong) {
      show(visit, 422, house, form, told(wrong, visit.words()));
    } else if (outcome instanceof Pars.Stale stale) {
      House now = desk.again(house);
      visit.notice(visit.words().say("pars.stale"));
      show(visit, 409, now, form.rebased(now), theirs(stale));
    } else if (outcome instanceof Pars.Saved saved) {
      visit.seeOther("pars?saved=" + saved.cells() + "&change=" + saved.change());
    }
  }

  private void show(Visit visit, int status, House house, ParsForm form, ParsView.Told told) {
    Messages words = visit.words();
    visit.page(status, "pars", words.say("nav.pars"), ParsView.of(house, form, told, words));
  }

  /** The row chosen beside the button that was pressed. */
  private static ParsForm added(ParsForm form, Visit visit, String service) {
    String[] parts = visit.field("component:" + service).split("/", -1);
    return parts.length == 3 && parts[0].equals(service)
        ? form.with(new Pars.Row(parts[0], parts[1], parts[2]))
        : form;
  }

  private static ParsView.Told told(Pars.Wrong wrong, Messages words) {
    List<String> others = new ArrayList<>();
    for (Problem problem : wrong.others()) {
      others.add(words.say("pars.other", problem.path(), problem.message()));
    }
    others.add(0, words.say("pars.not-saved"));
    return new ParsView.Told(
        wrong.cells(), wrong.rows(), others, Map.of(), "", Map.of(), List.of());
  }

  private static ParsView.Told theirs(Pars.Stale stale) {
    return new ParsView.Told(
        Map.of(), Map.of(), List.of(), stale.theirs(), "", Map.of(), List.of());
  }
}
