package halfgram.api;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.Sending;
import halfgram.desk.Services;
import halfgram.desk.Swapping;
import halfgram.pages.KeptReader;
import halfgram.pages.Rooms;
import halfgram.pages.ServiceLine;
import halfgram.pass.AtPass;
import halfgram.pass.Called;
import halfgram.pass.Entry;
import halfgram.web.Halt;
import halfgram.web.Problems;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The services of today at the pass, and what is entered while they run. */
public final class ServicesApi implements Server.Part, KeptReader {
  private static final String PLACE = "/k/{kitchen}/api/v1/services";
  private static final Pattern ENTRIES = Pattern.compile("api/v1/services/([^/]+)/entries");

  private final Desk desk;
  private final Services services;
  private final Sending sending;
  private final Swapping swapping;

  public ServicesApi(Desk desk, Services services, Sending sending, Swapping swapping) {
    this.desk = desk;
    this.services = services;
    this.sending = sending;
    this.swapping = swapping;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get(PLACE, this::list);
    routes.get(PLACE + "/{service}", this::one);
    routes.post(PLACE + "/{service}/entries", this::enter);
    routes.get(PLACE + "/{service}/swaps", this::swaps);
    routes.post(PLACE + "/{service}/swaps", this::swap);
  }

  private void list(Context context) {
    Visit visit = Visit.of(context);
    Services.Board board = dated(visit);
    ObjectNode answer = JsonNodeFactory.instance.objectNode();
    answer.put("day", board.day().toString());
    ServiceJson json = new ServiceJson(board, visit.words());
    json.outages(answer.putArray("outages"));
    ArrayNode list = answer.putArray("services");
    board.services().forEach(at -> json.service(list.addObject(), at));
    visit.json(200, answer.toString());
  }

  private void one(Context context) {
    Visit visit = Visit.of(context);
    Services.Board board = dated(visit);
    AtPass at = get(visit, board);
    ObjectNode answer = JsonNodeFactory.instance.objectNode();
    ServiceJson json = new ServiceJson(board, visit.words());
    json.service(answer, at);
    json.outages(answer.putArray("outages"));
    visit.json(200, answer.toString());
  }

  private void enter(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Queue.answer(
        visit,
        context.body(),
        one ->
            visit.isAt(one.path("station").asText("")) || one.path("station").asText("").isEmpty()
                ? answer(house, visit.words(), visit.part("service"), one)
                : Queue.elsewhere(visit));
  }

  private void swaps(Context context) {
    Visit visit = Visit.of(context);
    Services.Board board = services.open(Rooms.house(desk, visit), visit.who());
    AtPass at = get(visit, board);
    ObjectNode answer = JsonNodeFactory.instance.objectNode();
    ArrayNode list = answer.putArray("swaps");
    SwapJson json = new SwapJson(board.house().book(), visit.words());
    board.swaps(at).forEach(offer -> json.offer(list.addObject(), offer));
    visit.json(200, answer.toString());
  }

  private void swap(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Call call = new Call(Json.body(context.body()));
    Swapping.Asked asked =
        new Swapping.Asked(
            call.findUuid("entry"),
            visit.part("service"),
            call.text("dish"),
            call.text("item"),
            call.text("with"),
            call.text("confirmedBy"),
            call.findText("confirmedBy").orElse(""),
            call.origin(desk.now()));
    if (!call.problems().isEmpty()) {
      call.refuse(visit);
      return;
    }
    Queue.Answer answer = answer(visit.words(), swapping.swap(house, house.day(desk.now()), asked));
    visit.json(answer.status(), answer.body());
  }

  @Override
  public Optional<Work> read(Post post) {
    Matcher entries = ENTRIES.matcher(post.path());
    if (!entries.matches()) {
      return Optional.empty();
    }
    String service = URLDecoder.decode(entries.group(1), StandardCharsets.UTF_8);
    return Optional.of(
        Queue.kept(
            post,
            one -> new ServiceLine(post.house().book(), post.words()).said(one),
            (then, one) ->
                new ServicesApi(then.desk(), services, then.sending(), swapping)
                    .answer(post.house(), post.words(), service, one)));
  }

  // ---- behind the handlers ----

  private Services.Board dated(Visit visit) {
    House house = Rooms.house(desk, visit);
    LocalDate day = Query.findDate(visit, "date").orElseGet(() -> house.day(desk.now()));
    return services
        .find(house, day, visit.who())
        .orElseThrow(() -> Halt.notFound(Services.noDay(day)));
  }

  private static AtPass get(Visit visit, Services.Board board) {
    String service = visit.part("service");
    return board.find(service).orElseThrow(() -> Halt.notFound(board.missing(service)));
  }

  private Queue.Answer answer(House house, Messages words, String service, JsonNode body) {
    Call call = new Call(body);
    LocalDate day = call.date("day", house.day(desk.now()));
    Sending.Asked asked = asked(call, service);
    if (!call.problems().isEmpty()) {
      return new Queue.Answer(422, Call.json(call.problems(), words));
    }
    return answer(words, sending.enter(house, day, asked));
  }

  private static Queue.Answer answer(Messages words, Sending.Outcome outcome) {
    if (outcome instanceof Sending.Taken taken) {
      return new Queue.Answer(taken.repeated() ? 200 : 201, taken(taken));
    }
    if (outcome instanceof Sending.Refused refused) {
      return new Queue.Answer(409, Problems.json("refused", words.say(refused.because())));
    }
    String what = outcome instanceof Sending.NoSuch none ? none.what() : "";
    return new Queue.Answer(404, Problems.json("not-found", words.say("web.not-found", what)));
  }

  private Sending.Asked asked(Call call, String service) {
    Optional<Entry.Kind> kind = call.choice("kind", Entry.Kind.class);
    Entry.Kind of = kind.orElse(Entry.Kind.SENT);
    Optional<UUID> undoes = call.findUuid("undoes");
    if (of == Entry.Kind.UNDO && undoes.isEmpty()) {
      call.problem("undoes", "", "api.accept-uuid");
    }
    Optional<String> note = call.findText("note");
    if (of == Entry.Kind.OUT && note.isEmpty()) {
      call.problem("note", "", "pass.reason-fault");
    }
    long number = of.isCounted() ? call.number("number", 1) : 1;
    if (number > Called.MOST_AT_ONCE) {
      call.problem("number", String.valueOf(number), "pass.number-fault");
    }
    return new Sending.Asked(
        call.findUuid("entry"),
        service,
        of,
        call.findText("course").orElse(""),
        call.findText("dish").orElse(""),
        call.words("diets"),
        call.findText("item").orElse(""),
        call.findText("station").orElse(""),
        (int) Math.min(number, Called.MOST_AT_ONCE),
        note,
        call.text("who"),
        undoes,
        call.origin(desk.now()));
  }

  private static String taken(Sending.Taken taken) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("entry", taken.entry().id().toString());
    node.put("change", taken.change());
    node.put("at", taken.entry().at().toString());
    return node.toString();
  }
}
