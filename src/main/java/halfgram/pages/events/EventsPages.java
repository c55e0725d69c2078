package halfgram.pages.events;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.desk.Desk;
import halfgram.desk.Events;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.desk.Plans;
import halfgram.event.Event;
import halfgram.event.EventStore;
import halfgram.pages.Rooms;
import halfgram.prep.Difference;
import halfgram.prep.KitchenBook;
import halfgram.prep.PrepSheet;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import halfgram.words.SheetWords;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;

/** The list of events, one event, and changing it. */
public final class EventsPages implements Server.Part {
  private static final int MOST_COVERS = 20_000;

  private final Desk desk;
  private final Plans plans;
  private final Events events;

  public EventsPages(Desk desk, Plans plans, Events events) {
    this.desk = desk;
    this.plans = plans;
    this.events = events;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/events", this::list);
    routes.get("/k/{kitchen}/events/new", this::fresh);
    routes.post("/k/{kitchen}/events/new", this::save);
    routes.get("/k/{kitchen}/events/{code}", this::one);
    routes.post("/k/{kitchen}/events/{code}/covers", this::covers);
    routes.get("/k/{kitchen}/events/{code}/edit", this::edit);
    routes.post("/k/{kitchen}/events/{code}/edit", this::save);
    routes.post("/k/{kitchen}/events/{code}/remove", this::remove);
    routes.post("/k/{kitchen}/events/{code}/back", this::putBack);
  }

  private void list(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit.kitchen().code());
    boolean past = visit.query("past").equals("yes");
    EventsView view =
        EventsView.of(house, events, house.day(desk.now()), past, words(visit, house));
    visit.page("events", visit.words().say("nav.events"), view);
  }

  private void fresh(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit.kitchen().code());
    ObjectNode body = JsonNodeFactory.instance.objectNode();
    body.put("date", house.day(desk.now()).plusDays(7).toString());
    EventForm.add(body, "/services");
    EventForm.add(body, "/services/0/courses");
    form(visit, house, 200, body, body.toString(), "", NONE, List.of());
  }

  private void one(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit.kitchen().code());
    Event event = get(house, visit);
    EventStore.Saved saved = events.find(house, event.code()).orElseThrow();
    show(visit, house, event, 200, EventView.Typed.of(event, saved.change()));
  }

  private void covers(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit.kitchen().code());
    Event event = get(house, visit);
    EventView.Typed typed =
        new EventView.Typed(
            visit.field("seen"),
            visit.field("expected").strip(),
            visit.field("final").strip(),
            "");
    boolean right =
        isCovers(typed.expected()) && (typed.finalNumber().isEmpty() || isCovers(typed.finalNumber()));
    if (!right || !typed.seen().matches("\\d{1,18}")) {
      String fault = visit.words().say("events.covers-fault", MOST_COVERS);
      show(visit, house, event, 422, with(typed, fault));
      return;
    }
    OptionalInt finalNumber =
        typed.finalNumber().isEmpty()
            ? OptionalInt.empty()
            : OptionalInt.of(Integer.parseInt(typed.finalNumber()));
    Events.Outcome outcome =
        events.covers(
            house,
            event.code(),
            Long.parseLong(typed.seen()),
            finalNumber,
            Integer.parseInt(typed.expected()),
            visit.who());
    if (outcome instanceof Events.Saved) {
      visit.seeOther(event.date().equals(house.day(desk.now())) ? "" : "events/" + event.code());
    } else if (outcome instanceof Events.Stale stale) {
      House now = desk.again(house);
      visit.notice(visit.words().say("events.stale-covers"));
      EventView.Typed kept =
          new EventView.Typed(
              String.valueOf(stale.current().change()), typed.expected(), typed.finalNumber(), "");
      show(visit, now, get(now, visit), 409, kept);
    } else if (outcome instanceof Events.Problems problems) {
      String fault = visit.words().say(problems.list().get(0).message());
      show(visit, house, event, 422, with(typed, fault));
    } else {
      throw Halt.notFound(event.code());
    }
  }

  private void edit(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit.kitchen().code());
    Event event = get(house, visit);
    EventStore.Saved saved = events.find(house, event.code()).orElseThrow();
    ObjectNode body = Events.body(saved);
    String seen = String.valueOf(saved.change());
    form(visit, house, 200, body, saved.body(), seen, NONE, List.of());
  }

  private void save(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit.kitchen().code());
    String base = visit.field("base");
    String seen = visit.field("seen");
    ObjectNode typed = EventForm.typed(body(base), visit.form());
    if (!visit.field("add").isEmpty() || !visit.field("drop").isEmpty()) {
      visit.fields("add").forEach(at -> EventForm.add(typed, at));
      visit.fields("drop").forEach(at -> EventForm.drop(typed, at));
      form(visit, house, 200, typed, typed.toString(), seen, NONE, List.of());
    } else if (visit.field("do").equals("look")) {
      look(visit, house, typed, base, seen);
    } else {
      store(visit, house, typed, base, seen);
    }
  }

  private void remove(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit.kitchen().code());
    String code = visit.part("code");
    long seen = visit.field("seen").matches("\\d{1,18}") ? Long.parseLong(visit.field("seen")) : -1;
    Events.Outcome outcome = events.remove(house, code, seen, visit.who());
    if (outcome instanceof Events.Stale) {
      throw Halt.stale();
    } else if (outcome instanceof Events.NoSuch) {
      throw Halt.notFound(code);
    }
    visit.seeOther("events");
  }

  private void putBack(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit.kitchen().code());
    Events.Outcome outcome = events.putBack(house, visit.part("code"), visit.who());
    if (!(outcome instanceof Events.Saved)) {
      throw Halt.notFound(visit.part("code"));
    }
    visit.seeOther("events/" + Visit.encoded(visit.part("code")));
  }

  // ---- behind the handlers ----

  private static final Events.Problems NONE = new Events.Problems("$", List.of());

  private static Messages words(Visit visit, House house) {
    return visit.words().at(house.book().kitchen().clock().zone());
  }

  private static boolean isCovers(String text) {
    return text.matches("\\d{1,5}") && Integer.parseInt(text) <= MOST_COVERS;
  }

  private static EventView.Typed with(EventView.Typed typed, String fault) {
    return new EventView.Typed(typed.seen(), typed.expected(), typed.finalNumber(), fault);
  }

  private static Event get(House house, Visit visit) {
    String code = visit.part("code");
    return house.book().events().stream()
        .filter(event -> event.code().equals(code))
        .findFirst()
        .orElseThrow(() -> Halt.notFound(code));
  }

  private void show(Visit visit, House house, Event event, int status, EventView.Typed typed) {
    KitchenBook book;
    PrepSheet sheet;
    Optional<InForce> inForce = plans.find(house, event.date());
    if (inForce.isPresent()) {
      Plans.Proposal proposal = plans.propose(house, inForce.get());
      book = proposal.book();
      sheet = proposal.sheet();
    } else {
      Plans.Proposal preview = plans.preview(house, event.date(), 1);
      book = preview.book();
      sheet = preview.sheet();
    }
    EventView view =
        EventView.of(
            house,
            event,
            book,
            sheet,
            typed,
            events.listChanges(house, event.code()),
            words(visit, house));
    visit.page(status, "events/one", view.row().name(), view);
  }

  private void form(
      Visit visit,
      House house,
      int status,
      ObjectNode typed,
      String base,
      String seen,
      Events.Problems problems,
      List<String> effect) {
    EditView view = EditView.of(house, typed, base, seen, problems, effect, words(visit, house));
    visit.page(status, "events/edit", view.title(), view);
  }

  private static ObjectNode body(String base) {
    try {
      JsonNode body = BookStore.parse(base);
      return body.isObject() ? (ObjectNode) body : JsonNodeFactory.instance.objectNode();
    } catch (UncheckedIOException e) {
      throw Halt.unreadable("base");
    }
  }

  private void look(Visit visit, House house, ObjectNode typed, String base, String seen) {
    Events.Tried tried = events.look(house, typed);
    if (tried.house().isEmpty()) {
      form(visit, house, 422, typed, base, seen, tried.problems(), List.of());
      return;
    }
    form(visit, house, 200, typed, base, seen, NONE, effect(visit, house, tried.house().get(), typed));
  }

  private List<String> effect(Visit visit, House house, House tried, ObjectNode typed) {
    LocalDate day = LocalDate.parse(typed.path("date").asText());
    Messages words = words(visit, house);
    Optional<InForce> inForce = plans.find(house, day);
    Plans.Proposal proposal;
    Difference difference;
    if (inForce.isPresent()) {
      proposal = plans.propose(house, inForce.get(), tried.book());
      difference = proposal.difference();
    } else {
      proposal = plans.preview(tried, day, 1);
      difference = Difference.of(plans.preview(house, day, 1).sheet(), proposal.sheet());
    }
    SheetWords names = new SheetWords(proposal.book(), proposal.sheet(), words);
    return Effect.of(difference, names, words);
  }

  private void store(Visit visit, House house, ObjectNode typed, String base, String seen) {
    OptionalLong known =
        seen.matches("\\d{1,18}") ? OptionalLong.of(Long.parseLong(seen)) : OptionalLong.empty();
    Events.Outcome outcome = events.save(house, known, typed, visit.who());
    if (outcome instanceof Events.Saved) {
      visit.seeOther("events/" + Visit.encoded(typed.path("code").asText()));
    } else if (outcome instanceof Events.Problems problems) {
      form(visit, house, 422, typed, base, seen, problems, List.of());
    } else if (outcome instanceof Events.Stale stale) {
      visit.notice(visit.words().say("events.stale"));
      String now = String.valueOf(stale.current().change());
      form(visit, desk.again(house), 409, typed, base, now, NONE, List.of());
    } else {
      throw Halt.notFound(typed.path("code").asText());
    }
  }
}
