package halfgram.api;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.Desk;
import halfgram.desk.Events;
import halfgram.desk.House;
import halfgram.desk.SheetEffects;
import halfgram.event.EventStore;
import halfgram.input.Problem;
import halfgram.measure.Message;
import halfgram.pages.Rooms;
import halfgram.web.Halt;
import halfgram.web.Problems;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Supplier;

/**
 * Events: listed, changed whole or in their covers, taken out and put back. What is changed is
 * answered with what that does to the sheets; with {@code look=yes} nothing is stored.
 */
public final class EventsApi implements Server.Part {
  private static final String PLACE = "/k/{kitchen}/api/v1/events";

  private final Desk desk;
  private final Events events;
  private final SheetEffects effects;

  public EventsApi(Desk desk, Events events, SheetEffects effects) {
    this.desk = desk;
    this.events = events;
    this.effects = effects;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get(PLACE, this::list);
    routes.post(PLACE, this::add);
    routes.get(PLACE + "/{code}", this::one);
    routes.put(PLACE + "/{code}", this::save);
    routes.delete(PLACE + "/{code}", this::remove);
    routes.put(PLACE + "/{code}/covers", this::covers);
    routes.post(PLACE + "/{code}/back", this::putBack);
  }

  private void list(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    List<EventStore.Saved> all =
        events.list(house).stream()
            .sorted(
                Comparator.comparing(EventStore.Saved::date).thenComparing(EventStore.Saved::code))
            .toList();
    Slice.answer(visit, "events", all, EventStore.Saved::code, EventsApi::event);
  }

  private void add(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Json.object(
        visit,
        context.body(),
        body -> store(visit, house, body, "", () -> events.add(house, body, visit.who())));
  }

  private void one(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    event(node, get(house, visit.part("code")));
    visit.json(200, node.toString());
  }

  /** The event of the address, whole. */
  private void save(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String code = visit.part("code");
    Json.object(
        visit,
        context.body(),
        body -> {
          String said = body.path("code").asText(code);
          body.put("code", code);
          if (said.equals(code)) {
            change(visit, house, body, "");
          } else {
            List<Problem> problems = new ArrayList<>(problems(events.look(house, body), ""));
            problems.add(new Problem("$.code", said, Message.of("api.accept-code", code)));
            Call.refuse(visit, problems);
          }
        });
  }

  /** Covers alone: a number sets one, null takes it out, what is not sent stays. */
  private void covers(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    ObjectNode event = Events.body(get(house, visit.part("code")));
    Json.object(
        visit,
        context.body(),
        body -> {
          ObjectNode covers = (ObjectNode) event.path("covers");
          covers.setAll(body);
          covers.properties().removeIf(number -> number.getValue().isNull());
          change(visit, house, event, ".covers");
        });
  }

  private void remove(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String code = visit.part("code");
    long seen = Query.findNumber(visit, "seen").orElse(-1);
    Events.Outcome outcome = events.remove(house, code, seen, visit.who());
    if (outcome instanceof Events.Stale) {
      throw Halt.stale();
    }
    if (outcome instanceof Events.NoSuch && !events.isRemoved(house, code)) {
      throw Halt.notFound(code);
    }
    ObjectNode node = JsonNodeFactory.instance.objectNode().put("code", code);
    EffectsJson.write(node, effects.list(house, desk.again(house), code));
    visit.json(200, node.toString());
  }

  private void putBack(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String code = visit.part("code");
    Events.Outcome outcome = events.putBack(house, code, visit.who());
    if (outcome instanceof Events.Problems problems) {
      String why = visit.words().say(problems.list().get(0).message());
      visit.json(409, Problems.json("refused", visit.words().say("events.not-back", why)));
    } else if (outcome instanceof Events.Saved) {
      stored(visit, 200, house, code);
    } else {
      throw Halt.notFound(code);
    }
  }

  // ---- behind the handlers ----

  private EventStore.Saved get(House house, String code) {
    return events.find(house, code).orElseThrow(() -> Halt.notFound(code));
  }

  /**
   * Stores an event, or only looks what that would do.
   *
   * @param inside where the body of the call stands in the event
   */
  private void change(Visit visit, House house, ObjectNode event, String inside) {
    if (Query.isAsked(visit, "look")) {
      look(visit, house, event, inside);
    } else {
      store(
          visit,
          house,
          event,
          inside,
          () -> events.save(house, Query.findNumber(visit, "seen"), event, visit.who()));
    }
  }

  private void look(Visit visit, House house, ObjectNode event, String inside) {
    Events.Tried tried = events.look(house, event);
    if (tried.house().isEmpty()) {
      Call.refuse(visit, problems(tried, inside));
      return;
    }
    String code = event.path("code").asText();
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("code", code);
    node.set("event", event);
    Call.tell(node, events.doubts(house, event), visit.words());
    EffectsJson.write(node, effects.list(house, tried.house().get(), code));
    visit.json(200, node.toString());
  }

  private void store(
      Visit visit, House house, ObjectNode event, String inside, Supplier<Events.Outcome> saving) {
    Events.Outcome outcome = saving.get();
    String code = event.path("code").asText();
    if (outcome instanceof Events.Saved) {
      boolean fresh = house.book().findEvent(code).isEmpty();
      visit.made("api/v1/events/" + Visit.encoded(code));
      stored(visit, fresh ? 201 : 200, house, code);
    } else if (outcome instanceof Events.Problems problems) {
      Call.refuse(visit, problems(problems, inside));
    } else if (outcome instanceof Events.Stale) {
      throw Halt.stale();
    } else {
      throw Halt.notFound(code);
    }
  }

  private static List<Problem> problems(Events.Tried tried, String inside) {
    return problems(tried.problems(), inside);
  }

  private static List<Problem> problems(Events.Problems problems, String inside) {
    return Call.within(problems.event() + inside, problems.list());
  }

  private void stored(Visit visit, int status, House before, String code) {
    House house = desk.again(before);
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    EventStore.Saved saved = get(house, code);
    event(node, saved);
    Call.tell(node, events.doubts(before, Events.body(saved)), visit.words());
    EffectsJson.write(node, effects.list(before, house, code));
    visit.json(status, node.toString());
  }

  private static void event(ObjectNode node, EventStore.Saved saved) {
    node.put("code", saved.code());
    node.put("change", saved.change());
    node.set("event", Events.body(saved));
  }
}
