package halfgram.pages.pars;

import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.Pars;
import halfgram.input.Problem;
import halfgram.pages.Rooms;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** What regular services use, by weekday. */
public final class ParsPages implements Server.Part {
  private static final String ADD = "add ";

  private final Desk desk;
  private final Pars pars;

  public ParsPages(Desk desk, Pars pars) {
    this.desk = desk;
    this.pars = pars;
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
    String said =
        saved.matches("\\d{1,4}") ? visit.words().say("pars.saved", Integer.valueOf(saved)) : "";
    show(visit, 200, house, ParsForm.of(house), ParsView.Told.saved(said));
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
    Pars.Outcome outcome = pars.save(house, form.seen(), form.typed(), visit.who());
    if (outcome instanceof Pars.Wrong wrong) {
      show(visit, 422, house, form, told(wrong, visit.words()));
    } else if (outcome instanceof Pars.Stale stale) {
      House now = desk.again(house);
      visit.notice(visit.words().say("pars.stale"));
      show(visit, 409, now, form.rebased(now), theirs(stale));
    } else if (outcome instanceof Pars.Saved saved) {
      visit.seeOther("pars?saved=" + saved.cells());
    }
  }

  // ---- behind the handlers ----

  private static final ParsView.Told NOTHING = ParsView.Told.NOTHING;

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
    return new ParsView.Told(wrong.cells(), wrong.rows(), others, Map.of(), "");
  }

  private static ParsView.Told theirs(Pars.Stale stale) {
    return new ParsView.Told(Map.of(), Map.of(), List.of(), stale.theirs(), "");
  }
}
