package halfgram.api;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.Desk;
import halfgram.desk.Dipped;
import halfgram.desk.House;
import halfgram.desk.Plans;
import halfgram.desk.Said;
import halfgram.desk.Ticking;
import halfgram.pages.KeptReader;
import halfgram.pages.KeptWords;
import halfgram.pages.Rooms;
import halfgram.prep.Tick;
import halfgram.prep.TickStore;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;

/** Ticks: one, or a queue that a device kept while it had no network. */
public final class TickApi implements Server.Part, KeptReader {
  private final Desk desk;
  private final Ticking ticking;
  private final KeptWords kept;

  public TickApi(Desk desk, Plans plans, Ticking ticking) {
    this(desk, ticking, new KeptWords(plans));
  }

  private TickApi(Desk desk, Ticking ticking, KeptWords kept) {
    this.desk = desk;
    this.kept = kept;
    this.ticking = ticking;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.post("/k/{kitchen}/api/v1/ticks", this::tick);
  }

  private void tick(Context context) {
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

  private boolean isElsewhere(Visit visit, House house, JsonNode body) {
    if (visit.caller().tablet().isEmpty()) {
      return false;
    }
    LocalDate day = new Call(body).date("day", house.day(desk.now()));
    return ticking
        .findTask(house, day, body.path("task").asText())
        .filter(task -> !visit.isAt(task.station()))
        .isPresent();
  }

  @Override
  public Optional<Work> read(Post post) {
    if (!post.path().equals("api/v1/ticks")) {
      return Optional.empty();
    }
    return Optional.of(
        Queue.kept(
            post,
            one -> said(post, one),
            (then, one) ->
                new TickApi(then.desk(), then.ticking(), kept)
                    .answer(post.house(), post.words(), post.cook(), sure(one))));
  }

  private String said(Post post, JsonNode one) {
    String task = one.path("task").asText();
    String path = one.path("line").asText();
    return new Call(one)
        .choice("kind", Tick.Kind.class)
        .map(
            kind ->
                kept.tick(
                    post,
                    kind,
                    task,
                    List.of(
                        path.isEmpty() ? "" : kept.line(post, task, path),
                        one.path("amount").asText(),
                        one.path("note").asText(),
                        one.path("cook").asText())))
        .orElse(one.toString());
  }

  /**
   * Takes one.
   *
   * @param by who sends it, for one that says a time
   */
  private Queue.Answer answer(House house, Messages words, String by, JsonNode body) {
    Call call = new Call(body);
    LocalDate day = call.date("day", house.day(desk.now()));
    Ticking.Entry entry = entry(call, by);
    if (!call.problems().isEmpty()) {
      return new Queue.Answer(422, Call.json(call.problems(), words));
    }
    Ticking.Outcome outcome = ticking.tick(house, day, entry);
    if (outcome instanceof Ticking.Taken taken) {
      return new Queue.Answer(taken.repeated() ? 200 : 201, taken(house, taken));
    }
    if (outcome instanceof Ticking.Refused refused) {
      String said = words.at(house.book().kitchen()).say(refused.because());
      return new Queue.Answer(409, halfgram.web.Problems.json("refused", said));
    }
    if (outcome instanceof Ticking.Asks asks) {
      Messages zoned = words.at(house.book().kitchen());
      String said = String.join("; ", asks.because().stream().map(zoned::say).toList());
      return new Queue.Answer(409, halfgram.web.Problems.json("unsure", said));
    }
    return new Queue.Answer(
        404, halfgram.web.Problems.json("not-found", words.say("web.not-found", entry.task())));
  }

  private Ticking.Entry entry(Call call, String by) {
    Optional<java.util.UUID> id = call.findUuid("tick");
    String task = call.text("task");
    Optional<Tick.Kind> kind = call.choice("kind", Tick.Kind.class);
    Optional<java.util.UUID> undoes = call.findUuid("undoes");
    if (kind.filter(one -> one == Tick.Kind.UNDO).isPresent() && undoes.isEmpty()) {
      call.problem("undoes", "", "api.accept-uuid");
    }
    Optional<String> note = call.findText("note");
    if (kind.filter(one -> one == Tick.Kind.FAILED).isPresent() && note.isEmpty()) {
      call.problem("note", "", "api.accept-text");
    }
    TickStore.Origin origin = call.origin(desk.now());
    boolean sure = call.flag("sure");
    Optional<Said> when =
        call.findMoment("at").map(at -> new Said(at.truncatedTo(ChronoUnit.MICROS), by, sure));
    return new Ticking.Entry(
        id,
        task,
        kind.orElse(Tick.Kind.START),
        call.findText("line"),
        call.findAmount("amount"),
        minutes(call),
        note,
        call.text("cook"),
        undoes,
        origin,
        when,
        sure);
  }

  /** What the office enters for a tablet, it has read, with who did it. */
  private static JsonNode sure(JsonNode one) {
    return one instanceof ObjectNode node ? node.deepCopy().put("sure", true) : one;
  }

  private static Optional<Integer> minutes(Call call) {
    return call.findNumber("minutes", 1).map(minutes -> (int) Math.min(minutes, Integer.MAX_VALUE));
  }

  private String taken(House house, Ticking.Taken taken) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("tick", taken.tick().id().toString());
    node.put("change", taken.change());
    node.put("at", taken.tick().at().toString());
    taken.tubs().forEach(node.putArray("tubs")::add);
    ArrayNode kept = node.putArray("taken");
    if (taken.tick().kind().movesTubs()) {
      new Dipped(desk)
          .listOfTick(house, taken.tick().id())
          .forEach(dip -> TubJson.dip(kept.addObject(), house, dip));
    }
    return node.toString();
  }
}
