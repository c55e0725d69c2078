package halfgram.pages.formulas;

import halfgram.desk.Adjusted;
import halfgram.desk.Desk;
import halfgram.desk.FormulaOut;
import halfgram.desk.Gating;
import halfgram.desk.House;
import halfgram.desk.Plans;
import halfgram.desk.SaveFormula;
import halfgram.desk.ScaleFormula;
import halfgram.desk.SheetEffects;
import halfgram.formula.Formula;
import halfgram.formula.FormulaStore;
import halfgram.formula.FormulaVersion;
import halfgram.pages.Effect;
import halfgram.pages.Rooms;
import halfgram.pages.form.Elsewhere;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;

/** Formulas: read, scaled, told apart, and saved as new versions. */
public final class FormulasPages implements Server.Part {
  private static final String PLACE = "/k/{kitchen}/formulas";

  private final Desk desk;
  private final SaveFormula saving;
  private final FormulaOut taking;
  private final Gating gating;
  private final SheetEffects effects;

  public FormulasPages(Desk desk, Gating gating, SheetEffects effects, Plans plans) {
    this.desk = desk;
    this.gating = gating;
    this.effects = effects;
    this.taking = new FormulaOut(desk, plans);
    this.saving = new SaveFormula(desk);
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get(PLACE, this::list);
    routes.get(PLACE + "/new", this::blank);
    routes.post(PLACE + "/new", this::create);
    routes.get(PLACE + "/{code}", this::one);
    routes.get(PLACE + "/{code}/versions", this::versions);
    routes.get(PLACE + "/{code}/edit", this::edit);
    routes.post(PLACE + "/{code}/edit", this::save);
    routes.post(PLACE + "/{code}/out", context -> put(context, true));
    routes.post(PLACE + "/{code}/back", context -> put(context, false));
  }

  private void list(Context context) {
    Visit visit = Visit.of(context);
    House house = house(visit);
    visit.page(
        "formulas",
        visit.words().say("nav.formulas"),
        ListView.of(house.book(), visit.query("find"), visit.query("out"), visit.words()));
  }

  private void blank(Context context) {
    Visit visit = Visit.of(context);
    House house = house(visit);
    Editing editing = Editing.start(house, saving, visit.query("from"));
    page(visit, house, 200, editing.attaching(visit.query("technique")));
  }

  private void create(Context context) {
    Visit visit = Visit.of(context);
    House house = house(visit);
    Editing editing = Editing.startSent(house, saving, visit.field("start"), visit.form());
    answer(visit, house, editing);
  }

  private void one(Context context) {
    Visit visit = Visit.of(context);
    House house = house(visit);
    one(visit, house, 200);
  }

  private void one(Visit visit, House house, int status) {
    Formula formula = formula(visit, house);
    Messages words = visit.words();
    FormulaVersion version = version(visit, formula);
    ScaleForm form = new ScaleForm(visit::query);
    Optional<ScaleFormula.Outcome> scaled =
        form.ask(words).map(ask -> ScaleFormula.of(house.book(), version, ask));
    scaled.ifPresent(outcome -> form.take(outcome.faults(), words));
    visit.page(
        form.isWrong() ? 422 : status,
        "formulas/one",
        words.text(version.name()),
        OneView.of(
            house.book(),
            version,
            form,
            scaled.flatMap(ScaleFormula.Outcome::sized),
            AdjustedRow.list(house.book(), adjusted(house, formula), words),
            words));
  }

  private static FormulaVersion version(Visit visit, Formula formula) {
    String number = visit.query("version");
    return number.isEmpty()
        ? formula.current()
        : formula.versions().stream()
            .filter(version -> String.valueOf(version.number()).equals(number))
            .findFirst()
            .orElseThrow(() -> Halt.notFound("version"));
  }

  private void versions(Context context) {
    Visit visit = Visit.of(context);
    House house = house(visit);
    Formula formula = formula(visit, house);
    List<FormulaStore.Saved> all = saving.list(house, formula.code());
    int last = all.size() - 1;
    int to = number(visit.query("to"), all, all.get(last).version());
    int from = number(visit.query("from"), all, all.get(Math.max(0, last - 1)).version());
    Messages words = visit.words();
    visit.page(
        "formulas/versions",
        words.text(formula.current().name()),
        VersionsView.of(formula.code(), all, from, to, new BookNames(house.book(), words)));
  }

  private static int number(String typed, List<FormulaStore.Saved> all, int otherwise) {
    return typed.isEmpty()
        ? otherwise
        : all.stream()
            .map(FormulaStore.Saved::version)
            .filter(number -> String.valueOf(number).equals(typed))
            .findFirst()
            .orElseThrow(() -> Halt.notFound("version"));
  }

  private void edit(Context context) {
    Visit visit = Visit.of(context);
    House house = house(visit);
    Formula formula = formula(visit, house);
    String make = visit.query("adjusted");
    if (make.isEmpty()) {
      Editing editing = Editing.of(house, saving, formula);
      page(visit, house, 200, editing.attaching(visit.query("technique")));
      return;
    }
    Adjusted adjusted =
        adjusted(house, formula).stream()
            .filter(one -> one.make().equals(make))
            .findFirst()
            .orElseThrow(() -> Halt.notFound(make));
    page(visit, house, 200, Editing.of(house, saving, formula, adjusted, visit.words()));
  }

  /** The batches of the current version into which something went at a gate. */
  private List<Adjusted> adjusted(House house, Formula formula) {
    return Adjusted.list(gating.listOfVersion(house, formula.code(), formula.current().number()));
  }

  private void save(Context context) {
    Visit visit = Visit.of(context);
    House house = house(visit);
    answer(visit, house, Editing.sent(house, saving, formula(visit, house), visit.form()));
  }

  /** Takes it out of the book with one press, or puts it back. */
  private void put(Context context, boolean out) {
    Visit visit = Visit.of(context);
    House house = house(visit);
    Formula formula = formula(visit, house);
    String seen = visit.field("seen");
    if (!seen.matches("[1-9]\\d{0,5}")) {
      throw Halt.unreadable("seen");
    }
    String code = formula.code();
    FormulaOut.Outcome outcome = taking.put(house, code, Integer.parseInt(seen), out, visit.who());
    Messages words = visit.words();
    if (outcome instanceof FormulaOut.Done) {
      visit.seeOther(out ? "formulas?out=" + Visit.encoded(code) : "formulas/" + code);
    } else if (outcome instanceof FormulaOut.Used used) {
      visit.notice(
          out
              ? new Elsewhere(used.tree(), "", words).everyUser(used.problems())
              : words.say("formulas.not-back", lacking(house, used, words)));
      one(visit, desk.again(house), 422);
    } else {
      visit.notice(words.say("formulas.out-stale"));
      one(visit, desk.again(house), 409);
    }
  }

  /** What has to come back first. */
  private static List<String> lacking(House house, FormulaOut.Used used, Messages words) {
    return used.problems().stream()
        .flatMap(problem -> house.book().formulary().find(problem.value()).stream())
        .map(formula -> words.text(formula.current().name()))
        .distinct()
        .toList();
  }

  /** Adds or removes a row, looks first, or saves. */
  private void answer(Visit visit, House house, Editing editing) {
    Messages words = visit.words();
    String act = visit.field("act");
    if (!act.equals("save") && !act.equals("look")) {
      editing.act(act);
      page(visit, house, 200, editing);
      return;
    }
    String since = house.day(desk.now()).toString();
    SaveFormula.Draft draft = editing.draft(editing.version(house.book(), since, words));
    if (editing.isWrong()) {
      // What else is wrong is told at once.
      saving
          .look(house, draft)
          .refusal()
          .ifPresentOrElse(
              outcome -> told(visit, house, editing, outcome),
              () -> page(visit, house, 422, editing));
    } else if (act.equals("look")) {
      look(visit, house, editing, draft);
    } else {
      told(visit, house, editing, saving.save(house, draft, visit.who()));
    }
  }

  /** What the new version would change on today's sheet and those to come. */
  private void look(Visit visit, House house, Editing editing, SaveFormula.Draft draft) {
    SaveFormula.Tried tried = saving.look(house, draft);
    if (tried.house().isEmpty()) {
      tried.refusal().ifPresent(outcome -> told(visit, house, editing, outcome));
      return;
    }
    Messages words = visit.words();
    List<Effect> found =
        effects.list(house, tried.house().get()).stream()
            .map(effect -> Effect.of(effect, words))
            .toList();
    page(
        visit,
        house,
        200,
        editing,
        found.isEmpty() ? List.of(Effect.none(words.say("formulas.effect-none"))) : found);
  }

  private void told(Visit visit, House house, Editing editing, SaveFormula.Outcome outcome) {
    Messages words = visit.words();
    if (outcome instanceof SaveFormula.Saved) {
      visit.seeOther("formulas/" + editing.code());
    } else if (outcome instanceof SaveFormula.Wrong wrong) {
      editing.take(wrong, house.tree(), words);
      page(visit, house, 422, editing);
    } else if (outcome instanceof SaveFormula.Out out) {
      visit.notice(words.say(out.message()));
      page(visit, house, 409, editing);
    } else if (outcome instanceof SaveFormula.Stale stale) {
      if (editing.isFresh()) {
        visit.notice(editing.taken(words));
        page(visit, house, 409, editing);
        return;
      }
      House now = desk.again(house);
      int theirs = stale.by().version();
      String who = now.book().personName(stale.by().who());
      visit.notice(words.say("formulas.stale", theirs, who, theirs + 1));
      page(visit, now, 409, editing.rebased(now, stale, new BookNames(now.book(), words)));
    }
  }

  private static void page(Visit visit, House house, int status, Editing editing) {
    page(visit, house, status, editing, List.of());
  }

  private static void page(
      Visit visit, House house, int status, Editing editing, List<Effect> effects) {
    Messages words = visit.words();
    EditView view = editing.view(house.book(), effects, words);
    visit.page(status, "formulas/edit", view.title(), view);
  }

  private House house(Visit visit) {
    return Rooms.house(desk, visit);
  }

  private static Formula formula(Visit visit, House house) {
    return house
        .book()
        .formulary()
        .find(visit.part("code"))
        .orElseThrow(() -> Halt.notFound(visit.part("code")));
  }
}
