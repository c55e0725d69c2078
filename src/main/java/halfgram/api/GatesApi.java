package halfgram.api;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.Desk;
import halfgram.desk.GateLock;
import halfgram.desk.Gating;
import halfgram.desk.HeldBack;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.desk.Plans;
import halfgram.desk.Said;
import halfgram.formula.Gate;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Message;
import halfgram.pages.KeptReader;
import halfgram.pages.KeptWords;
import halfgram.pages.Rooms;
import halfgram.pages.TypedAmount;
import halfgram.prep.GateEntry;
import halfgram.prep.GateProgress;
import halfgram.prep.Task;
import halfgram.web.Halt;
import halfgram.web.Problems;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** Test pieces and tastings at which batches stop, and parts held back to taste. */
public final class GatesApi implements Server.Part, KeptReader {
  private static final String PLACE = "/k/{kitchen}/api/v1/gates";

  private final Desk desk;
  private final Plans plans;
  private final Gating gating;

  public GatesApi(Desk desk, Plans plans, Gating gating) {
    this.desk = desk;
    this.plans = plans;
    this.gating = gating;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get(PLACE, this::list);
    routes.post(PLACE, this::enter);
  }

  private void list(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    LocalDate day = Query.findDate(visit, "date").orElse(house.day(desk.now()));
    InForce inForce =
        plans.findOrOpen(house, day, visit.who()).orElseThrow(() -> Halt.notFound(day.toString()));
    List<Task> tasks = inForce.sheet().tasks();
    Map<String, List<GateEntry>> entries =
        gating.list(house, tasks.stream().map(Task::id).toList());
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    ArrayNode gates = node.putArray("gates");
    for (Task task : tasks) {
      GateLock.find(task)
          .ifPresent(
              at ->
                  gate(
                      gates.addObject(),
                      house,
                      task,
                      at,
                      entries.getOrDefault(task.id(), List.of())));
    }
    ArrayNode held = node.putArray("heldBack");
    for (HeldBack part : HeldBack.list(inForce, entries)) {
      ObjectNode one = held.addObject();
      one.put("task", part.task().id());
      one.put("line", part.line().path());
      one.put("item", part.line().line().item().code());
      Answers.amount(one, "amount", part.amount());
    }
    visit.json(200, node.toString());
  }

  private void enter(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    JsonNode body = Json.body(context.body());
    Queue.Answer answer =
        isElsewhere(visit, house, body)
            ? Queue.elsewhere(visit)
            : answer(house, visit.words(), visit.who(), body);
    visit.json(answer.status(), answer.body());
  }

  private boolean isElsewhere(Visit visit, House house, JsonNode body) {
    return plans
        .findOrOpen(house, house.day(desk.now()), visit.who())
        .flatMap(of -> of.findTask(body.path("task").asText()))
        .filter(task -> !visit.isAt(task.station()))
        .isPresent();
  }

  @Override
  public Optional<Work> read(Post post) {
    if (!post.path().equals("api/v1/gates")) {
      return Optional.empty();
    }
    return Optional.of(
        Queue.kept(
            post,
            one ->
                new KeptWords(plans)
                    .gate(
                        post,
                        one.path("verdict").asText(),
                        one.path("task").asText(),
                        one.path("cook").asText()),
            (then, one) ->
                new GatesApi(then.desk(), then.plans(), then.gating())
                    .answer(post.house(), post.words(), post.cook(), one)));
  }

  private Queue.Answer answer(House house, Messages words, String who, JsonNode body) {
    Call call = new Call(body);
    LocalDate day = call.date("day", house.day(desk.now()));
    Gating.Entry entry = entry(call, body, who);
    if (!call.problems().isEmpty()) {
      return new Queue.Answer(422, Call.json(call.problems(), words));
    }
    plans.open(house, house.day(desk.now()), who);
    Gating.Outcome outcome = gating.enter(house, day, entry);
    if (outcome instanceof Gating.Taken taken) {
      ObjectNode node = JsonNodeFactory.instance.objectNode();
      node.put("entry", taken.entry().id().toString());
      node.put("change", taken.change());
      node.put("at", Answers.moment(taken.entry().at(), Answers.zone(house)));
      return new Queue.Answer(taken.repeated() ? 200 : 201, node.toString());
    }
    if (outcome instanceof Gating.Refused refused) {
      return new Queue.Answer(409, Problems.json("refused", words.say(refused.because())));
    }
    String what = ((Gating.Unknown) outcome).what();
    return new Queue.Answer(404, Problems.json("not-found", words.say("web.not-found", what)));
  }

  // ---- behind the handlers ----

  private Gating.Entry entry(Call call, JsonNode body, String by) {
    Optional<UUID> id = call.findUuid("entry");
    GateEntry.Kind kind = call.choice("verdict", GateEntry.Kind.class).orElse(GateEntry.Kind.UNDO);
    boolean undo = kind == GateEntry.Kind.UNDO;
    Optional<UUID> undoes = call.findUuid("undoes");
    if (undo && undoes.isEmpty() && call.problems().isEmpty()) {
      call.problem("undoes", "", "api.accept-uuid");
    }
    return new Gating.Entry(
        id,
        kind,
        undo ? call.findText("task").orElse("") : call.text("task"),
        said(call, body.path("said")),
        added(call, body.path("added")),
        kind == GateEntry.Kind.USED || kind == GateEntry.Kind.AWAY
            ? Optional.of(call.text("line"))
            : Optional.empty(),
        call.findText("note"),
        call.text("cook"),
        undo ? undoes : Optional.empty(),
        call.origin(desk.now()),
        call.findMoment("at").map(at -> new Said(at.truncatedTo(ChronoUnit.MICROS), by, true)));
  }

  private static Map<Gate.Check, String> said(Call call, JsonNode said) {
    Map<Gate.Check, String> words = new EnumMap<>(Gate.Check.class);
    said.properties()
        .forEach(
            one -> {
              Optional<Gate.Check> check = Gate.Check.find(one.getKey());
              String word = one.getValue().asText();
              if (check.isPresent() && check.get().words().contains(word)) {
                words.put(check.get(), word);
              } else {
                String known =
                    check
                        .map(of -> String.join(", ", of.words()))
                        .orElse("skin, centre, taste, texture");
                call.problem(
                    "said." + one.getKey(),
                    word,
                    "problem.accepted",
                    Message.of("accept.one-of", known));
              }
            });
    return words;
  }

  private static List<GateEntry.Added> added(Call call, JsonNode added) {
    List<GateEntry.Added> list = new ArrayList<>();
    for (int i = 0; i < added.size(); i++) {
      String item = added.path(i).path("item").asText();
      String typed = added.path(i).path("amount").asText();
      Optional<Amount> amount = TypedAmount.read(typed, Dimension.MASS);
      if (item.isEmpty()) {
        call.problem("added[" + i + "].item", "", "api.accept-text");
      }
      if (amount.isEmpty()) {
        call.problem("added[" + i + "].amount", typed, "stock.not-mass");
      }
      amount.ifPresent(of -> list.add(new GateEntry.Added(item, of)));
    }
    return list;
  }

  private static void gate(
      ObjectNode node, House house, Task task, GateLock.At at, List<GateEntry> entries) {
    GateProgress progress = GateProgress.fold(entries);
    node.put("task", task.id());
    node.put("step", at.step().code());
    node.put("kind", Call.word(at.gate().kind()));
    node.put("by", Call.word(at.gate().by()));
    at.gate().checks().forEach(check -> node.withArray("checks").add(check.word()));
    node.put("state", Call.word(progress.state()));
    ArrayNode said = node.putArray("entries");
    for (GateEntry entry : GateProgress.live(entries)) {
      if (entry.kind().isVerdict()) {
        verdict(said.addObject(), house, entry);
      }
    }
  }

  /** What was said, as JSON. */
  private static void verdict(ObjectNode node, House house, GateEntry entry) {
    node.put("entry", entry.id().toString());
    node.put("verdict", Call.word(entry.kind()));
    ObjectNode words = node.putObject("said");
    entry.said().forEach((check, word) -> words.put(check.word(), word));
    ArrayNode added = node.putArray("added");
    for (GateEntry.Added one : entry.added()) {
      Answers.amount(added.addObject().put("item", one.item()), "amount", one.amount());
    }
    entry.note().ifPresent(note -> node.put("note", note));
    node.put("who", entry.cook());
    node.put("at", Answers.moment(entry.at(), Answers.zone(house)));
  }
}
