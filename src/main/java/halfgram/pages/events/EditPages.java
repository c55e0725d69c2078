package halfgram.pages.events;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.desk.Desk;
import halfgram.desk.Events;
import halfgram.desk.House;
import halfgram.desk.SheetEffects;
import halfgram.event.EventStore;
import halfgram.pages.Effect;
import halfgram.pages.Rooms;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/** An event as a form: a new one, or one that is there. */
public final class EditPages implements Server.Part {
  private static final int DAYS_AHEAD = 7;

  private final Desk desk;
  private final Events events;
  private final SheetEffects effects;

  public EditPages(Desk desk, Events events, SheetEffects effects) {
    this.desk = desk;
    this.events = events;
    this.effects = effects;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/events/new", this::fresh);
    routes.post("/k/{kitchen}/events/new", this::sent);
    routes.get("/k/{kitchen}/events/{code}/edit", this::edit);
    routes.post("/k/{kitchen}/events/{code}/edit", this::sent);
  }

  private void fresh(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    ObjectNode body = JsonNodeFactory.instance.objectNode();
    body.put("date", house.day(desk.now()).plusDays(DAYS_AHEAD).toString());
    EventForm.add(body, "/services");
    EventForm.add(body, "/services/0/courses");
    form(visit, house, 200, EditView.Sent.fresh(body, ""), List.of());
  }

  private void edit(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String code = visit.part("code");
    EventStore.Saved saved = events.find(house, code).orElseThrow(() -> Halt.notFound(code));
    String seen = String.valueOf(saved.change());
    EditView.Sent fresh = EditView.Sent.fresh(Events.body(saved), seen);
    if (visit.query("confirm").equals("yes") && Events.isDraft(fresh.typed())) {
      look(visit, house, fresh.typing(Events.agreed(fresh.typed())));
    } else {
      form(visit, house, 200, fresh, List.of());
    }
  }

  private void sent(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String base = visit.field("base");
    ObjectNode typed = EventForm.typed(body(base), visit.form());
    EditView.Sent sent =
        new EditView.Sent(typed, base, visit.field("seen"), "", EditView.NONE, Optional.empty());
    if (!visit.field("add").isEmpty()) {
      String list = visit.field("add");
      EventForm.add(typed, list);
      int last = Math.max(0, typed.at(EventForm.pointer(list)).size() - 1);
      form(visit, house, 200, rebased(sent, list + "/" + last), List.of());
    } else if (!visit.field("drop").isEmpty()) {
      EventForm.drop(typed, visit.field("drop"));
      form(visit, house, 200, rebased(sent, ""), List.of());
    } else if (!visit.field("push").isEmpty()) {
      push(visit, house, sent);
    } else if (visit.field("do").equals("save")) {
      store(visit, house, sent);
    } else {
      look(visit, house, sent);
    }
  }

  // ---- behind the handlers ----

  /** Rows have come or gone: what is typed now is what the form goes on with. */
  private static EditView.Sent rebased(EditView.Sent sent, String focus) {
    return new EditView.Sent(
        sent.typed(), sent.typed().toString(), sent.seen(), focus, EditView.NONE, Optional.empty());
  }

  private void form(
      Visit visit, House house, int status, EditView.Sent sent, List<Effect> effects) {
    EditView view = EditView.of(house, sent, effects, visit.words());
    visit.page(status, "events/edit", view.title(), view);
  }

  private static ObjectNode body(String base) {
    try {
      JsonNode body = BookStore.parse(base);
      return body instanceof ObjectNode object ? object : JsonNodeFactory.instance.objectNode();
    } catch (UncheckedIOException e) {
      throw Halt.unreadable("base");
    }
  }

  /** Moves the times that are typed, and shows what that would do. */
  private void push(Visit visit, House house, EditView.Sent sent) {
    String pressed = visit.field("push");
    int service = Pressed.service(pressed).orElseThrow(() -> Halt.unreadable("push"));
    String typed = visit.field("minutes-" + service);
    Optional<Pressed> push = Pressed.of(pressed, typed);
    if (push.isEmpty()) {
      String fault = visit.words().say("events.push-fault");
      form(visit, house, 422, sent.with(new Pressed.Typed(service, typed, fault)), List.of());
      return;
    }
    if (!push.get().move(sent.typed(), house.book().kitchen().clock().dayStart())) {
      String fault = visit.words().say("slip.leaves-day");
      form(visit, house, 422, sent.with(new Pressed.Typed(service, typed, fault)), List.of());
      return;
    }
    look(visit, house, rebased(sent, ""));
  }

  /** What is asked of an event as it is typed. */
  private Sure sure(Visit visit, House house, ObjectNode body) {
    return Sure.of(events.doubts(house, body), visit.field("sure"), visit.words());
  }

  private void look(Visit visit, House house, EditView.Sent typed) {
    ObjectNode body = EventForm.coded(typed.typed());
    EditView.Sent sent = typed.with(sure(visit, house, body));
    Events.Tried tried = events.look(house, body);
    if (tried.house().isEmpty()) {
      wrong(visit, house, sent.with(tried.problems()));
      return;
    }
    String code = body.path("code").asText();
    Messages words = visit.words();
    List<Effect> found =
        effects.list(house, tried.house().get(), code).stream()
            .map(effect -> Effect.of(effect, words))
            .toList();
    form(
        visit,
        house,
        200,
        sent,
        found.isEmpty() ? List.of(Effect.none(words.say(why(body)))) : found);
  }

  /** Why no sheet changes. */
  private static String why(ObjectNode body) {
    return Events.isDraft(body) ? "events.effect-draft" : "events.effect-past";
  }

  private void wrong(Visit visit, House house, EditView.Sent sent) {
    visit.notice(visit.words().say("events.not-saved"));
    form(visit, house, 422, sent, List.of());
  }

  private void store(Visit visit, House house, EditView.Sent typed) {
    ObjectNode body = EventForm.coded(typed.typed());
    EditView.Sent sent = typed.with(sure(visit, house, body));
    if (sent.sure().isOpen() && events.look(house, body).house().isPresent()) {
      visit.notice(visit.words().say("events.not-sure"));
      form(visit, house, 422, sent, List.of());
      return;
    }
    String seen = sent.seen();
    Events.Outcome outcome =
        seen.matches("\\d{1,18}")
            ? events.save(
                house, OptionalLong.of(Long.parseLong(seen)), coded(visit, body), visit.who())
            : events.add(house, body, visit.who());
    if (outcome instanceof Events.Saved) {
      visit.seeOther("events/" + Visit.encoded(body.path("code").asText()));
    } else if (outcome instanceof Events.Problems problems) {
      wrong(visit, house, sent.with(problems));
    } else if (outcome instanceof Events.Stale stale) {
      visit.notice(visit.words().say("events.stale"));
      String now = String.valueOf(stale.current().change());
      form(
          visit,
          desk.again(house),
          409,
          new EditView.Sent(
              sent.typed(),
              sent.base(),
              now,
              "",
              EditView.NONE,
              Optional.of(Events.body(stale.current()))),
          List.of());
    } else {
      gone(visit, house, sent);
    }
  }

  /** The event of the address, whatever the form says. */
  private static ObjectNode coded(Visit visit, ObjectNode body) {
    body.put("code", visit.part("code"));
    return body;
  }

  /** It was taken out while somebody typed: what was typed can be saved as a new one. */
  private void gone(Visit visit, House house, EditView.Sent sent) {
    String code = visit.part("code");
    if (events.listChanges(house, code).isEmpty()) {
      throw Halt.notFound(code);
    }
    visit.notice(visit.words().say("events.gone"));
    EditView.Sent fresh =
        new EditView.Sent(sent.typed(), sent.base(), "", "", EditView.NONE, Optional.empty());
    form(visit, desk.again(house), 409, fresh, List.of());
  }
}
