package halfgram.api;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.desk.Desk;
import halfgram.desk.FormulaOut;
import halfgram.desk.House;
import halfgram.desk.Plans;
import halfgram.desk.SaveFormula;
import halfgram.desk.SheetEffects;
import halfgram.formula.Formula;
import halfgram.formula.FormulaStore;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Output;
import halfgram.input.Problem;
import halfgram.measure.Message;
import halfgram.pages.Rooms;
import halfgram.web.Halt;
import halfgram.web.Problems;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.OptionalLong;

/**
 * Formulas: read, scaled, saved as new versions, as the book writes them, taken out and put back;
 * with {@code look=yes} a version is only looked at.
 */
public final class FormulasApi implements Server.Part {
  private static final String PLACE = "/k/{kitchen}/api/v1/formulas";

  private final Desk desk;
  private final SaveFormula saving;
  private final SheetEffects effects;
  private final FormulaOut taking;

  public FormulasApi(Desk desk, SheetEffects effects, Plans plans) {
    this.desk = desk;
    this.taking = new FormulaOut(desk, plans);
    this.effects = effects;
    this.saving = new SaveFormula(desk);
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get(PLACE, this::list);
    routes.post(PLACE, this::create);
    routes.get(PLACE + "/{code}", this::one);
    routes.put(PLACE + "/{code}", this::save);
    routes.delete(PLACE + "/{code}", context -> put(context, true));
    routes.post(PLACE + "/{code}/back", context -> put(context, false));
    routes.get(PLACE + "/{code}/scale", this::scale);
  }

  private void list(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    ArrayNode list = node.putArray("formulas");
    house
        .book()
        .formulary()
        .list()
        .forEach(formula -> row(list.addObject(), formula, visit.words()));
    visit.json(200, node.toString());
  }

  private void create(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Json.object(
        visit, context.body(), body -> save(visit, house, body.path("code").asText(), 0, body));
  }

  private void one(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    answer(visit, 200, house, version(visit, formula(visit, house)));
  }

  /** One more version; its number is the next whatever the body says. */
  private void save(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String code = formula(visit, house).code();
    int seen = seen(visit);
    Json.object(visit, context.body(), body -> save(visit, house, code, seen, body));
  }

  /** The number of the version that was seen. */
  private static int seen(Visit visit) {
    OptionalLong seen = Query.findNumber(visit, "seen");
    if (seen.isEmpty() || seen.getAsLong() < 1 || seen.getAsLong() > Integer.MAX_VALUE) {
      throw Halt.unreadable("seen=NUMBER");
    }
    return (int) seen.getAsLong();
  }

  /** Takes it out of the book, or puts it back. */
  private void put(Context context, boolean out) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String code = formula(visit, house).code();
    FormulaOut.Outcome outcome = taking.put(house, code, seen(visit), out, visit.who());
    if (outcome instanceof FormulaOut.Used used) {
      Call.refuse(visit, used.problems());
    } else if (outcome instanceof FormulaOut.Stale) {
      throw Halt.stale();
    } else {
      House now = desk.again(house);
      answer(visit, 200, now, now.book().formulary().find(code).orElseThrow().current());
    }
  }

  private void scale(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    FormulaVersion version = version(visit, formula(visit, house));
    new ScaleCall(visit, context.queryParams("have")).answer(house.book(), version);
  }

  // ---- behind the handlers ----

  private static Formula formula(Visit visit, House house) {
    String code = visit.part("code");
    return house.book().formulary().find(code).orElseThrow(() -> Halt.notFound(code));
  }

  private static FormulaVersion version(Visit visit, Formula formula) {
    OptionalLong number = Query.findNumber(visit, "version");
    return number.isEmpty()
        ? formula.current()
        : formula.versions().stream()
            .filter(version -> version.number() == number.getAsLong())
            .findFirst()
            .orElseThrow(() -> Halt.notFound("version"));
  }

  private static void row(ObjectNode node, Formula formula, Messages words) {
    FormulaVersion version = formula.current();
    node.put("code", formula.code());
    node.put("name", words.text(version.name()));
    node.put("version", version.number());
    ArrayNode outputs = node.putArray("outputs");
    for (Output output : version.outputs()) {
      ObjectNode one = outputs.addObject();
      one.put("code", output.code());
      one.put("name", words.text(output.name()));
      one.put("unit", Answers.unit(output.unit()));
    }
  }

  private void save(Visit visit, House house, String code, int seen, ObjectNode body) {
    JsonNode versions = body.path("versions");
    ObjectNode head = body.deepCopy();
    head.remove("versions");
    if (versions.size() != 1 || !(versions.get(0) instanceof ObjectNode version)) {
      Message one = Message.of("problem.accepted", Message.of("api.accept-one-version"));
      Call.refuse(visit, List.of(new Problem("$.versions", "", one)));
      return;
    }
    if (seen > 0 && !body.path("code").asText(code).equals(code)) {
      Message own = Message.of("api.accept-code", code);
      Call.refuse(visit, List.of(new Problem("$.code", body.path("code").asText(), own)));
      return;
    }
    SaveFormula.Draft draft = new SaveFormula.Draft(code, seen, head, version);
    if (seen > 0 && Query.isAsked(visit, "look")) {
      SaveFormula.Tried tried = saving.look(house, draft);
      tried.house().ifPresent(after -> looked(visit, house, after, code));
      tried.refusal().ifPresent(outcome -> told(visit, house, draft, outcome));
    } else {
      told(visit, house, draft, saving.save(house, draft, visit.who()));
    }
  }

  /** What the new version would do to today's sheet and those to come. */
  private void looked(Visit visit, House house, House after, String code) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("code", code);
    EffectsJson.write(node, effects.list(house, after));
    visit.json(200, node.toString());
  }

  private void told(
      Visit visit, House house, SaveFormula.Draft draft, SaveFormula.Outcome outcome) {
    String code = draft.code();
    if (outcome instanceof SaveFormula.Saved) {
      House now = desk.again(house);
      FormulaVersion current = now.book().formulary().find(code).orElseThrow().current();
      visit.made("api/v1/formulas/" + Visit.encoded(code));
      answer(visit, 201, now, current);
    } else if (outcome instanceof SaveFormula.Wrong wrong) {
      Call.refuse(visit, problems(wrong));
    } else if (outcome instanceof SaveFormula.Out out) {
      visit.json(409, Problems.json("refused", visit.words().say(out.message())));
    } else if (draft.based() > 0) {
      throw Halt.stale();
    } else {
      String taken = visit.words().say("formulas.code-taken", code);
      visit.json(409, Problems.json("refused", taken));
    }
  }

  /** The new version is the only one of the body, whichever it is in the book. */
  private static List<Problem> problems(SaveFormula.Wrong wrong) {
    String there = "$.versions[" + wrong.index() + "]";
    return Call.within(wrong.path(), wrong.problems()).stream()
        .map(
            one ->
                one.path().startsWith(there)
                    ? new Problem(
                        "$.versions[0]" + one.path().substring(there.length()),
                        one.value(),
                        one.message())
                    : one)
        .toList();
  }

  /** A version as the book writes it, and what versions there are. */
  private void answer(Visit visit, int status, House house, FormulaVersion version) {
    String code = version.formula();
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("code", code);
    node.put("version", version.number());
    ObjectNode formula = SaveFormula.findHead(house, code).orElseThrow();
    ArrayNode versions = JsonNodeFactory.instance.arrayNode();
    for (FormulaStore.Saved saved : saving.list(house, code)) {
      JsonNode body = BookStore.parse(saved.body());
      ObjectNode one = versions.addObject();
      one.put("version", saved.version());
      one.put("who", saved.who());
      one.put("at", Answers.moment(saved.at(), Answers.zone(house)));
      for (String key : List.of("since", "note")) {
        if (body.hasNonNull(key)) {
          one.set(key, body.get(key));
        }
      }
      if (saved.version() == version.number()) {
        formula.putArray("versions").add(body);
      }
    }
    node.set("formula", formula);
    node.set("versions", versions);
    visit.json(status, node.toString());
  }
}
