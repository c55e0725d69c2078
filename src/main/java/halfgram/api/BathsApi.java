package halfgram.api;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.BathBoard;
import halfgram.desk.Bathing;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.desk.Plans;
import halfgram.pages.KeptReader;
import halfgram.pages.KeptWords;
import halfgram.pages.Rooms;
import halfgram.prep.Task;
import halfgram.prep.TickStore;
import halfgram.technique.bath.BathEntry;
import halfgram.web.Halt;
import halfgram.web.Problems;
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

/** The baths of a day, and what cooks enter at them. */
public final class BathsApi implements Server.Part, KeptReader {
  private static final String PLACE = "/k/{kitchen}/api/v1/baths";

  private final Desk desk;
  private final Plans plans;
  private final Bathing bathing;
  private final BathAnswers answers;

  public BathsApi(Desk desk, Plans plans, Bathing bathing, BathAnswers answers) {
    this.desk = desk;
    this.plans = plans;
    this.bathing = bathing;
    this.answers = answers;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get(PLACE, this::list);
    routes.post(PLACE, this::enter);
    routes.get(PLACE + "/{label}", this::one);
  }

  private void list(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    InForce inForce = inForce(visit, house);
    BathBoard board = bathing.board(house, inForce);
    visit.json(200, answers.day(house, inForce, board).toString());
  }

  private void one(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    InForce inForce = inForce(visit, house);
    BathBoard board = bathing.board(house, inForce);
    String label = visit.part("label");
    String formula = visit.query("of");
    BathBoard.Basin basin =
        board.basins().stream()
            .filter(of -> formula.isEmpty() || of.formula().equals(formula))
            .filter(of -> of.labels().contains(label))
            .findFirst()
            .orElseThrow(() -> Halt.notFound(label));
    visit.json(200, answers.life(house, inForce, basin, label).toString());
  }

  private void enter(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Queue.answer(
        visit,
        context.body(),
        one ->
            isElsewhere(visit, house, one)
                ? Queue.elsewhere(visit)
                : answer(house, visit.words(), visit.who(), one));
  }

  @Override
  public Optional<Work> read(Post post) {
    if (!post.path().equals("api/v1/baths")) {
      return Optional.empty();
    }
    return Optional.of(
        Queue.kept(
            post,
            one ->
                new KeptWords(plans)
                    .bath(
                        post,
                        one.path("kind").asText(),
                        List.of(
                            one.path("bath").asText(),
                            one.path("run").asText(),
                            one.path("pieces").asText(),
                            one.path("note").asText(),
                            one.path("cook").asText())),
            (then, one) ->
                new BathsApi(then.desk(), then.plans(), then.bathing(), answers)
                    .answer(post.house(), post.words(), post.cook(), one)));
  }

  // ---- behind the handlers ----

  /** Whether the tasks of the run it is about are at another station than the tablet. */
  private boolean isElsewhere(Visit visit, House house, JsonNode body) {
    String run = body.path("run").asText();
    if (run.isEmpty()) {
      return false;
    }
    List<Task> tasks =
        inForce(visit, house).sheet().tasks().stream()
            .filter(task -> task.make().id().equals(run))
            .toList();
    return !tasks.isEmpty() && tasks.stream().noneMatch(task -> visit.isAt(task.station()));
  }

  private InForce inForce(Visit visit, House house) {
    LocalDate day = Query.findDate(visit, "date").orElse(house.day(desk.now()));
    return plans
        .findOrOpen(house, day, visit.who())
        .orElseThrow(() -> Halt.notFound(day.toString()));
  }

  private Queue.Answer answer(House house, Messages words, String who, JsonNode body) {
    Call call = new Call(body);
    LocalDate day = call.date("day", house.day(desk.now()));
    Bathing.Entry entry = entry(call);
    if (!call.problems().isEmpty()) {
      return new Queue.Answer(422, Call.json(call.problems(), words));
    }
    plans.open(house, house.day(desk.now()), who);
    Bathing.Outcome outcome = bathing.enter(house, day, entry);
    if (outcome instanceof Bathing.Taken taken) {
      return new Queue.Answer(taken.repeated() ? 200 : 201, taken(house, taken));
    }
    if (outcome instanceof Bathing.Refused refused) {
      return new Queue.Answer(409, Problems.json("refused", words.say(refused.because())));
    }
    if (outcome instanceof Bathing.Worn worn) {
      return new Queue.Answer(409, Problems.json("worn", words.say(worn.because())));
    }
    String what = ((Bathing.Unknown) outcome).what();
    return new Queue.Answer(404, Problems.json("not-found", words.say("web.not-found", what)));
  }

  private Bathing.Entry entry(Call call) {
    Optional<UUID> id = call.findUuid("entry");
    BathEntry.Kind kind = call.choice("kind", BathEntry.Kind.class).orElse(BathEntry.Kind.UNDO);
    boolean said = call.problems().isEmpty();
    Optional<String> run = asked(call, kind == BathEntry.Kind.DROP, "run");
    boolean ofDrop = kind == BathEntry.Kind.LIFT || kind == BathEntry.Kind.BROKE;
    Optional<UUID> drop = call.findUuid("drop");
    needs(call, said && ofDrop && drop.isEmpty(), "drop", "api.accept-uuid");
    Optional<UUID> undoes = call.findUuid("undoes");
    boolean undo = kind == BathEntry.Kind.UNDO;
    needs(call, said && undo && undoes.isEmpty(), "undoes", "api.accept-uuid");
    boolean pieces = kind == BathEntry.Kind.DROP || kind == BathEntry.Kind.BROKE;
    boolean level = kind == BathEntry.Kind.LEVEL;
    needs(call, level && !call.has("millimetres"), "millimetres", "api.accept-decimal");
    TickStore.Origin origin = call.origin(desk.now());
    return new Bathing.Entry(
        id,
        kind,
        call.findText("formula").orElse(""),
        ofDrop || undo ? "" : call.text("bath"),
        run,
        drop,
        pieces ? OptionalLong.of(call.number("pieces", 1)) : OptionalLong.empty(),
        call.findDecimal("millimetres"),
        call.findText("fresh"),
        call.findText("tub"),
        call.findText("note"),
        call.flag("worn"),
        call.text("cook"),
        undo ? undoes : Optional.empty(),
        origin);
  }

  private static Optional<String> asked(Call call, boolean needed, String key) {
    return needed ? Optional.of(call.text(key)) : call.findText(key);
  }

  private static void needs(Call call, boolean missing, String key, String accepted) {
    if (missing && call.problems().stream().noneMatch(one -> one.path().equals("$." + key))) {
      call.problem(key, "", accepted);
    }
  }

  private static String taken(House house, Bathing.Taken taken) {
    BathEntry entry = taken.entry();
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("entry", entry.id().toString());
    node.put("change", taken.change());
    node.put("at", Answers.moment(entry.at(), Answers.zone(house)));
    node.put("bath", entry.bath().label());
    entry.fresh().ifPresent(fresh -> node.put("fresh", fresh));
    entry.rule().ifPresent(rule -> node.put("rule", Call.word(rule)));
    return node.toString();
  }
}
